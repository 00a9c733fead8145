// Why a letter must not simply go out: each tier at the edge of its row.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import type { Context, Patient } from '../../src/report/report.js';
import { reportOf, today, type Values } from './build.js';

type Facts = { patient?: Partial<Patient>; context?: Partial<Context> };
const woman = { sex: 'female', ageMonths: 360, menstruating: true } as const;

function holdOf(values: Values, facts: Facts = {}) {
  return interpret(reportOf(values, facts), today).hold;
}
const codesOf = (values: Values, facts: Facts = {}) =>
  holdOf(values, facts).reasons.map(({ code }) => code);

describe('haemoglobin', () => {
  /** Laboratories phone below 70 to 80 and above 200 g/L (Barnsley, Homerton, Royal Melbourne). */
  it.each([
    [69.9, 'emergency'],
    [70, 'same-day'],
    [79.9, 'same-day'],
    [80, 'routine'],
    [200, 'routine'],
    [200.1, 'emergency'],
  ])('of %d g/L in a woman of 30: %s', (haemoglobin, tier) => {
    expect(holdOf({ haemoglobin, ferritin: 100, crp: 1 }, { patient: woman }).tier).toBe(tier);
  });

  /** WHO 2024, Table 3, severe: 70 under 5 years and in pregnancy, 80 from 5 to 14 years. */
  it.each([
    [{ ageMonths: 30 }, 70, 'same-day'],
    [{ ageMonths: 30 }, 69.9, 'emergency'],
    [{ ageMonths: 100 }, 79.9, 'emergency'],
    [{ ageMonths: 100 }, 80, 'routine'],
    [{ ...woman, pregnancy: { weeks: 30, trimester: 3 } }, 69.9, 'emergency'],
    [{ ...woman, pregnancy: { weeks: 30, trimester: 3 } }, 70, 'same-day'],
  ] as const)('of %o, %d g/L: %s', (patient, haemoglobin, tier) => {
    expect(holdOf({ haemoglobin }, { patient }).tier).toBe(tier);
  });

  it('below 80 with a danger symptom cannot wait; at 80 the symptom alone holds the letter', () => {
    const context = { symptoms: ['chest-pain'] } as const;
    expect(holdOf({ haemoglobin: 79 }, { context, patient: woman }).tier).toBe('emergency');
    expect(holdOf({ haemoglobin: 80 }, { context, patient: woman }).tier).toBe('same-day');
    expect(
      holdOf({ haemoglobin: 79 }, { context: { symptoms: ['tiredness'] }, patient: woman }).tier,
    ).toBe('same-day');
  });

  it.each([
    [185, 'male', 'routine'],
    [185.1, 'male', 'same-day'],
    [165, 'female', 'routine'],
    [165.1, 'female', 'same-day'],
  ] as const)('of %d in a %s with headache: %s', (haemoglobin, sex, tier) => {
    const context = { symptoms: ['headache'] } as const;
    expect(holdOf({ haemoglobin }, { context, patient: { sex } }).tier).toBe(tier);
    expect(codesOf({ haemoglobin }, { patient: { sex } })).not.toContain(
      'haemoglobin-high-with-symptom',
    );
  });

  it('is an alarm at face value when it is doubtful', () => {
    const haemoglobin = { value: 45, doubt: 'value' } as const;
    expect(holdOf({ haemoglobin }).tier).toBe('emergency');
  });
});

describe('other values', () => {
  it.each([
    ['haematocrit', 0.6, 'male', 'routine'],
    ['haematocrit', 0.601, 'male', 'same-day'],
    ['haematocrit', 0.56, 'female', 'routine'],
    ['haematocrit', 0.561, 'female', 'same-day'],
    ['serum-iron', 60, 'male', 'routine'],
    ['serum-iron', 60.1, 'male', 'emergency'],
    ['transferrin-saturation', 100, 'male', 'routine'],
    ['transferrin-saturation', 100.1, 'male', 'emergency'],
    ['ferritin', 1000, 'male', 'routine'],
    ['ferritin', 1001, 'male', 'referral'],
    ['ferritin', 5000, 'male', 'referral'],
    ['ferritin', 5001, 'male', 'same-day'],
    ['ferritin', 10000, 'male', 'same-day'],
    ['ferritin', 10001, 'male', 'emergency'],
  ] as const)('%s %d of a %s: %s', (analyte, value, sex, tier) => {
    expect(holdOf({ [analyte]: value }, { patient: { sex } }).tier).toBe(tier);
  });

  it('finds a saturation over 100 % by itself, also where it is not computed for the letter', () => {
    expect(holdOf({ 'serum-iron': 55, tibc: 50, ferritin: 1300 }).reasons[0]).toMatchObject({
      code: 'iron-poisoning-possible',
      tier: 'emergency',
    });
    const doubtful = { 'serum-iron': { value: 55, doubt: 'unit' }, tibc: 50 } as const;
    expect(codesOf(doubtful)).toEqual([]);
  });

  it('fever with ferritin above 1000 is for the same day', () => {
    const context = { symptoms: ['fever'] } as const;
    expect(holdOf({ ferritin: 1000, haemoglobin: 145 }, { context }).tier).toBe('routine');
    expect(holdOf({ ferritin: 1001, haemoglobin: 145 }, { context }).tier).toBe('same-day');
  });

  it('a comparator that leaves an alarm open raises none, one that does not does', () => {
    expect(holdOf({ ferritin: { value: 1000, comparator: '>' } }).tier).toBe('referral');
    expect(holdOf({ ferritin: { value: 1000, comparator: '>=' } }).tier).toBe('routine');
  });
});

describe('the body', () => {
  it.each(['vomited-blood', 'black-or-bloody-stool', 'very-heavy-now'] as const)(
    '%s is an emergency at any haemoglobin',
    (one) => {
      expect(holdOf({ haemoglobin: 150 }, { context: { bleeding: [one] } }).tier).toBe('emergency');
    },
  );

  it.each(['none', 'heavy-periods', 'nosebleeds', 'blood-donation'] as const)(
    '%s alone is routine',
    (one) => {
      expect(holdOf({ haemoglobin: 150 }, { context: { bleeding: [one] } }).tier).toBe('routine');
    },
  );

  it.each([
    'chest-pain',
    'breathless-at-rest',
    'fainting',
    'heart-racing-at-rest',
    'confusion',
    'sudden-loss-of-sight',
    'one-sided-weakness',
    'swollen-painful-leg',
    'limp-or-very-sleepy-child',
    'refusing-feeds',
  ] as const)('%s holds any letter', (symptom) => {
    expect(holdOf({ haemoglobin: 150 }, { context: { symptoms: [symptom] } }).tier).toBe(
      'same-day',
    );
  });

  it.each(['tiredness', 'dizziness', 'restless-legs', 'headache'] as const)(
    '%s alone does not',
    (symptom) => {
      expect(holdOf({ haemoglobin: 150 }, { context: { symptoms: [symptom] } }).tier).toBe(
        'routine',
      );
    },
  );

  it.each(['jaundice', 'fever'] as const)(
    '%s with low haemoglobin is for the same day',
    (symptom) => {
      const context = { symptoms: [symptom] };
      expect(holdOf({ haemoglobin: 119 }, { context, patient: woman }).tier).toBe('same-day');
      expect(holdOf({ haemoglobin: 120 }, { context, patient: woman }).tier).toBe('routine');
    },
  );

  it('pregnant and dizzy, or bleeding, is for the same day', () => {
    const patient = { ...woman, pregnancy: { weeks: 20, trimester: 2 } } as const;
    expect(
      holdOf({ haemoglobin: 120 }, { patient, context: { symptoms: ['dizziness'] } }).tier,
    ).toBe('same-day');
    expect(holdOf({ haemoglobin: 120 }, { patient, context: { bleeding: ['other'] } }).tier).toBe(
      'same-day',
    );
    expect(holdOf({ haemoglobin: 120 }, { patient, context: { bleeding: ['none'] } }).tier).toBe(
      'routine',
    );
    expect(
      holdOf({ haemoglobin: 120 }, { patient: woman, context: { symptoms: ['dizziness'] } }).tier,
    ).toBe('routine');
  });
});

describe('the laboratory’s own mark (HL7 table 0078)', () => {
  it.each([
    ['LL', 'same-day'],
    ['HH', 'same-day'],
    ['AA', 'same-day'],
    ['LU', 'referral'],
    ['HU', 'referral'],
    ['L', 'routine'],
    ['H', 'routine'],
    ['A', 'routine'],
    ['N', 'routine'],
  ] as const)('%s: at least %s', (labFlag, tier) => {
    expect(holdOf({ haemoglobin: { value: 145, labFlag } }).tier).toBe(tier);
  });
});

describe('values that contradict each other', () => {
  it.each([
    [14.9, 45.1, true],
    [15, 45.1, false],
    [14.9, 45, false],
    [300.1, 9.9, true],
    [300, 9.9, false],
    [300.1, 10, false],
  ])('ferritin %d with saturation %d: held %s', (ferritin, percent, held) => {
    const values = { ferritin, 'transferrin-saturation': percent, crp: 1, haemoglobin: 145 };
    expect(codesOf(values, { patient: { sex: 'male' } }).includes('values-contradict')).toBe(held);
    const found = interpret(reportOf(values), today).pattern.main === 'discordant-or-implausible';
    expect(found).toBe(held);
  });

  it('are explained by inflammation in the pattern, and still held', () => {
    const values = { haemoglobin: 100, ferritin: 450, 'transferrin-saturation': 9, crp: 90 };
    expect(interpret(reportOf(values), today).pattern.main).toBe('anaemia-of-inflammation');
    expect(codesOf(values)).toContain('values-contradict');
  });

  it('are held for iron above TIBC, at the very limit not', () => {
    expect(codesOf({ 'serum-iron': 50, tibc: 50 })).not.toContain('values-contradict');
    expect(codesOf({ 'serum-iron': 50.1, tibc: 50 })).toContain('values-contradict');
  });

  it('are held when low ferritin stands beside raised saturation', () => {
    const values = { haemoglobin: 145, ferritin: 25, 'transferrin-saturation': 60, crp: 1 };
    expect(holdOf(values).tier).toBe('same-day');
  });
});

describe('pathways', () => {
  const deficient = { haemoglobin: 105, ferritin: 8, crp: 1, mcv: 75 } as const;
  it.each([
    ['a man of 30', { sex: 'male', ageMonths: 360 }, 'referral'],
    ['a woman of 30', { sex: 'female', ageMonths: 360 }, 'routine'],
    [
      'a woman of 30 who does not menstruate',
      { sex: 'female', ageMonths: 360, menstruating: false },
      'referral',
    ],
    ['a woman just under 50, nothing told', { sex: 'female', ageMonths: 599 }, 'routine'],
    ['a woman of 50, nothing told', { sex: 'female', ageMonths: 600 }, 'referral'],
    [
      'a woman of 52 who menstruates',
      { sex: 'female', ageMonths: 624, menstruating: true },
      'routine',
    ],
    [
      'a woman of 60 who menstruates',
      { sex: 'female', ageMonths: 720, menstruating: true },
      'referral',
    ],
    ['a child', { sex: 'male', ageMonths: 100 }, 'routine'],
  ] as const)('deficiency anaemia of %s: %s', (_, patient, tier) => {
    expect(holdOf(deficient, { patient }).tier).toBe(tier);
  });

  /** NICE NG12 as changed in 2023: anaemia from 60 years even without iron deficiency. */
  it.each([
    [719, 'routine'],
    [720, 'referral'],
  ])('anaemia without iron deficiency at %i months of age: %s', (ageMonths, tier) => {
    const values = { haemoglobin: 115, ferritin: 150, 'transferrin-saturation': 30, crp: 1 };
    expect(holdOf(values, { patient: { ageMonths } }).tier).toBe(tier);
  });

  it.each([
    [['change-in-bowel-habit'], 300, 'referral'],
    [['weight-loss', 'abdominal-pain'], 480, 'referral'],
    [['weight-loss', 'abdominal-pain'], 479, 'routine'],
    [['weight-loss'], 600, 'routine'],
    [['abdominal-pain'], 600, 'routine'],
  ] as const)('bowel signs %o at %i months of age: %s', (symptoms, ageMonths, tier) => {
    const values = { haemoglobin: 145, ferritin: 100, 'transferrin-saturation': 30, crp: 1 };
    expect(holdOf(values, { patient: { ageMonths }, context: { symptoms } }).tier).toBe(tier);
  });

  it('raised saturation with raised ferritin asks for a referral', () => {
    const values = { haemoglobin: 145, ferritin: 250, 'transferrin-saturation': 51 };
    expect(holdOf(values).tier).toBe('referral');
    expect(holdOf({ ...values, 'transferrin-saturation': 50 }).tier).toBe('routine');
    expect(holdOf({ ...values, ferritin: 200 }).tier).toBe('routine');
  });
});

it('puts the most pressing reason first and gives each once', () => {
  const { tier, reasons } = holdOf(
    { haemoglobin: 62, ferritin: 6 },
    { patient: { ageMonths: 800, sex: 'unknown' }, context: { bleeding: ['vomited-blood'] } },
  );
  expect(tier).toBe('emergency');
  expect(reasons[0]?.tier).toBe('emergency');
  expect(reasons.at(-1)?.tier).toBe('referral');
  const keys = reasons.map(({ code, facts }) => JSON.stringify([code, facts]));
  expect(new Set(keys).size).toBe(keys.length);
});
