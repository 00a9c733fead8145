// HL7 v2 messages: structure against @medplum/core, escapes against node-hl7-client, and every habit of a sender.
import { Hl7Message } from '@medplum/core';
import { Message as ClientMessage } from 'node-hl7-client';
import { describe, expect, it } from 'vitest';
import { component, field, messagesOf } from '../../src/intake/hl7v2/segments.js';
import { readInput } from '../../src/intake/index.js';
import { fileOf, onlyReport, problemsIn, reportsOf, resultsOf, said } from './file.js';

const msh = 'MSH|^~\\&|LAB|SALT|CLIN|SALT|202611201000||ORU^R01^ORU_R01|17|P|2.5.1';
const pid = 'PID|1||7^^^SMB^MR||Quill^Tamsin^^^||19840309|F';
const obr = 'OBR|1||A1|FES^Iron studies|||202611200840';
const ferritin = 'OBX|1|NM|2276-4^Ferritin^LN||9|ug/L|30 - 400|L|||F';
const message = (...obx: string[]) => [msh, pid, obr, ...obx].join('\r');

/** Messages of one OBX, each a habit; the last cell is what is read. */
const habits: readonly (readonly [string, string, string])[] = [
  ['a number', ferritin, 'ferritin 9 ug/L 30..400 L'],
  [
    'a structured number',
    'OBX|1|SN|2276-4^Ferritin^LN||<^5|ug/L|30 - 400|L|||F',
    'ferritin <5 ug/L 30..400 L',
  ],
  ['a structured number without sign', 'OBX|1|SN|^Ferritin||^9|ug/L|||||F', 'ferritin 9 ug/L'],
  ['text with a sign', 'OBX|1|ST|^Ferritin||<5|ug/L|||||F', 'ferritin <5 ug/L'],
  ['free text', 'OBX|1|TX|^CRP||12.5|mg/L|<5|H|||F', 'crp 12.5 mg/L ..5 H'],
  ['a coded value', 'OBX|1|CE|^Ferritin||^1500|ug/L||H|||F', 'ferritin 1500 ug/L  H'],
  ['an interval above', 'OBX|1|NM|^Ferritin||9|ug/L|> 59|||||F', 'ferritin 9 ug/L 59..'],
  ['an en dash', 'OBX|1|NM|^Ferritin||9|ug/L|30–400|L|||F', 'ferritin 9 ug/L 30..400 L'],
  [
    'decimal commas',
    'OBX|1|NM|^Hb||9,8|g/dL|11,5 - 16,0|L|||F',
    'haemoglobin 9,8 g/dL 11,5..16,0 L',
  ],
  ['an interval cut in two', 'OBX|1|NM|^Ferritin||9|ug/L|30^400|L|||F', 'ferritin 9 ug/L .. L'],
  ['a unit in its second place', 'OBX|1|NM|^Ferritin||9|^ug/L||L|||F', 'ferritin 9 ug/L  L'],
  ['an interval in words', 'OBX|1|NM|^Ferritin||9|ug/L|see comment|||||F', 'ferritin 9 ug/L ..'],
  ['two flags', 'OBX|1|NM|^Ferritin||9|ug/L||LL~D|||F', 'ferritin 9 ug/L  LL'],
  ['a change before the mark', 'OBX|1|NM|^Ferritin||9|ug/L||D~L|||F', 'ferritin 9 ug/L  L'],
  ['an escaped unit', 'OBX|1|NM|^RBC||4.1|10\\S\\12/L|||||F', 'rbc 4.1 10^12/L'],
  [
    'the code in the second triplet',
    'OBX|1|NM|FER^Ferritin^L^2276-4^Ferritin^LN||9|ug/L|||||F',
    'ferritin 9 ug/L',
  ],
  ['a sub-component', 'OBX|1|NM|^Ferritin&x^L||9|ug/L&x|||||F', 'ferritin 9 ug/L'],
];

const read = async (text: string) => resultsOf(await onlyReport('a.hl7', text));

describe('an OBX', () => {
  it.each(habits)('reads %s', async (_, obx, expected) => {
    expect(await read(message(obx))).toEqual([expected]);
  });

  it.each([
    ['no result', 'OBX|1|NM|^CRP||3|mg/L|||||X', 'could not obtain'],
    ['a withdrawn result', 'OBX|1|NM|^CRP||3|mg/L|||||W', 'withdrawn'],
    ['a deleted result', 'OBX|1|NM|^CRP||3|mg/L|||||D', 'deleted'],
    ['a waiting specimen', 'OBX|1|NM|^CRP|||mg/L|||||I', 'waits'],
    ['an empty value', 'OBX|1|NM|^CRP|||mg/L|||||F', 'cannot find a value'],
    ['a value to delete', 'OBX|1|NM|^CRP||""|mg/L|||||F', 'cannot find a value'],
    ['another test', 'OBX|1|NM|2951-2^Sodium^LN||140|mmol/L|||||F', 'does not explain'],
    ['a look-alike', 'OBX|1|NM|^HbA1c||38|mmol/mol|||||F', 'glycated'],
    ['a name nobody knows', 'OBX|1|NM|^Quibble||38|g/L|||||F', 'not known'],
  ])('passes over %s with a note', async (_, obx, expected) => {
    const intake = await readInput(fileOf('a.hl7', message(ferritin, obx)));
    expect(reportsOf(intake).map(resultsOf)).toEqual([['ferritin 9 ug/L 30..400 L']]);
    expect(intake.ignored.map(({ cannot }) => cannot).join()).toContain(expected);
  });

  it.each([
    [
      'a range',
      'OBX|1|SN|^Ferritin||^10^-^12|ug/L|||||F',
      'cannot read this as a number (found "10-12")',
    ],
    ['a ratio', 'OBX|1|SN|^Ferritin||^1^:^2|ug/L|||||F', 'cannot read this as a number'],
    ['two values', 'OBX|1|NM|^Ferritin||9~90|ug/L|||||F', 'which of several values'],
    ['words', 'OBX|1|ST|^Ferritin||haemolysed|ug/L|||||F', 'found "haemolysed"'],
    [
      'a code that contradicts the name',
      'OBX|1|NM|3034-6^Transferrin saturation^LN||35|%|||||F',
      'the code says transferrin',
    ],
    ['a name misspelt', 'OBX|1|NM|^Feritinn||9|ug/L|||||F', "Did you mean 'ferritin'?"],
    [
      'no iron result',
      'OBX|1|NM|2951-2^Sodium^LN||140|mmol/L|||||F',
      'cannot find an iron result in this message',
    ],
  ])('tells what is wrong with %s', async (_, obx, expected) => {
    expect((await problemsIn('a.hl7', message(obx))).join('\n')).toContain(expected);
  });

  it.each([
    ['P', 'preliminary'],
    ['C', 'corrected'],
    ['F', 'final'],
    ['', null],
  ])('tells the status %s', async (letter, expected) => {
    const report = await onlyReport('a.hl7', message(`OBX|1|NM|^Ferritin||9|ug/L|||||${letter}`));
    expect(report.panel.results[0]?.status).toBe(expected);
  });

  it('lets a corrected result replace the first', async () => {
    const first = 'OBX|1|NM|^Ferritin||90|ug/L|||||F';
    const second = 'OBX|2|NM|^Ferritin||9|ug/L|||||C';
    expect(await read(message(first, second))).toEqual(['ferritin 9 ug/L']);
  });
});

describe('a message', () => {
  it('says who and when, and keeps the notes of its own results', async () => {
    const text = message(
      ferritin,
      'NTE|1||Low\\T\\slow',
      'OBX|2|NM|^Sodium||140|mmol/L|||||F',
      'NTE|1||not ours',
    );
    const report = await onlyReport('a.hl7', text);
    expect(report.patient).toMatchObject({
      id: '7',
      name: 'Tamsin Quill',
      birthDate: '1984-03-09',
      sex: 'female',
    });
    expect(report.panel.collected).toBe('2026-11-20');
    expect(report.context).toMatchObject({ sampleTime: '08:40', notes: ['Low&slow'] });
  });

  it.each([
    ['CR', message(ferritin)],
    ['LF', message(ferritin).replaceAll('\r', '\n')],
    ['CRLF', message(ferritin).replaceAll('\r', '\r\n')],
    ['blank lines', message(ferritin).replaceAll('\r', '\r\r')],
    ['a trailing CR', `${message(ferritin)}\r`],
    ['an MLLP frame', `\u000B${message(ferritin)}\r\u001C\r`],
    ['a batch', `FHS|^~\\&|\rBHS|^~\\&|\r${message(ferritin)}\rBTS|1\rFTS|1\r`],
    [
      'separators of its own',
      message(ferritin).replaceAll('^', '*').replaceAll('|', '#').replaceAll('&', '%'),
    ],
  ])('is read with %s', async (_, text) => {
    expect(await read(text)).toEqual(['ferritin 9 ug/L 30..400 L']);
  });

  it.each([
    ['PID-29', `${pid}${'|'.repeat(21)}20261119`],
    ['PID-30', `${pid}${'|'.repeat(22)}Y`],
  ])('makes no letter to a person who has died (%s)', async (_, dead) => {
    const text = message(ferritin).replace(pid, dead);
    expect((await problemsIn('a.hl7', text)).join()).toContain('has died');
  });

  it('joins messages of one person and makes older days earlier panels', async () => {
    const older = message('OBX|1|NM|^Ferritin||14|ug/L|||||F').replace(
      '202611200840',
      '202605020900',
    );
    const report = await onlyReport('a.hl7', `${older}\r${message(ferritin)}\r`);
    expect(report.panel.collected).toBe('2026-11-20');
    expect(report.previous.map(({ collected, results }) => [collected, results[0]?.value])).toEqual(
      [['2026-05-02', '14']],
    );
  });

  it('keeps people apart, and a bad one stops no other', async () => {
    const other = message('OBX|1|NM|^Ferritin||x|ug/L|||||F').replace('7^^^SMB', '8^^^SMB');
    const intake = await readInput(fileOf('a.hl7', `${message(ferritin)}\r${other}`));
    expect(intake.reports.map(({ ok }) => ok)).toEqual([true, false]);
    expect(said(intake)).toHaveLength(1);
  });

  it('refuses one id with two sexes', async () => {
    const other = message(ferritin).replace('|F\r', '|M\r');
    expect((await problemsIn('a.hl7', `${message(ferritin)}\r${other}`)).join()).toContain(
      'another sex',
    );
  });

  it('says so when nothing in it is a result', async () => {
    expect(await problemsIn('a.hl7', msh.replace('ORU^R01^ORU_R01', 'ADT^A01'))).toEqual([
      'a.hl7: cannot find a message with results; expected ORU^R01.',
    ]);
  });

  it.each([
    ['8859/1', (text: string) => Uint8Array.from(text, (sign) => sign.charCodeAt(0))],
    ['UNICODE UTF-8', (text: string) => new TextEncoder().encode(text)],
    ['', (text: string) => new TextEncoder().encode(text)],
  ])('is decoded as MSH-18 says: "%s"', async (charset, encode) => {
    const text = message(ferritin)
      .replace('|2.5.1', `|2.5.1||||||${charset}`)
      .replace('Tamsin', 'Zoë')
      .replace('ug/L', 'µg/L');
    const report = reportsOf(await readInput({ name: 'a.hl7', bytes: encode(text) }))[0];
    expect([report?.patient.name, report?.panel.results[0]?.unit]).toEqual(['Zoë Quill', 'µg/L']);
  });
});

describe('a structured number', () => {
  it('is not made of digits that stand where its sign belongs', async () => {
    const problems = await problemsIn('a.hl7', message('OBX|1|SN|^CRP||<0^5|mg/L|||||F'));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toContain('<0 5');
  });
});

describe('independent readers agree', () => {
  const texts = habits.map(([name, obx]) => [name, message(obx)] as const);

  it.each(texts)('@medplum/core 4.5.2 cuts the same fields: %s', (_, text) => {
    const [ours] = messagesOf(text);
    const theirs = Hl7Message.parse(text);
    const cut = ours?.segments.map(({ name, fields }) => [
      name,
      ...fields.slice(name === 'MSH' ? 2 : 1),
    ]);
    expect(cut).toEqual(
      theirs.segments.map((segment) => [
        segment.name,
        ...segment.fields.slice(1).map((one) => one.toString()),
      ]),
    );
  });

  // HL7 v2.5.1 section 2.7 lists these escapes.
  it.each([
    'a\\F\\b',
    'a\\S\\b',
    'a\\T\\b',
    'a\\R\\b',
    'a\\E\\b',
    'a\\X41\\b',
    '\\T\\\\T\\',
    'plain',
    'a\\X4A4B\\',
  ])('node-hl7-client 3.2.0 decodes the same: %s', (written) => {
    const text = message(`OBX|1|ST|^${written}||9|ug/L||||F`);
    const [ours] = messagesOf(text);
    const obx = ours?.segments.find(({ name }) => name === 'OBX');
    const decoded = ours === undefined || obx === undefined ? null : component(ours, obx, 3, 2);
    expect(decoded).toBe(new ClientMessage({ text }).get('OBX.3.2').toString());
    expect(obx === undefined ? '' : field(obx, 5)).toBe('9');
  });
});
