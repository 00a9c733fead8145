// Sex, age or stage not known: every group still open is read, and only what holds for all is said.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import type { Patient } from '../../src/report/report.js';
import { reportOf, today, type Values } from './build.js';

const usual: Values = { ferritin: 100, 'transferrin-saturation': 30, crp: 1 };
const read = (values: Values, patient: Partial<Patient>) =>
  interpret(reportOf(values, { patient }), today);

describe('sex unknown', () => {
  const patient = { sex: 'unknown' } as const;

  it('compares with both groups', () => {
    expect(read(usual, patient).groups.map(({ group }) => group)).toEqual([
      'women-15-65',
      'men-15-65',
    ]);
  });

  it('tells no position where the two disagree, and lays both limits beside', () => {
    const { results, pattern } = read({ ...usual, haemoglobin: 125 }, patient);
    const [haemoglobin] = results;
    expect(haemoglobin).toMatchObject({
      position: null,
      comparedWith: null,
      level: 'not-measured',
    });
    expect(haemoglobin?.also.map(({ low }) => low)).toEqual([120, 130]);
    expect(pattern.main).toBe('unclear');
    expect(pattern.against).toEqual([
      expect.objectContaining({
        code: 'readings-differ',
        facts: { group: 'women-15-65', pattern: 'all-in-range' },
      }),
      expect.objectContaining({
        code: 'readings-differ',
        facts: { group: 'men-15-65', pattern: 'anaemia-not-explained-by-iron' },
      }),
    ]);
  });

  it.each([
    [119, 'anaemia-not-explained-by-iron', 'a-little-below'],
    [130, 'all-in-range', 'in-range'],
  ])('says of haemoglobin %i what holds for both: %s', (haemoglobin, main, position) => {
    const { pattern, results } = read({ ...usual, haemoglobin }, patient);
    expect(pattern.main).toBe(main);
    expect(results[0]?.position).toBe(position);
  });

  it('keeps the laboratory’s interval, which is the same for both', () => {
    const values = { ...usual, haemoglobin: { value: 125, low: 115, high: 160 } };
    expect(read(values, patient).results[0]).toMatchObject({
      position: 'in-range',
      comparedWith: { by: 'laboratory' },
      level: 'not-measured',
    });
  });

  it('holds for the more pressing of the two', () => {
    expect(read({ haematocrit: 0.58 }, patient).hold.tier).toBe('same-day');
  });

  it('keeps only second statements that both share', () => {
    const both = read({ ...usual, haemoglobin: 110, mcv: 90 }, patient).pattern;
    expect(both.companions).toEqual(['possible-recent-blood-loss']);
    const one = read(
      { haemoglobin: 190, ferritin: 170, 'transferrin-saturation': 30, crp: 1 },
      patient,
    ).pattern;
    expect([one.main, one.companions]).toEqual(['high-haemoglobin', []]);
  });
});

describe('age or stage unknown', () => {
  it('reads every age of a man', () => {
    const { groups } = read(usual, { ageMonths: null });
    expect(groups.map(({ group }) => group)).toEqual([
      'children-6-23-months',
      'children-24-59-months',
      'children-5-11-years',
      'children-12-14-years',
      'men-15-65',
      'men-over-65',
    ]);
  });

  it('says what holds at every age, and nothing else', () => {
    expect(read({ ...usual, haemoglobin: 140 }, { ageMonths: null }).pattern.main).toBe(
      'all-in-range',
    );
    expect(read({ ...usual, haemoglobin: 118 }, { ageMonths: null }).pattern.main).toBe('unclear');
    expect(read({ haemoglobin: 90, ferritin: 5, crp: 1 }, { ageMonths: null }).pattern.main).toBe(
      'iron-deficiency-anaemia',
    );
  });

  it('reads all three trimesters where none is told', () => {
    const pregnancy = { weeks: null, trimester: null };
    const { groups, results } = read({ haemoglobin: 107 }, { sex: 'female', pregnancy });
    expect(groups).toHaveLength(3);
    expect(results[0]?.position).toBeNull();
    expect(read({ haemoglobin: 104 }, { sex: 'female', pregnancy }).results[0]?.level).toBe('low');
  });
});

describe('younger than 6 months', () => {
  it('is not read at all: WHO 2024 starts at 6 months, so a clinician is called', () => {
    const { pattern, hold, results, sources } = read({ haemoglobin: 100 }, { ageMonths: 5 });
    expect(pattern.main).toBe('unclear');
    expect(pattern.against[0]?.code).toBe('under-six-months');
    expect(hold).toMatchObject({ tier: 'same-day', reasons: [{ code: 'under-six-months' }] });
    expect(results).toEqual([]);
    expect(sources.map(({ number }) => number)).toEqual(['6 mo']);
    expect(read({ haemoglobin: 100 }, { ageMonths: 6 }).groups).toHaveLength(1);
  });
});

describe('late in pregnancy', () => {
  const stage = (trimester: 1 | 2 | 3) =>
    ({ sex: 'female', pregnancy: { weeks: null, trimester } }) as const;
  it('low saturation alone is not called low supply in trimester 3', () => {
    const values = { haemoglobin: 115, ferritin: 40, crp: 1, 'transferrin-saturation': 12 };
    const third = read(values, stage(3));
    expect(third.results.find(({ analyte }) => analyte === 'transferrin-saturation')?.level).toBe(
      'not-measured',
    );
    expect(third.pattern.missing).not.toContain('transferrin-saturation');
    const second = read(values, stage(2));
    expect(second.results.find(({ analyte }) => analyte === 'transferrin-saturation')?.level).toBe(
      'low',
    );
    const both = read({ ...values, ferritin: 10 }, stage(3));
    expect(both.results.find(({ analyte }) => analyte === 'transferrin-saturation')?.level).toBe(
      'low',
    );
  });

  it('a laboratory’s interval for adults does not make anaemia of a pregnant haemoglobin', () => {
    const values = {
      haemoglobin: { value: 112, low: 115, high: 155 },
      ferritin: 40,
      crp: 1,
      'transferrin-saturation': 25,
    };
    const { pattern, flags, results } = read(values, stage(2));
    expect(results[0]).toMatchObject({ position: 'a-little-below', level: 'usual' });
    expect(flags.map(({ flag }) => flag)).toContain('lab-and-guideline-disagree');
    expect(pattern.main).toBe('unclear');
    expect(pattern.against.map(({ code }) => code)).toContain('outside-laboratory-interval-only');
  });
});

describe('a recent dose or gift of iron', () => {
  const raised = { haemoglobin: 140, ferritin: 60, crp: 1, 'serum-iron': 50, tibc: 62 };
  it.each([
    [{ ironTabletHoursBefore: 24 }, 'post-iron-dose-artefact'],
    [{ ironTabletHoursBefore: 25 }, 'unclear'],
    [{ ironInjectionDaysBefore: 28 }, 'post-iron-dose-artefact'],
    [{ ironInjectionDaysBefore: 29 }, 'unclear'],
  ])('with %o reads as %s', (context, main) => {
    expect(interpret(reportOf(raised, { context }), today).pattern.main).toBe(main);
  });

  it('says nothing when iron is not raised', () => {
    const values = { ...raised, 'serum-iron': 15 };
    const { pattern } = interpret(
      reportOf(values, { context: { ironTabletHoursBefore: 3 } }),
      today,
    );
    expect(pattern.main).toBe('all-in-range');
  });

  it('after a transfusion a raised saturation is set aside for two days', () => {
    const values = { haemoglobin: 140, ferritin: 260, crp: 1, 'transferrin-saturation': 60 };
    const at = (transfusionDaysBefore: number) =>
      interpret(reportOf(values, { context: { transfusionDaysBefore } }), today).pattern.main;
    expect([at(2), at(3)]).toEqual(['unclear', 'raised-tsat-and-ferritin']);
  });
});
