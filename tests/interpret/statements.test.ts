// What is said of the whole where several things meet: recent iron, contradictions, hints, both sexes.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import { deficient, type Given, reportOf, today, type Values } from './build.js';

type Facts = Parameters<typeof reportOf>[1];
const read = (values: Values, facts: Facts = {}) => interpret(reportOf(values, facts), today);
const codes = (lines: readonly { readonly code: string }[]) => lines.map(({ code }) => code);
const usual: Values = { haemoglobin: 145, ferritin: 100, 'transferrin-saturation': 30, crp: 1 };

describe('a doubted iron beside a tablet', () => {
  const context = { ironTabletHoursBefore: 3 };
  it.each([
    [{ value: 100, doubt: 'value' }, true],
    [{ value: 20, doubt: 'value' }, false],
    [{ value: 100, doubt: 'unit' }, false],
  ] as const)('%o shows that it was taken: %s', (iron, taken) => {
    const values = { ...usual, 'serum-iron': iron };
    const { pattern } = read(values, { context });
    expect(pattern.main === 'post-iron-dose-artefact').toBe(taken);
  });

  it('an injection is named with its days and its row', () => {
    const values = { ...usual, 'transferrin-saturation': 70 };
    const { pattern } = read(values, { context: { ironInjectionDaysBefore: 3 } });
    expect(pattern.supports[0]).toEqual({
      code: 'recent-iron',
      facts: { how: 'injection', days: 3 },
      rules: ['iron-injection-days'],
    });
  });

  it('leaves nothing said of iron besides', () => {
    const values = { ...usual, 'serum-iron': 50, ferritin: 600 };
    const { pattern } = read(values, { context });
    expect([pattern.main, pattern.companions]).toEqual(['post-iron-dose-artefact', []]);
  });
});

describe('more iron than carriers', () => {
  it.each([
    [90, 'unclear'],
    [90.1, 'post-iron-dose-artefact'],
  ])('iron %d over a raised TIBC of 90 reads as %s', (iron, main) => {
    expect(read({ haemoglobin: 145, 'serum-iron': iron, tibc: 90 }).pattern.main).toBe(main);
  });

  it('names how far, with its row', () => {
    const { pattern } = read({ haemoglobin: 145, 'serum-iron': 108, tibc: 90 });
    expect(pattern.supports[0]).toEqual({
      code: 'recent-iron',
      facts: { how: 'unknown', saturation: 120 },
      rules: ['saturation-whole'],
    });
  });

  it('is a contradiction under an everyday TIBC, and nothing about iron stands beside it', () => {
    const { pattern } = read({
      ...usual,
      ferritin: 600,
      'serum-iron': 20,
      transferrin: 2.5,
      tibc: 15,
    });
    expect([pattern.main, pattern.companions]).toEqual(['discordant-or-implausible', []]);
  });
});

describe('ferritin against saturation', () => {
  const clash = (values: Values) =>
    codes(read(values).pattern.supports).includes('ferritin-and-saturation-contradict');
  it.each<readonly [Values, boolean]>([
    [{ ferritin: 10, 'serum-iron': 36, tibc: 60 }, true],
    [{ ferritin: 10, 'serum-iron': 20, tibc: 60 }, false],
    [{ ferritin: { value: 10, comparator: '<' }, 'transferrin-saturation': 60 }, true],
    [{ ferritin: { value: 10, comparator: '>' }, 'transferrin-saturation': 60 }, false],
    [{ ferritin: 10, 'transferrin-saturation': { value: 60, comparator: '>' } }, false],
    [
      {
        ferritin: 10,
        'transferrin-saturation': { value: 60, comparator: '>' },
        'serum-iron': 36,
        tibc: 60,
      },
      true,
    ],
    [{ ferritin: 10, 'transferrin-saturation': 20, 'serum-iron': 36, tibc: 60 }, false],
    [{ 'transferrin-saturation': 60 }, false],
    [{ ferritin: 10 }, false],
  ])('%o contradict each other: %s', (values, expected) => {
    expect(clash({ haemoglobin: 145, ...values })).toBe(expected);
  });

  it('raised beside very low is named with both rows, while CRP does not explain it', () => {
    const values = { haemoglobin: 145, ferritin: 450, 'transferrin-saturation': 9, crp: 1 };
    expect(read(values).pattern.supports).toContainEqual({
      code: 'ferritin-and-saturation-contradict',
      facts: { ferritin: 450, saturation: 9 },
      rules: ['contradict-high-ferritin', 'contradict-low-saturation'],
    });
  });

  it('that contradict by level only are held by the row of the table', () => {
    const { hold } = read({ haemoglobin: 145, ferritin: 25, 'transferrin-saturation': 60, crp: 1 });
    expect(hold.reasons.filter(({ code }) => code === 'values-contradict')).toEqual([
      {
        code: 'values-contradict',
        tier: 'same-day',
        facts: {},
        rules: ['pattern-saturation-against-ferritin'],
      },
    ]);
  });
});

describe('a recent birth', () => {
  const bled = (bleeding: readonly ('nosebleeds' | 'recent-birth')[]) =>
    read(
      { haemoglobin: 95, ferritin: 100 },
      { patient: { sex: 'female', ageMonths: 360, afterBirthWeeks: 3 }, context: { bleeding } },
    )
      .pattern.supports.filter(({ code }) => code === 'bleed-recorded')
      .map(({ facts, rules }) => [facts.bleeding, ...rules]);
  it('is a bleed, told once', () => {
    expect(bled([])).toEqual([['recent-birth', 'after-birth-until']]);
    expect(bled(['recent-birth'])).toEqual([['recent-birth', 'sign-recent-bleeding']]);
    expect(bled(['nosebleeds'])).toEqual([['nosebleeds', 'sign-recent-bleeding']]);
  });
});

describe('hints', () => {
  /** sTfR over 2 times log10 ferritin hints at deficiency (Weiss and Goodnough 2005). */
  it.each<readonly [string, Values, 'supports' | 'against']>([
    ['early-low-intake', { ...usual, ferritin: 20 }, 'supports'],
    ['iron-deficiency-without-anaemia', { ...usual, ferritin: 10 }, 'supports'],
    [
      'iron-deficient-erythropoiesis',
      { ...usual, ferritin: 10, 'transferrin-saturation': 10, transferrin: 4 },
      'supports',
    ],
    ['iron-deficiency-anaemia', deficient, 'supports'],
    ['mixed-inflammation-and-iron-deficiency', { ...deficient, ferritin: 60, crp: 20 }, 'supports'],
    [
      'anaemia-of-inflammation',
      { haemoglobin: 100, ferritin: 150, crp: 30, 'transferrin-saturation': 10 },
      'against',
    ],
  ])('of sTfR and small pale cells for %s', (main, values, side) => {
    const { pattern } = read({ ...values, stfr: 9, 'reticulocyte-haemoglobin': 24, mch: 22 });
    expect(pattern.main).toBe(main);
    const found = codes(pattern[side]);
    expect(found).toContain('stfr-index-high');
    expect(found).toContain('reticulocyte-haemoglobin-low');
    expect(found).toContain('mch-low');
  });

  it('of reticulocytes tell their limit, and by whom', () => {
    const line = (given: Given) =>
      read({ ...deficient, 'reticulocyte-haemoglobin': given }).pattern.supports.find(({ code }) =>
        code.startsWith('reticulocyte'),
      );
    expect(line(24)).toMatchObject({
      facts: { value: 24, unit: 'pg', limit: 28 },
      rules: ['usual-reticulocyte-haemoglobin'],
    });
    expect(line({ value: 24, low: 29, high: 36 })).toMatchObject({
      facts: { limit: 29 },
      rules: [],
    });
    expect(line({ value: 24, doubt: 'value' })).toBeUndefined();
    expect(line(40)).toBeUndefined();
  });

  it.each<readonly [string, Values, number | null]>([
    ['over 2.54 red cells', { mcv: 70, rbc: 5 }, 14],
    ['without red cells', { mcv: 70 }, null],
    ['with no red cells at all', { mcv: 70, rbc: 0 }, null],
    ['with a comparator', { mcv: 70, rbc: { value: 5, comparator: '>' } }, null],
    ['without MCV', { rbc: 5 }, null],
  ])('of the Mentzer index %s: %s', (_, values, value) => {
    const note = read({ ...usual, ...values }).clinicianNotes.find(
      ({ code }) => code === 'mentzer-index',
    );
    expect(note?.facts.value ?? null).toBe(value);
  });

  it('of the Mentzer index are silent where neither deficiency nor small cells are spoken of', () => {
    const { pattern } = read({ ...usual, mcv: 90, rbc: 5 });
    expect(codes([...pattern.supports, ...pattern.against]).join()).not.toContain('mentzer');
  });

  it('of sTfR need a ferritin', () => {
    expect(codes(read({ haemoglobin: 145, stfr: 9 }).clinicianNotes)).not.toContain('stfr-index');
  });
});

describe('what weighs against', () => {
  it.each<readonly [Values, readonly string[]]>([
    [{ ferritin: 300 }, ['ferritin-high']],
    [{ ...usual, haemoglobin: 190, ferritin: 450 }, []],
    [{ ...usual, stfr: { value: 9, comparator: '>' } }, ['outside-laboratory-interval-only']],
    [{ ...usual, crp: { value: 5, comparator: '<' } }, []],
    [
      { ...usual, ferritin: { value: 20, comparator: '>' } },
      ['ferritin-cannot-tell', 'comparator-undecided', 'outside-laboratory-interval-only'],
    ],
  ])('%o: %o', (values, expected) => {
    expect(codes(read(values).pattern.against)).toEqual(expected);
  });

  it('is a printed saturation that the computed one denies, with its comparator', () => {
    const printed = { value: 60, comparator: '>' } as const;
    const values = {
      ...usual,
      'transferrin-saturation': printed,
      'serum-iron': 18,
      tibc: 60,
      ferritin: 600,
    };
    const doubted = read({ ...values, ferritin: 100 }).pattern.against;
    expect(codes(doubted)).toContain('transferrin-saturation-high');
    const open = read({
      ...usual,
      'transferrin-saturation': { value: 10, comparator: '>' },
      'serum-iron': 18,
      tibc: 60,
    }).pattern.against;
    expect(open).toContainEqual({
      code: 'value-doubtful',
      facts: { analyte: 'transferrin-saturation', value: 10, unit: '%', comparator: '>' },
      rules: [],
    });
  });

  it('is a printed saturation that the computed one denies, without a comparator too', () => {
    const values = { ...usual, 'transferrin-saturation': 30, 'serum-iron': 9.5, tibc: 75 };
    expect(read(values).pattern.against).toContainEqual({
      code: 'value-doubtful',
      facts: { analyte: 'transferrin-saturation', value: 30, unit: '%' },
      rules: [],
    });
  });

  it('is a mark of the laboratory on a result in range', () => {
    const haemoglobin = { value: 145, labFlag: 'H' } as const;
    const { pattern } = read({ ...usual, haemoglobin });
    expect(pattern.main).toBe('unclear');
    expect(pattern.against).toEqual([
      { code: 'outside-laboratory-interval-only', facts: { analyte: 'haemoglobin' }, rules: [] },
    ]);
    const quiet = { value: 145, labFlag: 'N' } as const;
    expect(read({ ...usual, haemoglobin: quiet }).pattern.main).toBe('all-in-range');
  });

  it('is a ferritin that cannot be told, under its own name beside a TIBC', () => {
    const { pattern } = read({ haemoglobin: 120, ferritin: 80, tibc: 60 });
    expect(pattern.against.find(({ code }) => code === 'ferritin-cannot-tell')?.facts).toEqual({
      analyte: 'ferritin',
      value: 80,
      unit: 'ug/L',
      limit: 100,
    });
  });

  it('is nothing for a man with everything usual, and nothing is missing', () => {
    expect(read(usual).pattern).toMatchObject({ main: 'all-in-range', against: [], missing: [] });
  });
});

describe('both sexes', () => {
  const patient = { sex: 'unknown' } as const;

  it('lay each yardstick beside once, the shared one first', () => {
    const { results } = read({ ...usual, haemoglobin: 125, mcv: 90 }, { patient });
    const spans = (analyte: string) => {
      const found = results.find((one) => one.analyte === analyte);
      return [found?.comparedWith, ...(found?.also ?? [])].map((one) => one && [one.low, one.high]);
    };
    expect(spans('haemoglobin')).toEqual([null, [120, 165], [130, 180]]);
    expect(spans('mcv')).toEqual([[80, 100]]);
    expect(spans('ferritin')).toEqual([
      [30, 150],
      [30, 200],
    ]);
    expect(results.find(({ analyte }) => analyte === 'mcv')?.position).toBe('in-range');
  });

  it('at no known age lay every limit of a man beside, each once', () => {
    const { results } = read({ haemoglobin: 112 }, { patient: { ageMonths: null } });
    expect(results[0]?.position).toBeNull();
    expect(results[0]?.also.map(({ low }) => low)).toEqual([105, 110, 115, 120, 130, 130]);
  });

  it('give the reasons of both for what they share', () => {
    const { pattern } = read({ ...usual, haemoglobin: 135, ferritin: 20 }, { patient });
    expect(pattern.main).toBe('early-low-intake');
    const limits = pattern.supports.filter(({ code }) => code === 'haemoglobin-usual');
    expect(limits.map(({ facts }) => [facts.low, facts.high])).toEqual([
      [120, 165],
      [130, 180],
    ]);
    expect(
      pattern.supports.filter(({ code }) => code === 'ferritin-low-stores-likely'),
    ).toHaveLength(1);
  });

  it('leave out a reason that only one of them has', () => {
    // Transferrin 1.77 g/L lies in the interval of men alone.
    const values = { ...usual, ferritin: 20, transferrin: 1.77 };
    const { pattern } = read(values, { patient });
    expect(pattern.main).toBe('early-low-intake');
    expect(codes(pattern.supports)).not.toContain('transferrin-usual');
    expect(codes(pattern.against)).toContain('transferrin-low');
  });

  it('share no second statement that one of them has not', () => {
    const { pattern } = read(
      { ...usual, haemoglobin: 172, ferritin: 20, 'transferrin-saturation': 47 },
      { patient },
    );
    expect(pattern.companions).toEqual([]);
  });

  it('say nothing firm where they differ, with the row of each', () => {
    const { pattern, clinicianNotes } = read(
      { ...usual, haemoglobin: 125, mcv: 90, rbc: 5 },
      { patient },
    );
    expect(pattern).toEqual({
      main: 'unclear',
      companions: [],
      supports: [],
      against: [
        {
          code: 'readings-differ',
          facts: { group: 'women-15-65', pattern: 'all-in-range' },
          rules: ['pattern-all-in-range'],
        },
        {
          code: 'readings-differ',
          facts: { group: 'men-15-65', pattern: 'anaemia-not-explained-by-iron' },
          rules: ['pattern-not-iron'],
        },
      ],
      missing: [],
    });
    expect(codes(clinicianNotes).filter((code) => code === 'mentzer-index')).toHaveLength(1);
  });
});
