// Calls the built library as another program would: values in, values out.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import type * as Library from '../../src/library.js';

const date = '2026-11-25';
let library: typeof Library;
let kit: Library.Kit;
let clinic: Library.Clinic;

beforeAll(async () => {
  library = await import(pathToFileURL(resolve('dist/library.js')).href);
  kit = await library.openKit();
  clinic = {
    maternityPhone: null,
    outOfHours: null,
    interpreter: null,
    website: null,
    ...JSON.parse(readFileSync('examples/clinic.json', 'utf8')),
    demo: true,
  };
});

const file = (name: string) => ({ name, bytes: readFileSync(`examples/${name}`) });

async function reportOf(name: string): Promise<Library.Report> {
  const read = await library.readReport(file(name), { today: date });
  if (!read.ok) throw new Error(read.problems.map(library.sayProblem).join('\n'));
  return read.value;
}

describe('the library', () => {
  it('makes a letter in every format from a report, a clinic and a date', async () => {
    const report = await reportOf('heavy-periods.json');
    const wishes = { date, formats: ['html', 'pdf', 'text'] as const };
    const made = await library.makeLetter(report, clinic, wishes, kit);
    expect(made.kind === 'made' && made.files.map(({ ending }) => ending)).toEqual([
      'html',
      'pdf',
      'txt',
    ]);
    expect(await library.makeLetter(report, clinic, wishes, kit)).toEqual(made);
  });

  it('gives the same letter step by step as at once', async () => {
    const report = await reportOf('heavy-periods.json');
    const form = { paper: 'A4', size: 'standard' } as const;
    const interpretation = library.interpret(report, date);
    const choices = { steps: null, tabletsPrescribed: null, noFood: false };
    const content = library.composeLetter({
      report,
      interpretation,
      advice: library.advise(report, interpretation, choices, date),
      clinic,
      language: await kit.language('en'),
      options: { analogy: 'shirt-shop', checkedBy: null, date, easyRead: false },
    });
    if (!content.ok) throw new Error('no content');
    const letter = library.arrangeLetter(content.value, await kit.template('letter'));
    if (!letter.ok) throw new Error('no letter');
    const drawn = await library.drawPdf(letter.value, { form, created: `${date}T00:00:00Z` }, kit);
    const made = await library.makeLetter(
      report,
      clinic,
      { date, form, formats: ['html', 'pdf', 'text'] },
      kit,
    );
    if (made.kind !== 'made' || !drawn.ok) throw new Error('not made');
    const [html, pdf, text] = made.files.map(({ content: bytes }) => bytes);
    expect(library.writeHtml(letter.value, form)).toBe(html);
    expect(library.writeText(letter.value)).toBe(text);
    expect(Buffer.from(drawn.value).equals(Buffer.from(pdf ?? ''))).toBe(true);
  });

  it('gives a call sheet and no letter where a call must come first', async () => {
    const report = await reportOf('very-low-haemoglobin.json');
    const made = await library.makeLetter(report, clinic, { date }, kit);
    expect(made.kind).toBe('held');
    expect(Object.keys(made)).toEqual(['kind', 'callSheet']);
  });

  it('refuses a doubtful value until somebody confirms it', async () => {
    const made = await library.makeLetter(await reportOf('unit-slip.json'), clinic, { date }, kit);
    expect(made).toMatchObject({ kind: 'refused', problems: [{ code: 'doubtful-result' }] });
  });

  it('reads every report of a file, and refuses to take several for one', async () => {
    const run = file('evening-run.csv');
    const { reports } = await library.readReports(run, { today: date });
    expect(reports.length).toBeGreaterThan(1);
    const one = await library.readReport(run, { today: date });
    expect(one).toMatchObject({ ok: false, problems: [{ code: 'one-report' }] });
  });

  it('throws a sentence, not a status, for a language that is not there', async () => {
    await expect(kit.language('xx')).rejects.toThrow('there is no language "xx"');
  });
});
