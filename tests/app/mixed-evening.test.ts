// A mixed evening of invented patients in ten languages, from the file to the print house, as a clinic would do it.
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inventEvening, inventPost } from '../../scripts/invent-evening.js';
import { reportsIn } from './evening.js';
import { openDesk, type Ran } from './program.js';

const desk = openDesk();
afterAll(desk.clear);

const size = 60;
const reports = [...inventEvening(size)];
const file = desk.put('evening.json', reports);
const post = desk.put('post.csv', inventPost(reports));
const list = (name: string, column: number) => reportsIn(desk.read(`evening/${name}`), column);
const letters = () => readdirSync(join(desk.folder, 'evening/letters')).sort();
const said: string[] = [];
function run(...words: string[]): Ran {
  const ran = desk.run(...words);
  said.push(ran.stdout, ran.stderr);
  return ran;
}

describe('a mixed evening', () => {
  beforeAll(() => {
    run('mailing', file, '--out', 'evening', '--demo', '--date', '2026-11-25', '--format', 'html');
  }, 120_000);

  it('ends with every report in exactly one of the three lists', () => {
    const [phone, fix] = [list('calls.csv', 1), list('to-fix.csv', 0)];
    expect(letters().length + phone.length + fix.length).toBe(size);
    expect(phone.filter((number) => fix.includes(number))).toEqual([]);
    expect(phone.length).toBeGreaterThan(3);
  });

  it('writes to each in the language asked for, however its tag is spelt', () => {
    const tags = new Set(letters().map((name) => name.split('.')[1]));
    expect(tags.size).toBe(10);
    expect(tags).toContain('zh-Hans');
    expect(desk.read('evening/to-fix.csv')).toMatch(/cannot write a letter in this language/);
  });

  it('is reviewed, signed, released in part, printed as one file and verified', async () => {
    expect(run('review', 'evening').status).toBe(0);
    const open = desk.read('evening/to-sign.txt').split('\n').slice(1, -1);
    expect(open.sort()).toEqual(letters().map((name) => name.split('.')[0]));
    const ids = letters()
      .slice(0, 20)
      .map((name) => name.split('.')[0]);
    const signed = desk.put('ids.txt', ids.join('\n'));
    expect(run('review', 'evening', '--sign', signed, '--checked-by', 'Dr Wren Abara').status).toBe(
      0,
    );
    const [before, held] = [letters().length, list('calls.csv', 3)];
    for (const id of held.slice(0, 2))
      expect(
        run('release', 'evening', '--id', id, '--checked-by', 'Dr Wren Abara', '--done', 'Phoned.')
          .status,
      ).toBe(0);
    expect(letters()).toHaveLength(before + 2);
    expect(list('calls.csv', 3)).toEqual(held.slice(2));
    const printed = run('print', 'evening', '--window', 'din-5008-b', '--addresses', post);
    expect(printed.stderr).toMatch(new RegExp(`${before + 2} letters on \\d+ sheets, 0 left out`));
    const sheets = Number(/on (\d+) sheets/.exec(printed.stderr)?.[1]);
    const data = new Uint8Array(desk.bytes('evening/print.pdf'));
    expect((await getDocument({ data, verbosity: 0 }).promise).numPages).toBe(2 * sheets);
    expect(run('verify', 'evening').status).toBe(0);
  }, 120_000);

  it('releases nothing that is still to be corrected, and takes the print file back when a letter changes', () => {
    const release = (id: string) =>
      run('release', 'evening', '--id', id, '--checked-by', 'Dr Wren Abara', '--done', 'Phoned.');
    // A saturation as low as this is doubtful, and the ferritin beside it contradicts it.
    const held = list('calls.csv', 3);
    const disagreeing = reports.find(
      ({ patient, results }) =>
        held.includes(patient.id) &&
        results.some(
          ({ analyte, value }) => analyte === 'transferrin-saturation' && Number(value) < 3,
        ),
    );
    const doubtful = release(disagreeing?.patient.id ?? '');
    expect([doubtful.status, doubtful.stderr]).toEqual([
      65,
      expect.stringMatching(/cannot be made yet \(doubtful result\); nothing was released/),
    ]);
    expect(existsSync(join(desk.folder, 'evening/print.pdf'))).toBe(true);
    const [next = ''] = list('calls.csv', 3);
    expect(release(next).stderr).toMatch(/print\.pdf is gone/);
    expect(existsSync(join(desk.folder, 'evening/print.pdf'))).toBe(false);
    expect(run('verify', 'evening').status).toBe(0);
  }, 120_000);

  it('tells the caller in which language the patient reads, and the secretary what is next', () => {
    expect(desk.read('evening/calls.csv')).toMatch(
      /"(?:Arabic|Bangla|Hindi|Persian|Polish|Spanish|Ukrainian|Vietnamese)"/,
    );
    expect(said.join('\n')).toMatch(/First phone \d+: evening\/calls\.pdf/);
    expect(said.join('\n')).toMatch(/ironleaf review evening --sign evening\/to-sign\.txt/);
  });

  it('leaves no name, birth date or result in a log, a record, the recall or the summary', () => {
    const records = [
      'manifest.jsonl',
      'run.json',
      'recall.csv',
      'recall.ics',
      'summary.html',
      'review.json',
      'signed.json',
    ];
    const released = readdirSync(join(desk.folder, 'evening/released')).map(
      (name) => `released/${name}`,
    );
    const texts = [...records, ...released].map((name) => desk.read(`evening/${name}`));
    for (const text of [...texts, ...said])
      for (const { patient, results } of reports) {
        expect(text).not.toContain(patient.name);
        if (patient.birthDate !== undefined) expect(text).not.toContain(patient.birthDate);
        for (const { value, unit } of results) expect(text).not.toContain(`${value} ${unit}`);
      }
    expect(desk.read('evening/to-fix.csv')).not.toMatch(
      new RegExp(reports.map(({ patient }) => patient.name).join('|')),
    );
  });
});

describe('own templates of a clinic', () => {
  it('that are corrected make their letters again; a template that no letter uses makes none', () => {
    const own = join(desk.folder, 'own');
    const shipped = (name: string) => readFileSync(join('templates', `${name}.hbs`), 'utf8');
    const few = desk.put('few.json', reports.slice(0, 6));
    mkdirSync(own);
    desk.put('own/letter.hbs', shipped('letter'));
    desk.put('own/short.hbs', shipped('short'));
    const words = [
      'mailing',
      few,
      '--out',
      'own-run',
      '--demo',
      '--format',
      'html',
      '--templates',
      own,
    ];
    const first = desk.run(...words).stderr;
    const made = Number(/(\d+) letters made/.exec(first)?.[1]);
    expect(made).toBeGreaterThan(1);
    desk.put('own/short.hbs', `${shipped('short')}\n{{!-- a remark --}}\n`);
    expect(desk.run(...words).stderr).toMatch(/ 0 letters made/);
    desk.put('own/letter.hbs', `${shipped('letter')}\n{{!-- a remark --}}\n`);
    expect(desk.run(...words).stderr).toMatch(new RegExp(` ${made} letters made`));
  });
});
