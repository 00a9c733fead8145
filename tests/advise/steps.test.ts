// Who does what by when, and when silence means: call us.
import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/advise/dates.js';
import { holdTiers, patterns } from '../../src/terms.js';
import { adviceFor, today } from './build.js';

const stepsOf = (given: Parameters<typeof adviceFor>[0]): readonly string[] =>
  adviceFor(given).steps.map((step) => step.step);
const byOf = (given: Parameters<typeof adviceFor>[0], code: string): string | null | undefined =>
  adviceFor(given).steps.find((step) => step.step === code)?.by;

describe('suggested steps', () => {
  it.each(patterns)('exist for %s, each with its source', (pattern) => {
    const { steps, sources } = adviceFor({ pattern });
    expect(steps.length).toBeGreaterThan(0);
    for (const step of steps) {
      expect(step.suggested).toBe(true);
      for (const rule of step.rules) expect(sources.map((source) => source.rule)).toContain(rule);
    }
  });

  it('never lie before the letter, and never repeat a step', () => {
    for (const pattern of patterns)
      for (const tier of holdTiers) {
        const { steps } = adviceFor({ pattern, tier });
        for (const step of steps) if (step.by !== null) expect(step.by >= today).toBe(true);
        expect(new Set(steps.map((step) => step.step)).size).toBe(steps.length);
      }
  });

  // BSG 2021: haemoglobin within four weeks of treatment. BSH 2020: in pregnancy at two to three weeks.
  it('check again within four weeks of tablets, within three in pregnancy', () => {
    const choices = { tabletsPrescribed: { dose: null } };
    expect(byOf({ choices }, 'repeat-test')).toBe('2026-12-23');
    const pregnancy = { weeks: 20, trimester: 2 } as const;
    expect(byOf({ choices, patient: { pregnancy } }, 'repeat-test')).toBe('2026-12-16');
  });

  // Polycythaemia referral pages: repeat in two to three months.
  it('repeat a high haemoglobin within three months', () => {
    expect(byOf({ pattern: 'high-haemoglobin' }, 'repeat-test')).toBe(addDays(today, 90));
  });

  it('wait until the person is well when CRP is raised', () => {
    const steps = stepsOf({ pattern: 'early-low-intake', flags: ['crp-raised'] });
    expect(steps).toContain('repeat-test-when-well');
    expect(steps).not.toContain('repeat-test');
  });

  it.each([
    'ferritin-not-measured',
    'haemoglobin-not-measured',
    'iron-supply-not-measured',
    'value-doubtful',
    'preliminary-result',
  ] as const)('never say that no test is needed with %s', (flag) => {
    expect(stepsOf({ pattern: 'all-in-range', flags: [flag] })).not.toContain('no-further-test');
  });

  it('ask about periods only where periods are recorded', () => {
    expect(stepsOf({ patient: { menstruating: true } })).toContain('tell-us-about-periods');
    expect(stepsOf({ patient: { menstruating: null } })).not.toContain('tell-us-about-periods');
  });

  it('begin with a call from the clinic when the result is pressing', () => {
    for (const tier of ['emergency', 'same-day'] as const)
      expect(adviceFor({ tier }).steps[0]).toMatchObject({ step: 'clinic-calls-you', by: today });
  });

  // Nothing is dated weeks ahead while somebody has to be called today.
  it('say nothing more than that call while the result is pressing', () => {
    for (const pattern of patterns)
      expect(stepsOf({ pattern, tier: 'emergency' })).toEqual(['clinic-calls-you']);
  });

  it('test again within a month with anaemia or a pregnancy, also before anything is prescribed', () => {
    const limit = addDays(today, 31);
    const pregnancy = { weeks: 20, trimester: 2 } as const;
    const anaemia = byOf({}, 'repeat-test');
    const stores = byOf(
      { pattern: 'iron-deficiency-without-anaemia', patient: { pregnancy } },
      'repeat-test',
    );
    for (const by of [anaemia, stores]) expect(by != null && by <= limit).toBe(true);
  });

  it('name tablets only when they were prescribed', () => {
    for (const pattern of patterns)
      expect(stepsOf({ pattern })).not.toContain('take-tablets-as-prescribed');
  });
});

describe('steps the clinician chose', () => {
  it('stand as chosen, in their order, with their words', () => {
    const steps = [
      { step: 'referral', by: '2026-12-01', words: 'I have written to the hospital.' },
      { step: 'repeat-test', by: '2027-01-15', words: null },
    ] as const;
    expect(adviceFor({ choices: { steps } }).steps).toEqual([
      { ...steps[0], who: 'clinic', suggested: false, rules: [] },
      { ...steps[1], who: 'patient', suggested: false, rules: [] },
    ]);
  });

  it('lose eating for iron where iron could harm, and say so on the sheet', () => {
    const steps = [{ step: 'eat-for-iron', by: null, words: null }] as const;
    const advice = adviceFor({ pattern: 'raised-tsat-and-ferritin', choices: { steps } });
    expect(advice.steps).toEqual([]);
    expect(advice.staff.map((line) => line.code)).toContain('eat-for-iron-withheld');
  });
});

describe('the day after which silence means: call us', () => {
  it('is never before a day on which the clinic promised something', () => {
    const steps = [{ step: 'referral', by: '2027-02-01', words: null }] as const;
    expect(adviceFor({ choices: { steps } }).heardBy).toBe('2027-02-01');
    expect(adviceFor({ choices: { steps: [] } }).heardBy).toBe(addDays(today, 14));
  });

  it('is tomorrow when the result is pressing', () => {
    expect(adviceFor({ tier: 'emergency' }).heardBy).toBe('2026-11-26');
  });
});

describe('addDays', () => {
  // Gregorian calendar: 2028 is a leap year, 2027 is not.
  it.each([
    { from: '2027-02-28', days: 1, to: '2027-03-01' },
    { from: '2028-02-28', days: 1, to: '2028-02-29' },
    { from: '2026-12-31', days: 1, to: '2027-01-01' },
    { from: '2026-11-25', days: 0, to: '2026-11-25' },
  ])('turns $from and $days into $to', ({ from, days, to }) => {
    expect(addDays(from, days)).toBe(to);
  });

  it('refuses what is not an ISO date', () => {
    expect(() => addDays('25/11/2026', 1)).toThrow('not an ISO date');
  });
});
