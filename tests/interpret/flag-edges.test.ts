// Flags at the edges where two facts meet: what raises one, what must not, and that each is raised once.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import { flags as closedList, type Flag } from '../../src/terms.js';
import { reportOf, today, type Values } from './build.js';

type Facts = Parameters<typeof reportOf>[1];

const usual: Values = { haemoglobin: 145, ferritin: 100, 'transferrin-saturation': 30, crp: 1 };
const raised = (values: Values, facts: Facts = {}) =>
  interpret(reportOf(values, facts), today).flags;
const flagsOf = (values: Values, facts: Facts = {}) =>
  raised(values, facts).map(({ flag }) => flag);
const factsOf = (flag: Flag, values: Values, facts: Facts = {}) =>
  raised(values, facts).find((one) => one.flag === flag)?.facts;

describe('the mark of the laboratory', () => {
  it.each([
    ['LU', 29, false],
    ['LU', 100, true],
    ['LL', 29, false],
    ['HU', 100, true],
    ['HH', 401, false],
    ['HH', 100, true],
    ['AA', 100, true],
  ] as const)('%s on ferritin %i of 30 to 400 disagrees: %s', (labFlag, value, disagrees) => {
    const ferritin = { value, low: 30, high: 400, labFlag };
    expect(flagsOf({ ...usual, ferritin }).includes('lab-flag-disagrees')).toBe(disagrees);
  });

  it.each([
    [{ value: 100, high: 400, labFlag: 'L' }, true],
    [{ value: 100, high: 400, labFlag: 'H' }, true],
    [{ value: 401, high: 400, labFlag: 'H' }, false],
    [{ value: 100, low: 30, labFlag: 'H' }, true],
    [{ value: 29, low: 30, labFlag: 'L' }, false],
    [{ value: 100, low: 30, labFlag: 'N' }, false],
    [{ value: 100, labFlag: 'H' }, false],
    [{ value: 100, low: 30, high: 400 }, false],
  ] as const)('%o disagrees with an interval of one end, or of none: %s', (ferritin, disagrees) => {
    expect(flagsOf({ ...usual, ferritin }).includes('lab-flag-disagrees')).toBe(disagrees);
  });
});

describe('a comparator', () => {
  it.each<readonly [string, Values, boolean]>([
    ['without a yardstick', { stfr: { value: 1, comparator: '<' } }, false],
    ['absent, without a yardstick', { stfr: 1 }, false],
    ['absent, where CRP is needed to tell', { haemoglobin: 120, ferritin: 80 }, false],
    // Under 15 by the guideline; whether under the laboratory's 10 stays open.
    [
      'decided by the guideline alone',
      { ferritin: { value: 12, comparator: '<', low: 10, high: 300 } },
      true,
    ],
  ])('%s is called undecided: %s', (_, values, undecided) => {
    expect(flagsOf(values).includes('comparator-undecided')).toBe(undecided);
  });

  it('stands on no limit', () => {
    expect(flagsOf({ ferritin: { value: 30, comparator: '<' } })).not.toContain('at-the-limit');
    expect(flagsOf({ ferritin: 30 })).toContain('at-the-limit');
  });
});

describe('the very limit', () => {
  it('is told of a computed saturation, and not of a doubtful value', () => {
    expect(flagsOf({ 'serum-iron': 25, tibc: 50 })).toContain('at-the-limit');
    expect(flagsOf({ ferritin: { value: 30, doubt: 'value' } })).not.toContain('at-the-limit');
  });

  it('is told of each test that stands on one', () => {
    const at = raised({ haemoglobin: 130, ferritin: 30 }).filter(
      ({ flag }) => flag === 'at-the-limit',
    );
    expect(at.map(({ analyte }) => analyte)).toEqual(['haemoglobin', 'ferritin']);
    expect(at[1]).toMatchObject({
      facts: { value: 30, unit: 'ug/L' },
      rules: ['ferritin-likely-adult'],
    });
  });

  it('of the laboratory has no row', () => {
    const ferritin = { value: 400, low: 20, high: 400 };
    expect(
      raised({ ...usual, ferritin }).find(({ flag }) => flag === 'at-the-limit')?.rules,
    ).toEqual([]);
  });
});

describe('laboratory and guideline', () => {
  const late = { sex: 'female', ageMonths: 360, pregnancy: { weeks: 33, trimester: 3 } } as const;
  it.each<readonly [string, Values, boolean]>([
    // Under 45 with anaemia (AGA 2020) but inside both intervals.
    [
      'ferritin 40 with anaemia',
      { haemoglobin: 120, crp: 1, ferritin: { value: 40, low: 20, high: 500 } },
      true,
    ],
    ['the same, no interval printed', { haemoglobin: 120, crp: 1, ferritin: 40 }, false],
    [
      'ferritin 80 with anaemia, CRP missing',
      { haemoglobin: 120, ferritin: { value: 80, low: 20, high: 500 } },
      false,
    ],
    [
      'ferritin under 12, the laboratory from 10',
      { ferritin: { value: 12, comparator: '<', low: 10, high: 300 } },
      false,
    ],
    [
      'haemoglobin 132, the laboratory from 135',
      { haemoglobin: { value: 132, low: 135, high: 170 } },
      true,
    ],
    [
      'haemoglobin 140, the laboratory from 135',
      { haemoglobin: { value: 140, low: 135, high: 170 } },
      false,
    ],
  ])('%s disagree: %s', (_, values, disagree) => {
    expect(flagsOf(values).includes('lab-and-guideline-disagree')).toBe(disagree);
  });

  it('disagree where one of two guidelines does', () => {
    const haemoglobin = { value: 107, low: 115, high: 155 };
    const flags = raised({ haemoglobin }, { patient: late });
    expect(flags.find(({ flag }) => flag === 'lab-and-guideline-disagree')).toMatchObject({
      analyte: 'haemoglobin',
      rules: [
        'who-2024-haemoglobin-pregnant-trimester-3-anaemia',
        'bsh-2020-haemoglobin-pregnant-trimester-3',
      ],
    });
    expect(flags.find(({ flag }) => flag === 'guidelines-disagree')).toMatchObject({
      analyte: 'haemoglobin',
      rules: expect.arrayContaining(['bsh-2020-haemoglobin-pregnant-trimester-3']),
    });
  });

  it('two guidelines do not disagree where a comparator leaves one open', () => {
    const haemoglobin = { value: 108, comparator: '<' } as const;
    expect(flagsOf({ haemoglobin }, { patient: late })).not.toContain('guidelines-disagree');
  });
});

describe('flags of the person', () => {
  it('of an age not known is neither a child’s nor past 65', () => {
    const flags = flagsOf(usual, { patient: { ageMonths: null } });
    expect(flags).toContain('age-unknown');
    expect(flags).not.toContain('child');
    expect(flags).not.toContain('over-65');
  });

  it.each([
    [{ conditions: ['thalassaemia-major'] }, 'thalassaemia', true],
    [{ medicines: ['zinc'] }, 'taking-iron', false],
  ] as const)('%o: %s %s', (patient, flag, expected) => {
    expect(flagsOf(usual, { patient }).includes(flag)).toBe(expected);
  });

  it('names every medicine with iron, and every kidney disease, whose rule is met if one is', () => {
    const medicines = ['iron-tablets', 'iron-injection'] as const;
    expect(factsOf('taking-iron', usual, { patient: { medicines } })).toEqual({
      medicines: 'iron-tablets iron-injection',
    });
    const conditions = ['kidney-disease', 'kidney-disease-dialysis'] as const;
    const values = { ...usual, ferritin: 150, 'transferrin-saturation': 15 };
    expect(factsOf('kidney-disease', values, { patient: { conditions } })).toEqual({
      conditions: 'kidney-disease kidney-disease-dialysis',
      'rule-met': 'yes',
    });
    const mixed = { patient: { conditions: ['heart-failure', 'liver-disease'] } } as const;
    expect(factsOf('liver-disease', usual, mixed)).toEqual({ conditions: 'liver-disease' });
  });

  it.each([
    ['kidney-disease', { haemoglobin: 145 }],
    ['heart-failure', { haemoglobin: 145, 'transferrin-saturation': 15 }],
    ['inflammatory-bowel-disease', { haemoglobin: 145, crp: 9 }],
    ['kidney-disease', { ferritin: 90 }],
    ['kidney-disease', { ferritin: 90, 'transferrin-saturation': { value: 18, doubt: 'value' } }],
    ['heart-failure', { ferritin: 250 }],
  ] as const)('the rule of %s is not met by %o', (condition, values) => {
    const flag = condition === 'inflammatory-bowel-disease' ? 'bowel-disease' : condition;
    const facts = factsOf(flag, values, { patient: { conditions: [condition] } });
    expect(facts?.['rule-met']).toBe('no');
  });

  it('of heart failure is met by a computed saturation, and says nothing of another disease', () => {
    const values = { haemoglobin: 145, ferritin: 250, crp: 1, 'serum-iron': 9, tibc: 60 };
    const { clinicianNotes } = interpret(
      reportOf(values, { patient: { conditions: ['heart-failure'] } }),
      today,
    );
    expect(clinicianNotes.filter(({ code }) => code.endsWith('rule-met'))).toEqual([
      {
        code: 'heart-failure-rule-met',
        facts: { condition: 'heart-failure' },
        rules: ['heart-failure-ferritin-with-saturation', 'heart-failure-saturation'],
      },
    ]);
    const unmet = interpret(
      reportOf(usual, { patient: { conditions: ['heart-failure', 'kidney-disease'] } }),
      today,
    );
    expect(unmet.clinicianNotes).toEqual([]);
    expect(unmet.pattern.against).toEqual([]);
  });
});

describe('the iron tests together', () => {
  it.each([
    [100, 78, 5.8, true],
    [100, 78, 5.6, false],
    [185, 70, undefined, true],
    [undefined, 70, undefined, false],
  ])(
    'haemoglobin %s, MCV %i and red cells %s are out of proportion: %s',
    (haemoglobin, mcv, rbc, odd) => {
      const values = {
        ferritin: 100,
        mcv,
        ...(haemoglobin === undefined ? {} : { haemoglobin }),
        ...(rbc === undefined ? {} : { rbc }),
      };
      expect(flagsOf(values).includes('microcytosis-out-of-proportion')).toBe(odd);
    },
  );

  it.each([
    [10, 13, false],
    [10, 13.1, true],
  ])('computed %i and printed %d differ: %s (more than 3 points)', (iron, printed, differs) => {
    const values = { 'serum-iron': iron, tibc: 100, 'transferrin-saturation': printed };
    expect(flagsOf(values).includes('tsat-printed-differs')).toBe(differs);
  });

  it('a printed comparator is not laid beside the computed one', () => {
    const printed = { value: 60, comparator: '>' } as const;
    const values = { 'serum-iron': 20, tibc: 60, 'transferrin-saturation': printed };
    expect(flagsOf(values)).not.toContain('tsat-printed-differs');
  });

  it('iron alone is no reason to speak of a saturation', () => {
    expect(flagsOf({ haemoglobin: 145, ferritin: 1300 })).not.toContain('tsat-not-computed');
  });

  it('cells that disagree in two ways are two flags', () => {
    const values = { haemoglobin: 102, rbc: 5.5, mch: 21, mcv: 90, haematocrit: 0.3 };
    const found = raised(values).filter(({ flag }) => flag === 'indices-disagree');
    expect(found.map(({ facts }) => facts.tests)).toEqual([
      'mcv rbc haematocrit',
      'haemoglobin rbc mch',
    ]);
  });
});

describe('all flags', () => {
  it('are raised once, in the order of the closed list', () => {
    const facts = {
      patient: { sex: 'unknown', altitudeMetres: 2600, cigarettesPerDay: 3 },
      context: {
        bleeding: ['nosebleeds', 'recent-injury-or-surgery', 'blood-donation'],
        fasting: false,
      },
    } as const;
    const flags = flagsOf(
      { haemoglobin: 130, ferritin: 1100, 'transferrin-saturation': 60 },
      facts,
    );
    const order = flags.map((flag) => closedList.indexOf(flag));
    expect(order).toEqual(order.toSorted((one, other) => one - other));
    expect(flags.length).toBe(new Set(flags).size);
    expect(flags).toContain('recent-bleed');
  });

  it('of no haemoglobin and no saturation are raised for readings of both sexes', () => {
    const flags = flagsOf({ ferritin: 100 }, { patient: { sex: 'unknown' } });
    expect(flags.filter((flag) => flag === 'haemoglobin-not-measured')).toHaveLength(1);
  });
});
