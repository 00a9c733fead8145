// Rows that interpretation stands on: one id each, a source each, and numbers that can be shown.
import { describe, expect, it } from 'vitest';
import { positionBands } from '../../src/knowledge/cut-offs.js';
import { pathway } from '../../src/knowledge/follow-up.js';
import { altitudes, haemoglobinLimits, smokings } from '../../src/knowledge/groups.js';
import { limit } from '../../src/knowledge/limit.js';
import { patternProfiles, patternRules } from '../../src/knowledge/pattern-rules.js';
import { numberOf, rowById, rowCount, rowIds } from '../../src/knowledge/row-index.js';
import { analytes, patterns } from '../../src/terms.js';

describe('rows', () => {
  it('share no id between tables', () => {
    expect(rowIds.length).toBe(rowCount);
  });

  it('name no file of ours as a source', () => {
    for (const id of rowIds) expect(rowById(id).source).not.toMatch(/evidence|\.md|V2?\[/);
  });

  it.each([
    ['who-2024-haemoglobin-women-15-65-anaemia', '120 g/L'],
    ['usual-mcv', '80 to 100 fL'],
    ['usual-crp', 'up to 5 mg/L'],
    ['variation-haemoglobin', 'CVi 2.8 %, CVa 1.4 %'],
    ['told-well-ferritin', 'x 0.6 and x 1.5'],
    ['mentzer', '13'],
    ['pattern-all-in-range', null],
  ])('%s shows %s', (id, number) => {
    expect(numberOf(rowById(id))).toBe(number);
  });

  it('throw for an id that does not exist: that is our bug', () => {
    expect(() => rowById('nothing')).toThrow('nothing');
    expect(() => limit('nothing')).toThrow('nothing');
    expect(() => pathway('nothing')).toThrow('nothing');
  });

  it('have a position band for every analyte and a pattern row for every pattern', () => {
    expect(positionBands.map(({ analyte }) => analyte).sort()).toEqual([...analytes].sort());
    expect(new Set(patternRules.map(({ pattern }) => pattern))).toEqual(new Set(patterns));
    expect(new Set(patternProfiles.map(({ pattern }) => pattern)).size).toBe(
      patternProfiles.length,
    );
  });

  it('end the pattern table with a row that fits everything', () => {
    const last = patternRules.at(-1);
    expect([last?.pattern, last?.when, last?.needs, last?.without]).toEqual([
      'unclear',
      {},
      [],
      [],
    ]);
  });
});

describe('WHO 2024 adjustments against the equations in the footnotes', () => {
  /** Table 4: g/L = 0.0056384 m + 0.0000003 m^2, at the middle of each band, to the nearest gram or so. */
  it('altitude rows lie within 1 g/L of the equation at the middle of their band', () => {
    for (const { fromMetres, belowMetres, value } of altitudes.slice(1)) {
      const middle = (fromMetres + belowMetres) / 2;
      const byEquation = 0.0056384 * middle + 0.0000003 * middle ** 2;
      expect(Math.abs(byEquation - value)).toBeLessThan(1);
    }
  });

  /** Table 5: g/L = 0.4565 n - 0.0078 n^2. */
  it('smoking rows lie within 1 g/L of the equation inside their band', () => {
    const byEquation = (n: number) => 0.4565 * n - 0.0078 * n ** 2;
    const at = {
      'who-2024-smoking-1-9': 7,
      'who-2024-smoking-10-19': 14,
      'who-2024-smoking-20-or-more': 20,
    };
    for (const [id, n] of Object.entries(at)) {
      const row = smokings.find((one) => one.id === id);
      expect(Math.abs(byEquation(n) - (row?.value ?? 0))).toBeLessThan(1);
    }
  });

  it('every group has its three bands, each below the last', () => {
    for (const group of new Set(haemoglobinLimits.map((row) => row.group))) {
      const bands = haemoglobinLimits.filter(
        (row) => row.group === group && row.guideline !== 'bsh',
      );
      const values = ['anaemia', 'moderate', 'severe'].map(
        (band) => bands.find((row) => row.band === band)?.value ?? 0,
      );
      expect([...values].sort((one, other) => other - one)).toEqual(values);
      expect(new Set(values).size).toBe(3);
    }
  });
});
