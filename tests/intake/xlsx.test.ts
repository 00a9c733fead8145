// Spreadsheets: the cells of a sheet read as a table, and files that are none or too large.
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { reportsOf, resultsOf, said } from './file.js';
import { sheet, zip } from './sheet.js';

const wide = sheet([
  ['id', 'sex', 'collected', 'Ferritin (ug/L)', 'Hb (g/dL)'],
  ['0012', 'F', '2026-11-20', 12.5, '9,8'],
  ['13', 'M', '2026-11-20', '&lt;5'],
]);

describe('a spreadsheet', () => {
  it('is read as a table, with its numbers as they are stored', async () => {
    const intake = await readInput({ name: 'lab.xlsx', bytes: zip(wide) });
    expect(said(intake)).toEqual([]);
    expect(reportsOf(intake).map((report) => [report.patient.id, ...resultsOf(report)])).toEqual([
      ['0012', 'ferritin 12.5 ug/L', 'haemoglobin 9,8 g/dL'],
      ['13', 'ferritin <5 ug/L'],
    ]);
  });

  it.each([
    [
      'a zip that is no spreadsheet',
      zip([{ name: 'a.txt', text: 'x' }]),
      'cannot read this as a spreadsheet',
    ],
    ['a zip cut short', zip(wide).subarray(0, 400), 'cannot read this as a spreadsheet'],
    [
      'one that unpacks beyond measure',
      zip(wide, 900_000_000),
      'cannot read a spreadsheet of this size',
    ],
    ['an empty one', zip(sheet([])), 'cannot find a cell'],
  ])('is refused in one sentence: %s', async (_, bytes, expected) => {
    const problems = said(await readInput({ name: 'lab.xlsx', bytes }));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toContain(expected);
  });
});

describe('a cell that cannot be read', () => {
  it('is counted where it holds an error, and taken for empty', async () => {
    const parts = sheet([
      ['id', 'Ferritin (ug/L)', 'Hb (g/L)'],
      ['7', 9, 101],
    ]).map(({ name, text }) => ({
      name,
      text: text.replace('<c r="B2"><v>9</v></c>', '<c r="B2" t="e"><v>#N/A</v></c>'),
    }));
    const intake = await readInput({ name: 'lab.xlsx', bytes: zip(parts) });
    expect(reportsOf(intake).map(resultsOf)).toEqual([['haemoglobin 101 g/L']]);
    expect(intake.ignored.map(({ found }) => found)).toEqual(['1 such as #N/A']);
  });

  it('is told with its place where it holds a number that is none', async () => {
    const cell = '<c r="B2"><v>2.8.1</v></c>';
    const parts = sheet([
      ['id', 'Ferritin (ug/L)'],
      ['7', 9],
    ]).map(({ name, text }) => ({ name, text: text.replace('<c r="B2"><v>9</v></c>', cell) }));
    const problems = said(await readInput({ name: 'lab.xlsx', bytes: zip(parts) }));
    expect(problems).toEqual([
      expect.stringContaining('lab.xlsx, row 2, column 2: cannot read this cell'),
    ]);
  });
});

describe('a spreadsheet of a few kilobytes that would be laid out without end', () => {
  const withRows = (rows: string) =>
    zip(
      sheet([['id', 'Ferritin (ug/L)']]).map(({ name, text }) => ({
        name,
        text: text.replace('</sheetData>', `${rows}</sheetData>`),
      })),
    );
  it.each([
    ['its last possible cell', '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'],
    ['a cell by a word', '<row r="2"><c r="FERRITIN2"><v>1</v></c></row>'],
    ['a cell by a word in entities', '<row r="2"><c r="&#70;ERRITIN2"><v>1</v></c></row>'],
    ['a cell by a word, in a namespace', '<x:row r="2"><x:c x:r=\'FERRITIN2\'/></x:row>'],
    ['rows without a place', '<row/>'.repeat(25_001)],
    ['more elements than any table', `<row>${'<c/>'.repeat(1_500_001)}</row>`],
  ])('is refused before it is: %s', async (_, rows) => {
    const intake = await readInput({ name: 'far.xlsx', bytes: withRows(rows) });
    expect(said(intake)).toEqual([expect.stringContaining('reaches this far')]);
  });

  it('is known for a sheet whatever its part is called', async () => {
    const parts = sheet([['id', 'Ferritin (ug/L)']]).map(({ name, text }) => ({
      name: name.replace('worksheets/sheet1', 'data'),
      text: text
        .replace('worksheets/sheet1', 'data')
        .replace('</sheetData>', '<row r="2"><c r="FERRITIN2"><v>1</v></c></row></sheetData>'),
    }));
    const intake = await readInput({ name: 'far.xlsx', bytes: zip(parts) });
    expect(said(intake)).toEqual([expect.stringContaining('reaches this far')]);
  });

  it('is not taken for one because of what other parts number', async () => {
    const theme = { name: 'xl/theme/theme1.xml', text: '<a:fillToRect l="0" r="100000"/>' };
    const sound = sheet([
      ['id', 'Ferritin (ug/L)'],
      ['7', 9],
    ]);
    const intake = await readInput({ name: 'lab.xlsx', bytes: zip([...sound, theme]) });
    expect(reportsOf(intake).map(resultsOf)).toEqual([['ferritin 9 ug/L']]);
  });
});
