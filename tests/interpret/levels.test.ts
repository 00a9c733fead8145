// How single tests enter the decision table where groups, intervals or doubts make it hard.
import { describe, expect, it } from 'vitest';
import { usable } from '../../src/interpret/grade.js';
import { haemoglobinLimitsFor } from '../../src/interpret/haemoglobin.js';
import { interpret } from '../../src/interpret/index.js';
import { above, below } from '../../src/interpret/measure.js';
import { asPerson } from '../../src/interpret/person.js';
import { groupsFor } from '../../src/interpret/group.js';
import type { Patient } from '../../src/report/report.js';
import type { Analyte } from '../../src/terms.js';
import { type Given, reportOf, today, type Values } from './build.js';

const read = (values: Values, patient: Partial<Patient> = {}) =>
  interpret(reportOf(values, { patient }), today);
function graded(values: Values, analyte: Analyte, patient: Partial<Patient> = {}) {
  const found = read(values, patient).results.find((one) => one.analyte === analyte);
  if (found === undefined) throw new Error(`no ${analyte}`);
  return found;
}
const woman = { sex: 'female', ageMonths: 360 } as const;
const late = { ...woman, pregnancy: { weeks: 33, trimester: 3 } } as const;

describe('above the table of altitude (WHO 2024, Table 4 ends at 4999 m)', () => {
  const high = { altitudeMetres: 5000 } as const;
  const rest: Values = { ferritin: 100, 'transferrin-saturation': 30, crp: 1 };

  it.each([60, 100, 150, 190])(
    'haemoglobin %i is called neither in range nor usual',
    (haemoglobin) => {
      const { pattern, results } = read({ ...rest, haemoglobin }, high);
      expect(results[0]).toMatchObject({
        position: null,
        comparedWith: null,
        level: 'not-measured',
      });
      expect(pattern.main).toBe('unclear');
    },
  );

  it.each([
    [{ value: 120, low: 130, high: 170 }, 'low'],
    [{ value: 150, low: 130, high: 170 }, 'usual'],
    [{ value: 171, low: 130, high: 170 }, 'high'],
    [{ value: 150, low: 130 }, 'usual'],
    [{ value: 100, high: 170 }, 'not-measured'],
  ] as const)('the laboratory’s own interval still decides: %o is %s', (haemoglobin, level) => {
    expect(graded({ ...rest, haemoglobin }, 'haemoglobin', high).level).toBe(level);
    const child = { ...high, ageMonths: 100 };
    expect(graded({ ...rest, haemoglobin }, 'haemoglobin', child).level).toBe(level);
  });

  it('an alarm is raised all the same, and no band of severity is named', () => {
    expect(read({ haemoglobin: 65 }, high).hold.tier).toBe('emergency');
    expect(read({ haemoglobin: 90 }, { ...late, ...high }).clinicianNotes).toEqual([]);
    expect(
      read({ haemoglobin: 65 }, { ageMonths: 100, ...high }).hold.reasons.map(({ code }) => code),
    ).not.toContain('haemoglobin-below-severe-line');
  });

  it('WHO says nothing and BSH stays as it is, never raised by altitude', () => {
    const limitsAt = (altitudeMetres: number, patient: Partial<Patient>) => {
      const report = reportOf({}, { patient: { ...patient, altitudeMetres } });
      return groupsFor(report.patient).flatMap((group) =>
        haemoglobinLimitsFor(asPerson(group, report.patient, report.context, [])).map(
          ({ guideline, band, value }) => `${guideline} ${band} ${value}`,
        ),
      );
    };
    expect(limitsAt(5000, {})).toEqual([]);
    expect(limitsAt(5000, late)).toEqual(['bsh anaemia 105']);
    expect(limitsAt(2600, late)).toContain('who anaemia 128');
    expect(limitsAt(2600, late)).toContain('bsh anaemia 105');
  });
});

describe('haemoglobin', () => {
  /** WHO 2024, Table 3: moderate below 110 in men; a proposal makes it the line of 'well below'. */
  it.each([
    [110, 'a-little-below'],
    [109.9, 'well-below'],
  ])('%d is told as %s', (haemoglobin, position) => {
    expect(graded({ haemoglobin }, 'haemoglobin').position).toBe(position);
  });

  it.each<readonly [Given, Partial<Patient>, string]>([
    [{ value: 132, low: 135, high: 170 }, {}, 'low'],
    [{ value: 118, low: 120, high: 150 }, { ageMonths: 100 }, 'usual'],
    [{ value: 185, low: 130 }, {}, 'high'],
    [{ value: 172, low: 130, high: 170 }, {}, 'high'],
    [175, { ageMonths: 100 }, 'usual'],
  ])('%o of %o is %s', (haemoglobin, patient, level) => {
    expect(graded({ haemoglobin }, 'haemoglobin', patient).level).toBe(level);
  });

  it('and haematocrit of a pregnant woman are held by the limits of women', () => {
    expect(read({ haematocrit: 0.57 }, late).hold.tier).toBe('same-day');
    expect(read({ haematocrit: 0.56 }, late).hold.tier).toBe('routine');
  });
});

describe('saturation', () => {
  const at = (values: Values, patient: Partial<Patient> = {}) =>
    graded({ haemoglobin: 120, ...values }, 'transferrin-saturation', patient).level;

  it('late in pregnancy is set aside only when it is low', () => {
    expect(at({ 'transferrin-saturation': 25, ferritin: 100 }, late)).toBe('usual');
    expect(at({ 'transferrin-saturation': 12, ferritin: 100 }, late)).toBe('not-measured');
    expect(at({ 'transferrin-saturation': 12 }, late)).toBe('not-measured');
    expect(at({ 'transferrin-saturation': 12, ferritin: 29 }, late)).toBe('low');
  });

  it('after a transfusion is set aside only when it is raised, and may be missing', () => {
    const transfused = (values: Values) =>
      interpret(reportOf(values, { context: { transfusionDaysBefore: 1 } }), today);
    const level = (value: number) =>
      transfused({ 'transferrin-saturation': value }).results.find(
        ({ analyte }) => analyte === 'transferrin-saturation',
      )?.level;
    expect([level(12), level(30), level(51)]).toEqual(['low', 'usual', 'not-measured']);
    expect(transfused({ haemoglobin: 145 }).pattern.missing).toContain('transferrin-saturation');
  });

  it('left uncomputed counts as missing', () => {
    const values: Values = {
      haemoglobin: 145,
      'serum-iron': { value: 2, comparator: '<' },
      tibc: 60,
    };
    expect(read(values).pattern.missing).toContain('transferrin-saturation');
  });

  it.each<readonly [Values, string, readonly string[]]>([
    [
      { 'serum-iron': 20, tibc: 60, ferritin: 1201 },
      'ferritin-too-high',
      ['saturation-not-computed-ferritin'],
    ],
    [{ 'serum-iron': { value: 2, comparator: '<' }, tibc: 60, ferritin: 1300 }, 'comparator', []],
    [{ 'serum-iron': 20, tibc: { value: 60, comparator: '>' } }, 'comparator', []],
  ])('of %o is not computed: %s', (values, why, rules) => {
    const note = read(values).clinicianNotes.find(({ code }) => code === 'saturation-not-computed');
    expect(note).toMatchObject({ facts: { why }, rules });
  });

  it('is not computed after an injection, with its row', () => {
    const report = reportOf(
      { 'serum-iron': 20, tibc: 60 },
      { context: { ironInjectionDaysBefore: 3 } },
    );
    const { clinicianNotes } = interpret(report, today);
    expect(clinicianNotes).toContainEqual({
      code: 'saturation-not-computed',
      facts: { why: 'iron-injection' },
      rules: ['iron-injection-days'],
    });
  });

  it.each<readonly [Values, readonly string[], string]>([
    [{ tibc: 60 }, ['serum-iron', 'tibc'], 'saturation-identity'],
    [{ uibc: 40 }, ['serum-iron', 'uibc'], 'tibc-from-uibc'],
    [{ transferrin: 2.4 }, ['serum-iron', 'transferrin'], 'tibc-per-transferrin'],
  ])('computed with %o names its parts and its row', (carriers, from, rule) => {
    const found = graded({ 'serum-iron': 20, ...carriers }, 'transferrin-saturation');
    expect(found).toMatchObject({ unit: '%', derived: { from, rule }, copied: { unit: '%' } });
  });

  it('is not computed from nothing', () => {
    const saturations = (values: Values) =>
      read(values).results.filter(({ analyte }) => analyte === 'transferrin-saturation');
    expect(saturations({ 'serum-iron': 20, tibc: 0 })).toEqual([]);
    expect(saturations({ 'serum-iron': 0, uibc: 0 })).toEqual([]);
  });

  it.each([
    [9.55, '9.55'],
    [65.3, '65.3'],
    [64.9, '65'],
  ])(
    'of %d prints as %s, on its side of the line of well below and well above',
    (exact, printed) => {
      expect(
        graded({ 'serum-iron': exact, tibc: 100 }, 'transferrin-saturation').copied.value,
      ).toBe(printed);
    },
  );
});

describe('ferritin', () => {
  it.each<readonly [Values, Partial<Patient>, number, number | null]>([
    [{ ferritin: 60, crp: 9 }, {}, 70, 500],
    [{ ferritin: 60, crp: 1 }, {}, 30, 200],
    [{ ferritin: 60, crp: 1 }, late, 30, null],
    [{ ferritin: 60, crp: 1 }, { ageMonths: 100 }, 20, null],
  ])('%o of %o is laid beside %s to %s', (values, patient, low, high) => {
    expect(graded(values, 'ferritin', patient).comparedWith).toMatchObject({ low, high });
  });

  it.each<readonly [Values, string]>([
    [{ ferritin: 69, crp: 9 }, 'low'],
    [{ ferritin: 99, crp: 9, haemoglobin: 120 }, 'low'],
    [{ ferritin: 44, crp: 1, haemoglobin: 120 }, 'low'],
    [{ ferritin: 99, haemoglobin: 120 }, 'not-measured'],
    [{ ferritin: 29, crp: 1 }, 'low'],
    [{ ferritin: { value: 150, comparator: '>' }, crp: 1 }, 'not-measured'],
  ])('%o is %s', (values, level) => {
    expect(graded(values, 'ferritin').level).toBe(level);
  });

  it('under 15 is certain deficiency, under 30 early', () => {
    const main = (ferritin: number) =>
      read({ haemoglobin: 145, ferritin, 'transferrin-saturation': 30, crp: 1 }).pattern.main;
    expect([main(14.9), main(15), main(29.9)]).toEqual([
      'iron-deficiency-without-anaemia',
      'early-low-intake',
      'early-low-intake',
    ]);
  });
});

describe('a result', () => {
  it('of CRP is read by the guideline, whatever the laboratory prints', () => {
    expect(graded({ crp: { value: 6, high: 10 } }, 'crp')).toMatchObject({
      position: 'in-range',
      level: 'high',
    });
  });

  it('that is doubtful has no level, and keeps its question', () => {
    expect(graded({ mch: { value: 20, doubt: 'value' } }, 'mch')).toMatchObject({
      position: null,
      level: 'not-measured',
      doubt: { kind: 'value', question: 'is it right?' },
    });
  });

  it('names the laboratory as the source of its own interval', () => {
    expect(
      graded({ ferritin: { value: 50, low: 20, high: 500 } }, 'ferritin').comparedWith,
    ).toEqual({
      by: 'laboratory',
      low: 20,
      high: 500,
      source: "the laboratory's own interval",
      rule: null,
      highRule: null,
      position: 'in-range',
    });
  });

  it('stands in the order of the letter, the computed one among the printed ones', () => {
    const values = { ferritin: 60, tibc: 60, haemoglobin: 145, 'serum-iron': 20, crp: 1 };
    expect(read(values).results.map(({ analyte }) => analyte)).toEqual([
      'haemoglobin',
      'ferritin',
      'transferrin-saturation',
      'serum-iron',
      'tibc',
      'crp',
    ]);
  });

  it('of MCV has no yardstick for a child whose age is not known', () => {
    expect(graded({ mcv: 85 }, 'mcv', { ageMonths: null })).toMatchObject({
      position: null,
      level: 'not-measured',
    });
  });
});

describe('an interval', () => {
  it.each([
    [null, null, false],
    [20, null, true],
    [null, 5, true],
    [null, 0, true],
    [20, 500, true],
    [0, 0, false],
    [30, 30, false],
    [400, 30, false],
  ])('from %s to %s can be used: %s', (low, high, expected) => {
    expect(usable({ low, high }) !== null).toBe(expected);
  });

  it('from zero has nothing under it, whatever the comparator', () => {
    for (const comparator of [null, '<', '<=', '>', '>='] as const)
      expect(below({ value: 0, unit: 'mg/L', comparator }, 0)).toBe('no');
    expect(above({ value: 5, unit: 'mg/L', comparator: '<' }, 5)).toBe('no');
  });

  it('and inflammation: CRP 5 is usual, unknown where it is missing', () => {
    const inflammation = (values: Values) => {
      const { patient, context, panel } = reportOf(values);
      return groupsFor(patient).map(
        (one) => asPerson(one, patient, context, panel.results).inflammation,
      );
    };
    expect([inflammation({ crp: 5 }), inflammation({ crp: 5.1 }), inflammation({})]).toEqual([
      ['usual'],
      ['raised'],
      ['not-measured'],
    ]);
  });
});
