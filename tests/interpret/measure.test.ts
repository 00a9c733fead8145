// Limits against exact values and against values the laboratory wrote with a comparator.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import { above, below, either } from '../../src/interpret/measure.js';
import { bandOf, levelOf, positionIn } from '../../src/interpret/position.js';
import type { Comparator } from '../../src/report/report.js';
import { reportOf, today } from './build.js';

const quantity = (value: number, comparator: Comparator | null = null) => ({
  value,
  unit: 'ug/L',
  comparator,
});

describe('below and above', () => {
  it.each([
    [null, 29, 'yes', 'no'],
    [null, 30, 'no', 'no'],
    [null, 31, 'no', 'yes'],
    ['<', 29, 'yes', 'no'],
    ['<', 30, 'yes', 'no'],
    ['<', 31, 'undecided', 'undecided'],
    ['<=', 29, 'yes', 'no'],
    ['<=', 30, 'undecided', 'no'],
    ['<=', 31, 'undecided', 'undecided'],
    ['>', 29, 'undecided', 'undecided'],
    ['>', 30, 'no', 'yes'],
    ['>', 31, 'no', 'yes'],
    ['>=', 29, 'undecided', 'undecided'],
    ['>=', 30, 'no', 'undecided'],
    ['>=', 31, 'no', 'yes'],
  ] as const)(
    '%s %i against a limit of 30: below %s, above %s',
    (comparator, value, under, over) => {
      expect(below(quantity(value, comparator), 30)).toBe(under);
      expect(above(quantity(value, comparator), 30)).toBe(over);
    },
  );

  it('together say yes when one does, and no only when all do', () => {
    expect(either('no', 'yes', 'undecided')).toBe('yes');
    expect(either('no', 'undecided')).toBe('undecided');
    expect(either('no', 'no')).toBe('no');
  });
});

describe('a position', () => {
  const band = { ...bandOf('ferritin'), wellBelow: 0.5, wellAbove: 2 };
  const span = { low: 20, high: 200 };
  it.each([
    [9.9, 'well-below'],
    [10, 'a-little-below'],
    [19.9, 'a-little-below'],
    [20, 'in-range'],
    [200, 'in-range'],
    [200.1, 'a-little-above'],
    [400, 'a-little-above'],
    [400.1, 'well-above'],
  ] as const)('of %d in 20 to 200 is %s', (value, position) => {
    expect(positionIn(quantity(value), span, band, null)).toBe(position);
  });

  it('moves the line of well below to a guideline’s, never above the limit itself', () => {
    expect(positionIn(quantity(14.9), span, band, 15)).toBe('well-below');
    expect(positionIn(quantity(15), span, band, 15)).toBe('a-little-below');
    expect(positionIn(quantity(19), span, band, 25)).toBe('well-below');
    expect(positionIn(quantity(21), span, band, 25)).toBe('in-range');
  });

  it.each([
    [{ low: null, high: null }, 5, null],
    [{ low: 20, high: null }, 1000, 'in-range'],
    [{ low: null, high: 5 }, 0, 'in-range'],
    [{ low: null, high: 5 }, 6, 'a-little-above'],
  ] as const)('in %o of %i is %s', (open, value, position) => {
    expect(positionIn(quantity(value), open, band, null)).toBe(position);
  });

  it('is told when a comparator leaves no doubt, and is none when it does', () => {
    expect(positionIn(quantity(5, '<'), span, band, null)).toBe('well-below');
    expect(positionIn(quantity(15, '<'), span, band, null)).toBe('a-little-below');
    expect(positionIn(quantity(50, '<'), span, band, null)).toBeNull();
    expect(positionIn(quantity(100, '>'), span, band, null)).toBeNull();
    expect(positionIn(quantity(500, '>'), span, band, null)).toBe('well-above');
  });

  it('stands for a level', () => {
    expect(
      ['well-below', 'a-little-below', 'in-range', 'a-little-above', 'well-above', null].map(
        (one) => levelOf(one as never),
      ),
    ).toEqual(['low', 'low', 'usual', 'high', 'high', 'not-measured']);
  });

  it.each([
    ['<', 5, 'well-below', 0],
    ['<', 50, null, 1],
  ] as const)(
    '%s%i against a low of 30: %s, flagged %i times',
    (comparator, value, position, times) => {
      const ferritin = { value, comparator, low: 30, high: 400 };
      const { results, flags } = interpret(reportOf({ ferritin }), today);
      expect(results[0]?.position).toBe(position);
      expect(flags.filter(({ flag }) => flag === 'comparator-undecided')).toHaveLength(times);
    },
  );

  it('ignores a laboratory interval that is empty or upside down', () => {
    for (const [low, high] of [
      [0, 0],
      [400, 30],
    ] as const) {
      const { results } = interpret(reportOf({ ferritin: { value: 50, low, high } }), today);
      expect(results[0]?.comparedWith?.by).toBe('guideline');
    }
  });
});

describe('a comparator that leaves a cut-off open', () => {
  const usual = { haemoglobin: 145, ferritin: 100, 'transferrin-saturation': 30, crp: 1 };
  it.each([
    ['ferritin', '<', 20, 'ferritin'],
    ['ferritin', '>', 150, 'ferritin'],
    ['transferrin-saturation', '<', 30, 'transferrin-saturation'],
    ['transferrin-saturation', '>', 45, 'transferrin-saturation'],
    ['haemoglobin', '<', 140, 'haemoglobin'],
    ['haemoglobin', '>', 150, 'haemoglobin'],
    ['crp', '<', 10, 'crp'],
  ] as const)('%s %s%i decides nothing and is said to', (analyte, comparator, value, flagged) => {
    const report = reportOf({ ...usual, [analyte]: { value, comparator } });
    const { flags, pattern, results } = interpret(report, today);
    expect(results.find((one) => one.analyte === analyte)?.level).toBe('not-measured');
    expect(flags.find(({ flag }) => flag === 'comparator-undecided')?.analyte).toBe(flagged);
    expect(pattern.main).toBe('unclear');
  });

  it.each([
    ['ferritin', '<', 15, 'low'],
    ['ferritin', '>', 200, 'high'],
    ['transferrin-saturation', '<', 16, 'low'],
    ['transferrin-saturation', '>', 50, 'high'],
    ['haemoglobin', '<', 130, 'low'],
    ['haemoglobin', '>', 180, 'high'],
    ['crp', '<', 5, 'usual'],
    ['crp', '>', 5, 'high'],
  ] as const)('%s %s%i is decided: %s', (analyte, comparator, value, level) => {
    const report = reportOf({ ...usual, [analyte]: { value, comparator } });
    const found = interpret(report, today).results.find((one) => one.analyte === analyte);
    expect(found?.level).toBe(level);
  });
});
