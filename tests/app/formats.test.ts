// Laboratory data as it comes, through the built program: what is understood, and the same answer by every door.
import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import type { Bundle, Communication, DocumentReference } from 'fhir/r4.js';
import { afterAll, describe, expect, it } from 'vitest';
import { openDesk } from './program.js';

const desk = openDesk();
afterAll(desk.clear);
const sample = (name: string) => resolve('examples/formats', name);
const day = ['--date', '2026-11-25'] as const;

/** One person's results, written down in every format. */
const doors = [
  'report.json',
  'rows.csv',
  'rows.xlsx',
  'bundle.fhir.json',
  'message.hl7',
  'pasted.txt',
] as const;

describe('the same facts by six doors', () => {
  const explained = (name: string) => desk.run('explain', sample(name), '--json', ...day).stdout;
  const expected = explained('report.json');

  it('are understood at all', () => {
    expect(JSON.parse(expected)).toMatchObject({ pattern: 'iron-deficiency-anaemia' });
  });

  it.each(doors)('are read from %s to the same interpretation, byte for byte', (name) => {
    expect(explained(name)).toBe(expected);
  });
});

describe('ironleaf check', () => {
  it.each([
    ['report.json', 'a report file (JSON)', 'results[0]'],
    ['rows.csv', 'a table (CSV)', 'line 2'],
    ['rows.xlsx', 'a spreadsheet (XLSX)', 'line 2'],
    ['bundle.fhir.json', 'FHIR R4', 'entry[1].resource (haemoglobin)'],
    ['message.hl7', 'HL7 v2', 'line 4'],
    ['pasted.txt', 'pasted text', 'line 5'],
  ])('shows every result of %s with its place', (name, format, place) => {
    const ran = desk.run('check', sample(name), ...day);
    expect(ran.status).toBe(0);
    const [first = '', person = '', ...lines] = ran.stdout.trimEnd().split('\n');
    expect(first).toContain(`Read as ${format}: 6 understood, 0 doubtful`);
    expect(person).toBe(
      'Person: id SB-3001, name Mirren Sallow, sex female, born 1987-06-14, sample of 2026-11-17.',
    );
    const understood = lines.filter((line) => line.includes('  understood  '));
    expect(understood).toHaveLength(6);
    expect(understood.find((line) => line.includes('haemoglobin 108 g/L (115 - 155) L'))).toMatch(
      new RegExp(`^${place.replace(/[[\]()]/g, '\\$&')} `),
    );
    expect(desk.made()).toEqual([]);
  });

  it('names the column that it passed over', () => {
    const table = 'name;Hb g/L;sex;age;collected;Parking\nAnn;120;F;30;2026-11-20;12\n';
    const { stdout } = desk.run('check', desk.put('parking.csv', table));
    expect(stdout).toMatch(/^line 1 +ignored +Parking: cannot tell what this column holds/m);
  });

  it('says why a line was passed over, and which line', () => {
    const { stdout } = desk.run('check', sample('pasted.txt'), ...day);
    expect(stdout).toMatch(/^line 9 +ignored +passed over: glycated haemoglobin/m);
  });

  it('asks about a doubtful value with status 1, until it is confirmed', () => {
    const slip = resolve('examples/unit-slip.json');
    const asked = desk.run('check', slip, ...day);
    expect(asked.status).toBe(1);
    expect(asked.stdout).toMatch(/doubtful +ferritin 58 ng\/dL = 0\.58 ug\/L.*did the sheet say/);
    const confirmed = desk.run('check', slip, ...day, '--confirm', 'ferritin');
    expect(confirmed.status).toBe(0);
  });

  it('still shows what was understood where another line stops the report', () => {
    const text = 'Sex: F\nCollected: 2026-11-20\nFerritin 9 ug/L\nCRP 1,234 mg/L\n';
    const ran = desk.run('check', desk.put('half.txt', text), ...day);
    expect(ran.status).toBe(65);
    expect(ran.stdout).toMatch(/^line 3 +understood +ferritin 9 ug\/L$/m);
    expect(ran.stdout).toMatch(/^line 4 +wrong +crp: cannot tell 1\.234 from 1234/m);
  });

  it('says that the sex is missing rather than choosing one', () => {
    const path = desk.put('nosex.txt', 'Collected: 2026-11-20\nFerritin 9 ug/L\n');
    const ran = desk.run('check', path, ...day);
    expect(ran.stdout).toContain('sex NOT GIVEN');
    expect(ran.status).toBe(65);
  });

  it('shows no control characters of a file on the terminal', () => {
    const text = 'Sex: F\nCollected: 2026-11-20\nFerritin 9 ug/L (\u001B[31m30 - 400)\n';
    const { stdout } = desk.run('check', desk.put('red.txt', text), ...day);
    expect(stdout).not.toContain('\u001B');
  });
});

describe('what the operator says of the person', () => {
  const pasted = 'Ferritin  9 ug/L (30 - 400) L\nHaemoglobin 101 g/L (115 - 155) L\n';

  it('fills what pasted text leaves open, through standard input', () => {
    const facts = ['--sex', 'female', '--collected', '2026-11-20', '--age', '31'];
    const ran = desk.pipe(pasted, 'explain', '-', ...facts, '--json', ...day);
    expect(ran.status).toBe(0);
    expect(JSON.parse(ran.stdout)).toMatchObject({
      collected: '2026-11-20',
      pattern: 'iron-deficiency-anaemia',
    });
  });

  it('chooses the limits for pregnancy', () => {
    const facts = ['--sex', 'female', '--collected', '2026-11-20', '--born', '1990-01-30'];
    const ran = desk.pipe(pasted, 'explain', '-', ...facts, '--pregnant-weeks', '20', '--json');
    expect(JSON.parse(ran.stdout).flags).toContain('pregnancy');
  });

  it('is refused where the file says otherwise', () => {
    const ran = desk.run('explain', sample('message.hl7'), '--sex', 'male');
    expect(ran.status).toBe(65);
    expect(ran.stderr).toMatch(/sex: cannot tell which holds/);
    const other = desk.run('explain', sample('message.hl7'), '--collected', '2026-11-01');
    expect(other.stderr).toMatch(/collected: cannot tell which holds/);
  });

  it('is refused for a file of several people', () => {
    const ran = desk.run('check', resolve('examples/evening-run.csv'), '--born', '1990-01-30');
    expect(ran.stdout).toMatch(/cannot give the facts of one person to a file of several/);
  });

  it.each([
    ['--born', '30/01/1990'],
    ['--age', 'thirty'],
    ['--pregnant-weeks', '20.5'],
    ['--collected', '2026-02-30'],
    ['--sex', 'f'],
  ])('is a usage mistake when %s is %s', (option, value) => {
    expect(desk.run('check', sample('pasted.txt'), option, value).status).toBe(64);
  });
});

describe('a laboratory’s own columns', () => {
  it('are read with a map, by check, explain and letter', () => {
    const map = ['--columns', sample('own-columns.map.json')];
    const table = sample('own-columns.csv');
    expect(desk.run('check', table, ...map, ...day).stdout).toMatch(/4 understood, 0 doubtful/);
    expect(desk.run('explain', table, ...map, '--json', ...day).status).toBe(0);
    const made = desk.run('letter', table, ...map, ...day, '--demo', '--format', 'text');
    expect(made.stdout.trim().split('\n')).toHaveLength(2);
  });

  it('are proposed as JSON on stdout, with the doubts on stderr', () => {
    const ran = desk.run('columns', sample('own-columns.csv'));
    expect(JSON.parse(ran.stdout)).toMatchObject({
      columns: { 'Pat-Nr': 'id', Geschlecht: 'sex', 'Geb.': 'birthDate' },
      dates: 'day-first',
      decimal: ',',
    });
    expect(ran.stderr).toMatch(/Station/);
  });

  it('are told what is wrong with their map', () => {
    const map = desk.put('map.json', { columns: { FERR: { analyte: 'feritin' } } });
    const ran = desk.run('check', sample('own-columns.csv'), '--columns', map);
    expect(ran.status).toBe(65);
    expect(ran.stderr).toMatch(/Did you mean 'ferritin'/);
  });
});

describe('a letter for the record', () => {
  const letter = (out: string, ...more: string[]) =>
    desk.run('letter', sample('message.hl7'), '--demo', ...day, '--out', out, ...more);
  letter('record', '--format', 'pdf,note,fhir');
  const bundle = JSON.parse(desk.read('record/message.en.fhir.json')) as Bundle;
  const [document, message] = (bundle.entry ?? []).map(({ resource }) => resource) as [
    DocumentReference,
    Communication,
  ];

  it('is noted in under 120 words: found, said, planned', () => {
    const note = desk.read('record/message.en.note.txt');
    expect(note.split(/\s+/).filter((word) => word !== '').length).toBeLessThan(120);
    expect(note).toMatch(/^Found: .*Haemoglobin 108 g\/L, well below.*\nSaid: .*\nPlanned: /);
    expect(note).toMatch(/NOT YET CHECKED/);
  });

  // HL7 FHIR R4 (4.0.1): elements with a cardinality of 1 and required bindings, from memory.
  it('is a Bundle with the elements and codes that FHIR R4 requires', () => {
    expect(bundle.resourceType).toBe('Bundle');
    expect(['document', 'message', 'collection']).toContain(bundle.type);
    expect(document.resourceType).toBe('DocumentReference');
    expect(['current', 'superseded', 'entered-in-error']).toContain(document.status);
    expect(['preliminary', 'final', 'amended', 'entered-in-error']).toContain(document.docStatus);
    expect(document.content.length).toBeGreaterThan(0);
    expect(message.resourceType).toBe('Communication');
    const events =
      'preparation in-progress not-done on-hold stopped completed entered-in-error unknown';
    expect(events.split(' ')).toContain(message.status);
    const instant = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/;
    for (const time of [bundle.timestamp, document.date, document.content[0]?.attachment.creation])
      expect(time).toMatch(instant);
  });

  it('is found by its own references, which are urns of UUIDs', () => {
    const urls = (bundle.entry ?? []).map(({ fullUrl }) => fullUrl);
    const uuid = /^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
    for (const url of urls) expect(url).toMatch(uuid);
    expect(new Set(urls).size).toBe(urls.length);
    expect(urls).toContain(message.payload?.[0]?.contentReference?.reference);
    expect((bundle.entry ?? []).map(({ resource }) => `urn:uuid:${resource?.id}`)).toEqual(urls);
  });

  it('carries the same PDF that is printed, with its size and hash', () => {
    const pdf = Buffer.from(desk.bytes('record/message.en.pdf'));
    const { data = '', size, hash } = document.content[0]?.attachment ?? {};
    expect(Buffer.from(data, 'base64').equals(pdf)).toBe(true);
    expect(size).toBe(pdf.length);
    expect(hash).toBe(createHash('sha1').update(pdf).digest('base64'));
  });

  it('claims nothing: in preparation, and preliminary until a clinician is named', () => {
    expect([message.status, document.docStatus]).toEqual(['preparation', 'preliminary']);
    expect(document.authenticator).toBeUndefined();
    letter('signed', '--format', 'fhir', '--checked-by', 'Dr Wren Abara');
    const signed = JSON.parse(desk.read('signed/message.en.fhir.json')) as Bundle;
    const [first] = (signed.entry ?? []).map(({ resource }) => resource as DocumentReference);
    expect(first?.docStatus).toBe('final');
    expect(first?.authenticator?.display).toBe('Dr Wren Abara');
  });

  it('has the same bytes on another day of making it', () => {
    letter('again', '--format', 'note,fhir');
    for (const ending of ['note.txt', 'fhir.json'])
      expect(desk.read(`again/message.en.${ending}`)).toBe(
        desk.read(`record/message.en.${ending}`),
      );
  });

  it('is not written for a result that must be phoned first', () => {
    const held = resolve('examples/very-low-haemoglobin.json');
    const ran = desk.run('letter', held, '--demo', ...day, '--format', 'note,fhir', '--out', 'no');
    expect(ran.status).toBe(1);
    expect(ran.stdout).not.toMatch(/note|fhir/);
  });
});
