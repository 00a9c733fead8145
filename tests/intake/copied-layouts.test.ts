// Layouts of results as they are copied from records, portals and PDF viewers: common practice, no source; invented numbers.
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { fileOf, onlyReport, problemsIn, resultsOf } from './file.js';

const lines = (...each: readonly string[]) => each.join('\n');
const read = async (text: string) => resultsOf(await onlyReport('pasted text', text));

describe('a copied sheet', () => {
  it.each([
    [
      'German, tabs, marks of + and -',
      lines(
        'Untersuchung\tErgebnis\tEinheit\tReferenzbereich',
        'H\u00E4moglobin\t10,8 -\tg/dl\t12,0 - 15,5',
        'Transferrins\u00E4ttigung\t9 -\t%\t16 - 45',
        'CRP\t< 1,0\tmg/l\t< 5,0',
      ),
      [
        'haemoglobin 10,8 g/dl 12,0..15,5 -',
        'transferrin-saturation 9 % 16..45 -',
        'crp <1,0 mg/l ..5,0',
      ],
    ],
    [
      'French, leading dots, a comparator in words',
      lines(
        'H\u00E9moglobine ............ 10,8 g/dL   (12,0 \u00E0 16,0)   *',
        'Fer s\u00E9rique . . . . . . . 6,1 \u00B5mol/L (9,0 \u00E0 30,4)',
        'CRP .................... Inf. \u00E0 1 mg/L',
      ),
      ['haemoglobin 10,8 g/dL 12,0..16,0 *', 'serum-iron 6,1 \u00B5mol/L 9,0..30,4', 'crp <1 mg/L'],
    ],
    [
      'Spanish, marks before the unit, square brackets',
      lines(
        'HEMOGRAMA',
        'Hemoglobina            10.8  *  g/dL      [12.0 - 16.0]',
        'VCM                    74.0  *  fL        [80.0 - 100.0]',
        '\u00CDndice de saturaci\u00F3n de transferrina   9  *  %  [16 - 45]',
      ),
      [
        'haemoglobin 10.8 g/dL 12.0..16.0 *',
        'mcv 74.0 fL 80.0..100.0 *',
        'transferrin-saturation 9 % 16..45 *',
      ],
    ],
    [
      'Polish, empty cells at the end of a row lost',
      lines(
        'Badanie\tWynik\tJednostka\tZakres referencyjny\tFlaga',
        'Ferrytyna\t9,0\tng/ml\t13,0 - 150,0\tL',
        '\u017Belazo\t34\t\u00B5g/dl\t33 - 193\t',
        'Wysycenie transferryny\t9\t%\t16 - 45',
      ),
      [
        'ferritin 9,0 ng/ml 13,0..150,0',
        'serum-iron 34 \u00B5g/dl 33..193',
        'transferrin-saturation 9 % 16..45',
      ],
    ],
    [
      'units before values',
      lines('Ferritin ug/L 9 L 15-150', 'Iron umol/L 6.1 L 9.0-30.4', 'CRP mg/L <5 <5'),
      ['ferritin 9 ug/L 15..150 L', 'serum-iron 6.1 umol/L 9.0..30.4 L', 'crp <5 mg/L ..5'],
    ],
    [
      'results of two lines, marks in words',
      lines(
        'Serum ferritin',
        '  9 ug/L   (13.0 to 150.0)   Below low reference limit',
        'Haemoglobin concentration',
        '  108 g/L   (115.0 to 155.0)',
        'Serum C reactive protein level',
        '  <5 mg/L',
      ),
      ['ferritin 9 ug/L 13.0..150.0 Below', 'haemoglobin 108 g/L 115.0..155.0', 'crp <5 mg/L'],
    ],
    [
      'a cell a line',
      lines('Ferritin', '9', 'ug/L', '15 - 150', 'L', 'Haemoglobin', 'g/L', '108', '115 - 155'),
      ['ferritin 9 ug/L 15..150 L', 'haemoglobin 108 g/L 115..155'],
    ],
    [
      'blanks that do not break, the Greek mu, other dashes',
      lines(
        'Ferritin\u00A0\u00A0\u00A09\u00A0\u03BCg/L\u00A0\u00A0(30\u00A0\u2013\u00A0400)\u00A0\u00A0L',
        'Iron\u2003\u20036.1\u202F\u00B5mol/L\u20039.0\u202F\u2011\u202F30.4',
      ),
      ['ferritin 9 \u03BCg/L 30..400 L', 'serum-iron 6.1 \u00B5mol/L 9.0..30.4'],
    ],
    [
      'a record with its date before each entry',
      lines(
        '17-Nov-2026 Full blood count',
        'Haemoglobin estimation 108 g/L [115.0 - 155.0]; Below low reference limit',
        'Mean corpusc. haemoglobin(MCH) 24.1 pg [27.0 - 32.0]',
        '17-Nov-2026 Serum ferritin 9 ug/L [13.0 - 150.0]',
      ),
      [
        'haemoglobin 108 g/L 115.0..155.0 Below',
        'mch 24.1 pg 27.0..32.0',
        'ferritin 9 ug/L 13.0..150.0',
      ],
    ],
    [
      'values with their units under one header, flags missing',
      lines(
        'Component              Your Value   Standard Range   Flag',
        'Hemoglobin             10.8 g/dL    12.0 - 15.5 g/dL   L',
        'TIBC                   450 ug/dL    250 - 450 ug/dL',
        '% Saturation           8 %          15 - 50 %   L',
      ),
      [
        'haemoglobin 10.8 g/dL 12.0..15.5 L',
        'tibc 450 ug/dL 250..450',
        'transferrin-saturation 8 % 15..50 L',
      ],
    ],
    [
      'words before the interval',
      lines(
        'Ferritin: <15 ug/L (ref. 15-150)',
        'Hb: 108 g/L (ref >= 115)',
        'Ferro s\u00E9rico: 34 \u00B5g/dL   Valores de refer\u00EAncia: 50 a 170',
        'Transferrin saturation: 9% (ref 16%-45%)',
      ),
      [
        'ferritin <15 ug/L 15..150',
        'haemoglobin 108 g/L 115..',
        'serum-iron 34 \u00B5g/dL 50..170',
        'transferrin-saturation 9 % 16..45',
      ],
    ],
    [
      'a frame of bars',
      lines(
        '| Test | Result | Unit | Reference |',
        '|------|--------|------|-----------|',
        '| Ferritin | 9 | \u00B5g/L | 15\u2013150 |',
        '| CRP | <5 | mg/L | <5 |',
      ),
      ['ferritin 9 \u00B5g/L 15..150', 'crp <5 mg/L ..5'],
    ],
    [
      'one sentence',
      'Bloods: Hb 108 g/L, MCV 74 fL, ferritin 9 ug/L, CRP <5 mg/L, TSAT 9%',
      [
        'haemoglobin 108 g/L',
        'mcv 74 fL',
        'ferritin 9 ug/L',
        'crp <5 mg/L',
        'transferrin-saturation 9 %',
      ],
    ],
  ])('%s', async (_, text, expected) => {
    expect(await read(text)).toEqual(expected);
  });

  it('of cells from a spreadsheet says who and when', async () => {
    const text = lines(
      'Name\tTamsin Quill',
      'Sex\tF',
      'DOB\t14/06/1987',
      'Collected\t17/11/2026 08:40',
      'Analyte\tValue\tUnits\tLow\tHigh',
      'Ferritin\t9\tug/L\t15\t150',
    );
    const report = await onlyReport('x', text);
    expect(report.patient).toMatchObject({ name: 'Tamsin Quill', birthDate: '1987-06-14' });
    expect(report.panel.collected).toBe('2026-11-17');
    expect(resultsOf(report)).toEqual(['ferritin 9 ug/L 15..150']);
  });

  it.each([
    [
      'a date before each entry',
      lines('17 Nov 2026 Ferritin 9 ug/L', '12 May 2026 Ferritin 14 ug/L'),
    ],
    [
      'titles with their dates',
      lines(
        'Iron studies 17/11/2026',
        'Ferritin 9 ug/L',
        'Iron studies (12/05/2026)',
        'Ferritin 14 ug/L',
      ),
    ],
    [
      'a column of dates',
      lines(
        'Date\tTest\tResult\tUnits',
        '17/11/2026\tFerritin\t9\tug/L',
        '12/05/2026\tFerritin\t14\tug/L',
      ),
    ],
    [
      'a blank corner',
      lines(
        '            17/11/2026   12/05/2026   Unit',
        'Ferritin    9 L          14           ug/L',
      ),
    ],
  ])('of several days: %s', async (_, text) => {
    const { panel, previous } = await onlyReport('x', text);
    const told = [panel, ...previous].map(({ collected, results }) => [
      collected,
      ...results.map(({ value }) => value),
    ]);
    expect(told).toEqual([
      ['2026-11-17', '9'],
      ['2026-05-12', '14'],
    ]);
  });
});

describe('whose value is whose is never guessed', () => {
  it.each([
    ['names above names', lines('Ferritin', 'CRP', '9 ug/L', '<5 mg/L')],
    ['another test above', lines('Sodium', 'Ferritin', '140 mmol/L', '9 ug/L')],
    ['values above names', lines('9 ug/L', 'Ferritin', '5 mg/L', 'CRP')],
    ['a date below a name', lines('Ferritin', '17/11/2026', '9 ug/L')],
  ])('%s', async (_, text) => {
    const { reports } = await readInput(fileOf('x', text));
    expect(reports.flatMap((report) => (report.ok ? resultsOf(report.value) : []))).toEqual([]);
  });

  it.each([
    [
      'a year of two digits',
      lines('Test\t17.11.26\t12.05.26\tUnit', 'Ferritin\t9\t14\tng/ml'),
      'dates such as 2026-11-25',
    ],
    [
      'a value lost from a row',
      lines('Test  Value  Unit  Range', 'CRP  mg/L  <5'),
      'which cell belongs',
    ],
    [
      'a value lost from a row of dates',
      lines('Test  2026-11-17  2026-05-12  Unit', 'CRP  <5  mg/L'),
      'which cell belongs',
    ],
    ['no units at all', 'Hb 108, ferritin 9', null],
  ])('%s is asked about', async (_, text, expected) => {
    if (expected === null) expect(await read(text)).toEqual(['haemoglobin 108 -', 'ferritin 9 -']);
    else expect((await problemsIn('x', text)).join()).toContain(expected);
  });

  it('a comment with a number stays a comment', async () => {
    const text = lines(
      'Ferritin 9 ug/L',
      'Ferritin below 30 suggests low iron stores.',
      'Ferritin less than 15 ug/L suggests low iron stores.',
    );
    const intake = await readInput(fileOf('x', text));
    expect(intake.reports.flatMap((one) => (one.ok ? resultsOf(one.value) : []))).toEqual([
      'ferritin 9 ug/L',
    ]);
  });
});
