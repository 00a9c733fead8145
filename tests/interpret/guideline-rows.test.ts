// Published limits, typed in here from the documents named, at below / at / above.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import type { Patient } from '../../src/report/report.js';
import type { Analyte } from '../../src/terms.js';
import { reportOf, today, type Values } from './build.js';

function graded(values: Values, analyte: Analyte, patient: Partial<Patient> = {}) {
  const { results } = interpret(reportOf(values, { patient }), today);
  const found = results.find((one) => one.analyte === analyte);
  if (found === undefined) throw new Error(`no ${analyte}`);
  return found;
}

const years = (age: number) => age * 12;
const woman: Partial<Patient> = { sex: 'female', ageMonths: years(30) };
const pregnant = (trimester: 1 | 2 | 3): Partial<Patient> => ({
  ...woman,
  pregnancy: { weeks: null, trimester },
});

/** WHO 2024 guideline on haemoglobin cutoffs, Tables 2 and 3: anaemia, moderate, severe below (g/L). */
const who2024: readonly (readonly [string, Partial<Patient>, number, number, number])[] = [
  ['6 months', { sex: 'female', ageMonths: 6 }, 105, 95, 70],
  ['23 months', { sex: 'male', ageMonths: 23 }, 105, 95, 70],
  ['24 months', { sex: 'male', ageMonths: 24 }, 110, 100, 70],
  ['59 months', { sex: 'female', ageMonths: 59 }, 110, 100, 70],
  ['5 years', { sex: 'female', ageMonths: 60 }, 115, 110, 80],
  ['11 years', { sex: 'male', ageMonths: 143 }, 115, 110, 80],
  ['12 years, girl', { sex: 'female', ageMonths: 144 }, 120, 110, 80],
  ['14 years, boy', { sex: 'male', ageMonths: 179 }, 120, 110, 80],
  ['woman of 15', { sex: 'female', ageMonths: 180 }, 120, 110, 80],
  ['man of 15', { sex: 'male', ageMonths: 180 }, 130, 110, 80],
  ['woman of 65', { sex: 'female', ageMonths: years(65) }, 120, 110, 80],
  ['man of 65', { sex: 'male', ageMonths: years(65) + 11 }, 130, 110, 80],
  ['pregnant, trimester 1', pregnant(1), 110, 100, 70],
  ['pregnant, trimester 2', pregnant(2), 105, 95, 70],
  ['pregnant, trimester 3', pregnant(3), 110, 100, 70],
];

describe('haemoglobin by WHO 2024', () => {
  it.each(who2024)(
    'grades %s below, at and above each limit',
    (_, patient, low, moderate, severe) => {
      const at = (haemoglobin: number) => {
        const { clinicianNotes } = interpret(reportOf({ haemoglobin }, { patient }), today);
        const note = clinicianNotes.find(({ code }) => code === 'severity-band');
        return note?.facts.severity ?? 'none';
      };
      expect(at(low)).toBe('none');
      expect(at(low + 0.1)).toBe('none');
      expect(at(low - 0.1)).toBe('mild');
      expect(at(moderate)).toBe('mild');
      expect(at(moderate + 0.1)).toBe('mild');
      expect(at(moderate - 0.1)).toBe('moderate');
      expect(at(severe)).toBe('moderate');
      expect(at(severe + 0.1)).toBe('moderate');
      expect(at(severe - 0.1)).toBe('severe');
      const { comparedWith } = graded({ haemoglobin: low }, 'haemoglobin', patient);
      expect(comparedWith?.low).toBe(low);
      expect(comparedWith?.source).toContain('WHO 2024');
      expect(graded({ haemoglobin: low - 0.1 }, 'haemoglobin', patient).level).toBe('low');
      expect(graded({ haemoglobin: low }, 'haemoglobin', patient).level).toBe('usual');
    },
  );

  it('uses adult limits from 66 years but does not call them WHO’s', () => {
    const old = { sex: 'female', ageMonths: years(66) } as const;
    const { comparedWith, position } = graded({ haemoglobin: 119 }, 'haemoglobin', old);
    expect(comparedWith?.low).toBe(120);
    expect(comparedWith?.source).toMatch(/^Adult limits/);
    expect(position).toBe('a-little-below');
  });

  /** WHO 2024, Table 4: metres, g/L to add to the limit. */
  const table4 = [
    [0, 0],
    [499, 0],
    [500, 4],
    [999, 4],
    [1000, 8],
    [1499, 8],
    [1500, 11],
    [1999, 11],
    [2000, 14],
    [2499, 14],
    [2500, 18],
    [2999, 18],
    [3000, 21],
    [3499, 21],
    [3500, 25],
    [3999, 25],
    [4000, 29],
    [4499, 29],
    [4500, 33],
    [4999, 33],
  ] as const;
  it.each(table4)('at %i metres adds %i g/L to the limit', (altitudeMetres, added) => {
    const { comparedWith } = graded({ haemoglobin: 150 }, 'haemoglobin', {
      ...woman,
      altitudeMetres,
    });
    expect(comparedWith?.low).toBe(120 + added);
  });

  it('extrapolates nothing above the table', () => {
    const high = { ...woman, altitudeMetres: 5000 };
    const { flags } = interpret(reportOf({ haemoglobin: 100 }, { patient: high }), today);
    expect(flags.find(({ flag }) => flag === 'altitude-adjusted')?.facts.added).toBe(
      'beyond-the-table',
    );
    expect(graded({ haemoglobin: 140 }, 'haemoglobin', high).comparedWith?.low ?? null).toBeNull();
  });

  /** WHO 2024, Table 5: cigarettes a day, g/L to add. */
  const table5 = [
    [0, 0],
    [1, 3],
    [9, 3],
    [10, 5],
    [19, 5],
    [20, 6],
    [60, 6],
    ['unknown-amount', 3],
  ] as const;
  it.each(table5)('%s cigarettes a day add %i g/L', (cigarettesPerDay, added) => {
    const { comparedWith } = graded({ haemoglobin: 150 }, 'haemoglobin', {
      ...woman,
      cigarettesPerDay,
    });
    expect(comparedWith?.low).toBe(120 + added);
  });

  it('adds altitude and smoking up (from memory), and never to a laboratory’s own interval', () => {
    const patient = { ...woman, altitudeMetres: 2600, cigarettesPerDay: 10 };
    const own = { haemoglobin: { value: 130, low: 115, high: 155 } };
    const { comparedWith, also, level } = graded(own, 'haemoglobin', patient);
    expect(comparedWith).toMatchObject({ by: 'laboratory', low: 115, position: 'in-range' });
    expect(also[0]?.low).toBe(120 + 18 + 5);
    expect(level).toBe('low');
  });

  /** BSH 2020 (Pavord): below 110 in trimester 1, 105 later, 100 straight after birth. */
  it.each([
    ['trimester 1', pregnant(1), 110],
    ['trimester 2', pregnant(2), 105],
    ['trimester 3', pregnant(3), 105],
    ['after birth', { ...woman, afterBirthWeeks: 1 }, 100],
  ] as const)('lays the BSH limit beside WHO’s: %s', (_, patient, low) => {
    const { comparedWith, also } = graded({ haemoglobin: 120 }, 'haemoglobin', patient);
    expect(comparedWith?.source).toContain('WHO');
    expect(also.find(({ source }) => source.includes('Pavord'))?.low).toBe(low);
  });

  it.each([
    [104.9, 0],
    [105, 1],
    [109.9, 1],
    [110, 0],
  ])('in trimester 3 says that the guidelines disagree on %d g/L: %i', (haemoglobin, times) => {
    const { flags } = interpret(reportOf({ haemoglobin }, { patient: pregnant(3) }), today);
    expect(flags.filter(({ flag }) => flag === 'guidelines-disagree')).toHaveLength(times);
  });
});

/** WHO 2020 ferritin guideline: deficiency below, healthy and inflamed; and the policy's further cut-offs (ug/L). */
const ferritin: readonly (readonly [string, Partial<Patient>, Values, number, string, string])[] = [
  [
    'child under 5',
    { ageMonths: 59 },
    { crp: 1 },
    12,
    'ferritin-low',
    'ferritin-low-stores-likely',
  ],
  [
    'child under 5, inflamed',
    { ageMonths: 59 },
    { crp: 6 },
    30,
    'ferritin-low-while-inflamed',
    'ferritin-usual',
  ],
  ['child of 5', { ageMonths: 60 }, { crp: 1 }, 15, 'ferritin-low', 'ferritin-low-stores-likely'],
  [
    'child of 5, inflamed',
    { ageMonths: 60 },
    { crp: 6 },
    70,
    'ferritin-low-while-inflamed',
    'ferritin-usual',
  ],
  ['man', {}, { crp: 1 }, 15, 'ferritin-low', 'ferritin-low-stores-likely'],
  ['man, CRP exactly 5', {}, { crp: 5 }, 30, 'ferritin-low-stores-likely', 'ferritin-usual'],
  ['man, inflamed', {}, { crp: 5.1 }, 70, 'ferritin-low-while-inflamed', 'ferritin-usual'],
  [
    'man with anaemia',
    {},
    { crp: 1, haemoglobin: 129 },
    45,
    'ferritin-may-be-low',
    'ferritin-usual',
  ],
  [
    'man with anaemia, inflamed',
    {},
    { crp: 6, haemoglobin: 129 },
    100,
    'ferritin-may-be-low-while-inflamed',
    'ferritin-usual',
  ],
  [
    'man with anaemia, CRP not measured',
    {},
    { haemoglobin: 129 },
    100,
    'ferritin-cannot-tell',
    'ferritin-usual',
  ],
  [
    'pregnant, trimester 1',
    pregnant(1),
    { crp: 1 },
    15,
    'ferritin-low',
    'ferritin-low-stores-likely',
  ],
  ['pregnant, trimester 2', pregnant(2), { crp: 1 }, 30, 'ferritin-low', 'ferritin-usual'],
  ['pregnant, trimester 3', pregnant(3), { crp: 1 }, 30, 'ferritin-low', 'ferritin-usual'],
  [
    'over 65',
    { ageMonths: years(70) },
    { crp: 1 },
    15,
    'ferritin-low',
    'ferritin-low-stores-likely',
  ],
];

describe('ferritin by WHO 2020, AGA 2020, BSH 2020 and RCPA', () => {
  it.each(ferritin)('reads %s below, at and above', (_, patient, others, limit, under, over) => {
    const at = (value: number) => {
      const { pattern, nearMisses } = interpret(
        reportOf({ ...others, ferritin: value }, { patient }),
        today,
      );
      const codes = [...pattern.supports, ...pattern.against, ...nearMisses].map(
        ({ code }) => code,
      );
      return codes.find((code) => code.startsWith('ferritin-')) ?? 'ferritin-usual';
    };
    expect(at(limit - 0.1)).toBe(under);
    expect(at(limit)).toBe(over);
    expect(at(limit + 0.1)).toBe(over);
  });

  /** WHO 2020: risk of overload above 150 (menstruating women), 200 (men, others), 500 when not healthy. */
  it.each([
    ['woman', woman, 1, 150],
    ['woman who does not menstruate', { ...woman, menstruating: false }, 1, 200],
    ['man', {}, 1, 200],
    ['man, inflamed', {}, 9, 500],
  ] as const)('calls ferritin raised above the limit: %s', (_, patient, crp, limit) => {
    const at = (value: number) => graded({ ferritin: value, crp }, 'ferritin', patient);
    expect(at(limit - 0.1)).toMatchObject({ level: 'usual', position: 'in-range' });
    expect(at(limit)).toMatchObject({ level: 'usual', position: 'in-range' });
    expect(at(limit + 0.1)).toMatchObject({ level: 'high', position: 'a-little-above' });
  });
});

describe('saturation', () => {
  /** EASL 2022: over 45 % in women, 50 % in men. */
  it.each([
    ['women', woman, 45],
    ['men', {}, 50],
  ] as const)('is raised above the EASL limit of %s', (_, patient, limit) => {
    const at = (value: number) =>
      graded({ 'transferrin-saturation': value }, 'transferrin-saturation', patient).level;
    expect([at(limit - 0.1), at(limit), at(limit + 0.1)]).toEqual(['usual', 'usual', 'high']);
  });

  /** Anemia 2016:6430214, Table 1: deficient below 16 %; 16 to under 20 borderline. */
  it('is low below 16 and borderline to under 20', () => {
    const at = (value: number) => {
      const values = { haemoglobin: 140, ferritin: 60, crp: 1, 'transferrin-saturation': value };
      const { pattern } = interpret(reportOf(values), today);
      return [...pattern.supports, ...pattern.against]
        .map(({ code }) => code)
        .find((code) => code.startsWith('transferrin-saturation'));
    };
    expect(at(15.9)).toBe('transferrin-saturation-low');
    expect(at(16)).toBe('transferrin-saturation-borderline');
    expect(at(19.9)).toBe('transferrin-saturation-borderline');
    expect(at(20)).toBe('transferrin-saturation-usual');
  });

  /** EASL 2022: ferritin over 200 with saturation over 45 % (women), 300 and 50 % (men). */
  it.each([
    ['woman', { ...woman, menstruating: true }, 45, 200],
    ['man', {}, 50, 300],
  ] as const)(
    'names the gene test only above both EASL limits: %s',
    (_, patient, saturation, limit) => {
      const named = (percent: number, value: number) =>
        interpret(
          reportOf(
            { 'transferrin-saturation': percent, ferritin: value, haemoglobin: 140 },
            { patient },
          ),
          today,
        ).clinicianNotes.some(({ code }) => code === 'haemochromatosis-test');
      expect(named(saturation + 0.1, limit + 0.1)).toBe(true);
      expect(named(saturation, limit + 0.1)).toBe(false);
      expect(named(saturation + 0.1, limit)).toBe(false);
      expect(named(saturation - 0.1, limit - 0.1)).toBe(false);
    },
  );
});
