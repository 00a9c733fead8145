// Saturation computed: the identity, the factor, when it is left alone, and how it is printed.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import { reportOf, today, type Values } from './build.js';

function read(values: Values, facts: Parameters<typeof reportOf>[1] = {}) {
  const interpretation = interpret(reportOf(values, facts), today);
  const saturation = interpretation.results.find(
    ({ analyte }) => analyte === 'transferrin-saturation',
  );
  return { ...interpretation, saturation };
}

describe('a saturation that the laboratory did not print', () => {
  it.each([
    [5, 60],
    [20, 57.73],
    [36, 50],
    [1, 80],
  ])('is iron over TIBC, in per cent (clinical calculation page): %d over %d', (iron, tibc) => {
    const { saturation } = read({ 'serum-iron': iron, tibc });
    expect(saturation?.value).toBeCloseTo((100 * iron) / tibc, 10);
    expect(saturation?.derived?.from).toEqual(['serum-iron', 'tibc']);
  });

  it('is the same by TIBC, by iron and UIBC, and by transferrin at 25.1 umol/g', () => {
    const byTibc = read({ 'serum-iron': 15, tibc: 25.1 * 2.4 }).saturation?.value ?? 0;
    const byUibc = read({ 'serum-iron': 15, uibc: 25.1 * 2.4 - 15 }).saturation?.value ?? 0;
    const byTransferrin = read({ 'serum-iron': 15, transferrin: 2.4 }).saturation?.value ?? 0;
    expect(byUibc).toBeCloseTo(byTibc, 10);
    expect(byTransferrin).toBeCloseTo(byTibc, 10);
  });

  it('prefers a measured TIBC to UIBC, and UIBC to transferrin', () => {
    const all = read({ 'serum-iron': 15, tibc: 60, uibc: 50, transferrin: 3 });
    expect(all.saturation?.value).toBeCloseTo(25, 10);
    const two = read({ 'serum-iron': 15, uibc: 35, transferrin: 3 });
    expect(two.saturation?.value).toBeCloseTo(30, 10);
  });

  it('carries the factor as a source, marked as derived', () => {
    const { sources } = read({ 'serum-iron': 20, transferrin: 2.3 });
    expect(sources.find(({ rule }) => rule === 'tibc-per-transferrin')).toMatchObject({
      number: '25.1 umol/g',
      checked: 'derived',
    });
  });

  it.each([
    [1200, 'computed'],
    [1201, 'left alone'],
  ])(
    'with ferritin %i is %s (assay notice: iron is elsewhere above 1200 ug/L)',
    (ferritin, what) => {
      const { saturation, flags } = read({ 'serum-iron': 20, tibc: 60, ferritin });
      expect(saturation === undefined ? 'left alone' : 'computed').toBe(what);
      expect(flags.some(({ flag }) => flag === 'tsat-not-computed')).toBe(what === 'left alone');
    },
  );

  it.each([
    [28, 'left alone'],
    [29, 'computed'],
  ])('%i days after an injection is %s', (ironInjectionDaysBefore, what) => {
    const { saturation } = read(
      { 'serum-iron': 20, tibc: 60 },
      { context: { ironInjectionDaysBefore } },
    );
    expect(saturation === undefined ? 'left alone' : 'computed').toBe(what);
  });

  it('is left alone when a part is below the scale, and absent when a part is doubtful', () => {
    const below = read({ 'serum-iron': { value: 2, comparator: '<' }, tibc: 60 });
    expect(below.saturation).toBeUndefined();
    expect(below.flags.some(({ flag }) => flag === 'tsat-not-computed')).toBe(true);
    const doubtful = read({ 'serum-iron': { value: 20, doubt: 'unit' }, tibc: 60 });
    expect(doubtful.saturation).toBeUndefined();
  });

  it.each([
    [19.6, '19.6'],
    [15.96, '15.96'],
    [15.996, '15.996'],
    [34.64, '35'],
    [50.2, '50.2'],
    [15.4, '15'],
  ])('of %d prints as %s, never contradicting its position', (exact, printed) => {
    const { saturation } = read({ 'serum-iron': exact, tibc: 100 });
    expect(saturation?.copied.value).toBe(printed);
  });
});

describe('a saturation that the laboratory printed', () => {
  it('is used as printed and never computed beside', () => {
    const { results } = read({ 'serum-iron': 20, tibc: 60, 'transferrin-saturation': 31 });
    const found = results.filter(({ analyte }) => analyte === 'transferrin-saturation');
    expect(found.map(({ value, derived }) => [value, derived])).toEqual([[31, null]]);
  });

  /** More than 3 points and more than 15 % of the computed 20.0 %: both are needed. */
  it.each([
    [20, 23, false],
    [20, 23.1, true],
    [20, 16.9, true],
    [20, 17, false],
    [40, 46, false],
    [40, 46.1, true],
    [40, 44, false],
  ])('against a computed %d: printed %d differs: %s', (computed, printed, differs) => {
    const { flags } = read({
      'serum-iron': computed,
      tibc: 100,
      'transferrin-saturation': printed,
    });
    expect(flags.some(({ flag }) => flag === 'tsat-printed-differs')).toBe(differs);
  });

  it('that says something else than the computed one leaves nothing called in range', () => {
    const values = { haemoglobin: 145, ferritin: 100, crp: 1, 'serum-iron': 9.5, tibc: 75 };
    const { pattern } = read({ ...values, 'transferrin-saturation': 30 });
    expect(pattern.main).toBe('unclear');
    expect(pattern.against.map(({ code }) => code)).toContain('value-doubtful');
  });
});

describe('common practice, no source', () => {
  const lab = {
    haemoglobin: { value: 148, low: 130, high: 170 },
    mcv: { value: 90, low: 80, high: 100 },
    'serum-iron': { value: 20, low: 10, high: 30 },
    transferrin: { value: 2.3, low: 2, high: 3.5 },
    ferritin: { value: 300, low: 20, high: 500 },
  };

  it('reads iron 20, transferrin 2.3, saturation 35 %, ferritin 300 as in range throughout', () => {
    const { pattern, results, flags } = read({
      ...lab,
      'transferrin-saturation': { value: 35, low: 16, high: 50 },
    });
    expect(pattern.main).toBe('all-in-range');
    expect(results.map(({ position }) => position)).toEqual(results.map(() => 'in-range'));
    expect(flags.some(({ flag }) => flag === 'tsat-printed-differs')).toBe(false);
    expect(flags.some(({ flag }) => flag === 'crp-not-measured')).toBe(true);
  });

  it('agrees that iron 20 with transferrin 2.3 is a saturation of 35 %', () => {
    expect(read(lab).saturation?.copied.value).toBe('35');
  });

  it('tells a ferritin of 4 as well below an interval from 20', () => {
    const { results } = read({ ...lab, ferritin: { value: 4, low: 20, high: 500 } });
    expect(results.find(({ analyte }) => analyte === 'ferritin')?.position).toBe('well-below');
  });

  it('takes low iron with the rest usual as eating little iron', () => {
    const { pattern } = read({ ...lab, 'serum-iron': { value: 9.5, low: 10, high: 30 } });
    expect(pattern.main).toBe('early-low-intake');
  });

  it('takes low haemoglobin with the rest usual as not explained by iron, and names a recent bleed', () => {
    const low = { ...lab, haemoglobin: { value: 118, low: 130, high: 170 } };
    const quiet = read(low).pattern;
    expect([quiet.main, quiet.companions]).toEqual([
      'anaemia-not-explained-by-iron',
      ['possible-recent-blood-loss'],
    ]);
    const bled = read(low, { context: { bleeding: ['recent-injury-or-surgery'] } }).pattern;
    expect(bled.main).toBe('possible-recent-blood-loss');
    expect(bled.supports.map(({ code }) => code)).toContain('bleed-recorded');
  });

  it('takes raised transferrin with low saturation and haemoglobin as lasting deficiency, ferritin missing', () => {
    const { pattern } = read({
      haemoglobin: 95,
      'serum-iron': 5,
      transferrin: { value: 4.1, low: 2, high: 3.5 },
    });
    expect(pattern.main).toBe('iron-deficiency-anaemia');
    expect(pattern.missing).toContain('ferritin');
  });
});
