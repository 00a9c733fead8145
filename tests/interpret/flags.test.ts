// What blurs a reading: each flag at the edge of its row, and quiet when nothing is there.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import type { Context, Patient } from '../../src/report/report.js';
import type { Condition, Flag } from '../../src/terms.js';
import { reportOf, today, type Values } from './build.js';

const usual: Values = {
  haemoglobin: 145,
  ferritin: 100,
  'transferrin-saturation': 30,
  crp: 1,
};

type Facts = { patient?: Partial<Patient>; context?: Partial<Context>; collected?: string };

function flagsOf(values: Values, facts: Facts = {}): readonly Flag[] {
  return interpret(reportOf(values, facts), today).flags.map(({ flag }) => flag);
}

function factsOf(flag: Flag, values: Values, facts: Facts = {}) {
  return interpret(reportOf(values, facts), today).flags.find((one) => one.flag === flag)?.facts;
}

it('raises no flag for a man of 40 with everything measured and usual', () => {
  expect(flagsOf(usual)).toEqual([]);
});

describe('flags of the person', () => {
  const woman = { sex: 'female' } as const;
  it.each([
    ['pregnancy', { ...woman, pregnancy: { weeks: 20, trimester: 2 } }, true],
    ['after-birth', { ...woman, afterBirthWeeks: 6 }, true],
    ['after-birth', { ...woman, afterBirthWeeks: 7 }, false],
    ['child', { ageMonths: 179 }, true],
    ['child', { ageMonths: 180 }, false],
    ['over-65', { ageMonths: 792 }, true],
    ['over-65', { ageMonths: 791 }, false],
    ['sex-unknown', { sex: 'unknown' }, true],
    ['age-unknown', { ageMonths: null }, true],
    ['kidney-disease', { conditions: ['kidney-disease-dialysis'] }, true],
    ['heart-failure', { conditions: ['heart-failure'] }, true],
    ['bowel-disease', { conditions: ['coeliac-disease'] }, true],
    ['liver-disease', { conditions: ['liver-disease'] }, true],
    ['alcohol', { conditions: ['alcohol-related'] }, true],
    ['thalassaemia', { conditions: ['thalassaemia-trait'] }, true],
    ['iron-overload-known', { conditions: ['haemochromatosis'] }, true],
    ['taking-iron', { medicines: ['iron-tablets'] }, true],
    ['taking-iron', { medicines: ['iron-chelator'] }, false],
    ['altitude-adjusted', { altitudeMetres: 500 }, true],
    ['altitude-adjusted', { altitudeMetres: 499 }, false],
    ['altitude-adjusted', { altitudeMetres: -10 }, false],
    ['smoking-adjusted', { cigarettesPerDay: 1 }, true],
    ['smoking-adjusted', { cigarettesPerDay: 0 }, false],
  ] as const)('%s for %o: %s', (flag, patient, raised) => {
    expect(flagsOf(usual, { patient }).includes(flag)).toBe(raised);
  });
});

describe('flags of the sample', () => {
  it.each([
    ['recent-iron-tablet', { ironTabletHoursBefore: 24 }, true],
    ['recent-iron-tablet', { ironTabletHoursBefore: 25 }, false],
    ['recent-iron-injection', { ironInjectionDaysBefore: 28 }, true],
    ['recent-iron-injection', { ironInjectionDaysBefore: 29 }, false],
    ['recent-transfusion', { transfusionDaysBefore: 2 }, true],
    ['recent-transfusion', { transfusionDaysBefore: 3 }, false],
    ['recent-bleed', { bleeding: ['nosebleeds'] }, true],
    ['recent-bleed', { bleeding: ['none'] }, false],
    ['recent-bleed', { bleeding: ['blood-donation'] }, false],
    ['recent-bleed', { bleeding: ['heavy-periods'] }, false],
    ['blood-donation', { bleeding: ['blood-donation'] }, true],
    ['heavy-periods', { bleeding: ['heavy-periods'] }, true],
  ] as const)('%s for %o: %s', (flag, context, raised) => {
    expect(flagsOf(usual, { context }).includes(flag)).toBe(raised);
  });

  it.each([
    ['2026-05-25', false],
    ['2026-05-24', true],
    ['2026-05-26', false],
    ['2025-11-25', true],
  ])('a sample of %s is old on 2026-11-25: %s', (collected, old) => {
    expect(flagsOf(usual, { collected }).includes('old-sample')).toBe(old);
  });

  it.each([
    [50, null, []],
    [50.1, null, ['fasting-unknown']],
    [50.1, false, ['not-fasting']],
    [50.1, true, []],
  ] as const)('saturation %d, fasting %s: %o', (percent, fasting, expected) => {
    const flags = flagsOf(
      { ...usual, 'transferrin-saturation': percent },
      { context: { fasting } },
    );
    expect(flags.filter((one) => one.includes('fasting'))).toEqual(expected);
  });
});

describe('flags of what was not measured', () => {
  it.each([
    ['haemoglobin', 'haemoglobin-not-measured'],
    ['ferritin', 'ferritin-not-measured'],
    ['transferrin-saturation', 'iron-supply-not-measured'],
    ['crp', 'crp-not-measured'],
  ] as const)('%s absent: %s', (analyte, flag) => {
    const { [analyte]: _, ...rest } = usual;
    expect(flagsOf(rest)).toContain(flag);
    expect(flagsOf(usual)).not.toContain(flag);
  });

  it('does not ask for CRP where ferritin is low whatever CRP says', () => {
    expect(flagsOf({ ferritin: 14 })).not.toContain('crp-not-measured');
    expect(flagsOf({ ferritin: 15 })).toContain('crp-not-measured');
  });

  it.each([
    [5, false],
    [5.1, true],
  ])('CRP %d is raised: %s', (crp, raised) => {
    expect(flagsOf({ ...usual, crp }).includes('crp-raised')).toBe(raised);
  });
});

describe('flags of single results', () => {
  const lab = { value: 100, low: 30, high: 400 };
  it.each([
    ['L', 29, false],
    ['L', 30, true],
    ['LL', 100, true],
    ['H', 400, true],
    ['HU', 401, false],
    ['N', 100, false],
    ['N', 29, true],
    ['N', 401, true],
    ['A', 100, true],
    ['AA', 29, false],
    ['A', 401, false],
  ] as const)(
    'the laboratory’s mark %s on ferritin %i of 30 to 400 disagrees: %s',
    (labFlag, value, disagrees) => {
      const ferritin = { ...lab, value, labFlag };
      expect(flagsOf({ ...usual, ferritin }).includes('lab-flag-disagrees')).toBe(disagrees);
    },
  );

  it('says both when the laboratory’s interval and the guideline disagree, gently', () => {
    const { flags, results, pattern } = interpret(
      reportOf({ ...usual, ferritin: { value: 22, low: 20, high: 500 } }),
      today,
    );
    const ferritin = results.find(({ analyte }) => analyte === 'ferritin');
    expect(ferritin).toMatchObject({ position: 'in-range', level: 'low' });
    expect(ferritin?.also[0]).toMatchObject({ by: 'guideline', position: 'a-little-below' });
    expect(flags.map(({ flag }) => flag)).toEqual(['lab-and-guideline-disagree']);
    expect(pattern.main).toBe('early-low-intake');
  });

  it.each([
    [30, 1],
    [31, 0],
    [400, 1],
    [200, 1],
  ])('ferritin %i stands on a limit %i times', (value, times) => {
    const flags = flagsOf({ ...usual, ferritin: { value, low: 30, high: 400 } });
    expect(flags.filter((one) => one === 'at-the-limit')).toHaveLength(times);
  });

  it('names doubts and lets a doubtful value decide nothing', () => {
    for (const doubt of ['unit', 'value'] as const) {
      const { flags, results, pattern } = interpret(
        reportOf({ ...usual, ferritin: { value: 100, doubt } }),
        today,
      );
      expect(flags.find(({ flag }) => flag === `${doubt}-doubtful`)?.analyte).toBe('ferritin');
      expect(results.find(({ analyte }) => analyte === 'ferritin')).toMatchObject({
        position: null,
        level: 'not-measured',
      });
      expect(pattern).toMatchObject({ main: 'unclear' });
      expect(pattern.missing).toContain('ferritin');
    }
  });

  it('names a preliminary result and red-cell indices that disagree', () => {
    expect(flagsOf({ ...usual, ferritin: { value: 100, preliminary: true } })).toContain(
      'preliminary-result',
    );
    // Haemoglobin 102 over red cells 5.5 is 18.5 pg, printed 21: more than 10 % apart.
    expect(flagsOf({ ...usual, haemoglobin: 102, rbc: 5.5, mch: 21 })).toContain(
      'indices-disagree',
    );
    expect(flagsOf({ ...usual, haemoglobin: 102, rbc: 5.5, mch: 18.5 })).not.toContain(
      'indices-disagree',
    );
  });
});

describe('flags of the iron tests together', () => {
  it.each([
    [145, 70, undefined, true],
    [100, 70, undefined, false],
    [100, 70, 5.5, true],
    [100, 70, 4.5, false],
    [145, 90, undefined, false],
  ])(
    'haemoglobin %i with MCV %i and red cells %s: cells too small for it: %s',
    (haemoglobin, mcv, rbc, odd) => {
      const flags = flagsOf({ ...usual, haemoglobin, mcv, ...(rbc === undefined ? {} : { rbc }) });
      expect(flags.includes('microcytosis-out-of-proportion')).toBe(odd);
    },
  );

  it.each([
    [129, 50.1, true],
    [130, 50.1, false],
    [129, 50, false],
  ])('haemoglobin %i with saturation %d: %s', (haemoglobin, percent, raised) => {
    const flags = flagsOf({ ...usual, haemoglobin, 'transferrin-saturation': percent });
    expect(flags.includes('anaemia-with-high-tsat')).toBe(raised);
  });

  it.each([
    [1000, false],
    [1000.1, true],
  ])('ferritin %d is above the referral limit: %s', (ferritin, raised) => {
    expect(flagsOf({ ...usual, ferritin }).includes('ferritin-above-referral-limit')).toBe(raised);
  });
});

describe('a disease with its own rule', () => {
  /** CKD review (PubMed 30970355), ESC 2021, ECCO 2015. */
  const cases: readonly (readonly [Condition, Values, 'yes' | 'no'])[] = [
    ['kidney-disease', { ferritin: 100, 'transferrin-saturation': 20 }, 'yes'],
    ['kidney-disease', { ferritin: 100.1, 'transferrin-saturation': 20 }, 'no'],
    ['kidney-disease', { ferritin: 100, 'transferrin-saturation': 20.1 }, 'no'],
    ['kidney-disease-dialysis', { ferritin: 200, 'transferrin-saturation': 20 }, 'yes'],
    ['kidney-disease-dialysis', { ferritin: 201, 'transferrin-saturation': 20 }, 'no'],
    ['heart-failure', { ferritin: 99.9, 'transferrin-saturation': 40 }, 'yes'],
    ['heart-failure', { ferritin: 100, 'transferrin-saturation': 20 }, 'no'],
    ['heart-failure', { ferritin: 299, 'transferrin-saturation': 19.9 }, 'yes'],
    ['heart-failure', { ferritin: 300, 'transferrin-saturation': 19.9 }, 'no'],
    ['inflammatory-bowel-disease', { ferritin: 29.9 }, 'yes'],
    ['inflammatory-bowel-disease', { ferritin: 30 }, 'no'],
    ['inflammatory-bowel-disease', { ferritin: 99.9, crp: 6 }, 'yes'],
    ['inflammatory-bowel-disease', { ferritin: 100, crp: 6 }, 'no'],
  ];
  const flagOf: Partial<Record<Condition, Flag>> = {
    'kidney-disease-dialysis': 'kidney-disease',
    'inflammatory-bowel-disease': 'bowel-disease',
  };
  it.each(cases)('%s with %o: %s', (condition, values, met) => {
    const patient = { conditions: [condition] };
    const flag = flagOf[condition] ?? (condition as Flag);
    expect(factsOf(flag, { ...usual, ...values }, { patient })?.['rule-met']).toBe(met);
  });

  it('leaves nothing called in range while its rule is met, and computes with a derived saturation', () => {
    const values = { haemoglobin: 145, ferritin: 95, crp: 1, 'serum-iron': 12, tibc: 62 };
    const well = interpret(reportOf(values), today);
    expect(well.pattern.main).toBe('all-in-range');
    const kidney = interpret(
      reportOf(values, { patient: { conditions: ['kidney-disease'] } }),
      today,
    );
    expect(kidney.pattern.main).toBe('unclear');
    expect(kidney.pattern.against.map(({ code }) => code)).toContain('disease-rule-met');
    expect(kidney.clinicianNotes.map(({ code }) => code)).toContain('kidney-rule-met');
  });
});
