// Faults of a file: each gives its problem, with a place, and no other.
import { describe, expect, it } from 'vitest';
import type { WrittenPatient, WrittenReport } from '../../src/intake/written.js';
import { sayProblem } from '../../src/problem.js';
import { codesOf, notesOf, problemsOf, reportOf, somebody, written } from './written.js';

const one = [written()];
const patient = (over: Partial<WrittenPatient>) =>
  reportOf(one, { patient: { ...somebody, ...over } });
const context = (over: Partial<WrittenReport['context']>) =>
  reportOf(one, { context: { ...reportOf(one).context, ...over } });
const collected = (date: string | null) =>
  reportOf(one, { panel: { collected: date, results: one } });
const interval = (low: string | null, high: string | null, text: string | null = null) =>
  reportOf([written({ interval: { low, high, text } })]);

const cases: readonly (readonly [string, WrittenReport, readonly string[]])[] = [
  ['no unit', reportOf([written({ unit: null })]), ['unit-missing']],
  ['a blank unit', reportOf([written({ unit: ' ' })]), ['unit-missing']],
  ['a unit of another analyte', reportOf([written({ unit: 'fL' })]), ['unit-not-accepted']],
  ['a unit nobody knows', reportOf([written({ unit: 'furlongs' })]), ['unit-not-accepted']],
  [
    'giga in place of grams',
    reportOf([written({ analyte: 'transferrin', value: '2.5', unit: 'G/L' })]),
    ['unit-not-accepted'],
  ],
  ['a letter in the digits', reportOf([written({ value: '3O' })]), ['value-unread']],
  ['no value', reportOf([written({ value: '' })]), ['value-missing']],
  ['not a number', reportOf([written({ value: 'NaN' })]), ['value-unread']],
  ['an infinite value', reportOf([written({ value: 'Infinity' })]), ['value-unread']],
  ['an exponent', reportOf([written({ value: '1e3' })]), ['value-unread']],
  ['a negative value', reportOf([written({ value: '-5' })]), ['value-unread']],
  ['two points', reportOf([written({ value: '1.2.3' })]), ['value-unread']],
  ['a comma that may part thousands', reportOf([written({ value: '1,346' })]), ['value-ambiguous']],
  ['digits of another script', reportOf([written({ value: '٣٠' })]), ['value-unread']],
  ['a value of forty digits', reportOf([written({ value: '1'.repeat(40) })]), ['value-too-long']],
  ['a comparator nobody knows', reportOf([written({ comparator: '~' })]), ['comparator-unread']],
  [
    'two comparators that disagree',
    reportOf([written({ value: '<5', comparator: '>' })]),
    ['comparator-contradiction'],
  ],
  ['a status in no standard', reportOf([written({ status: 'perhaps' })]), ['status-unknown']],
  [
    'an impossible value',
    reportOf([written({ analyte: 'haemoglobin', value: '13.2', unit: 'g/L' })]),
    ['value-impossible'],
  ],
  ['two values for one test', reportOf([written(), written({ value: '61' })]), ['two-values']],
  [
    'two corrected values for one test',
    reportOf([written({ status: 'corrected' }), written({ value: '61', status: 'corrected' })]),
    ['two-values'],
  ],
  ['an interval from zero to zero', interval('0', '0'), ['interval-zero']],
  ['an interval from zero to zero as text', interval(null, null, '0 - 0'), ['interval-zero']],
  ['an interval upside down', interval('400', '30'), ['interval-reversed']],
  ['an interval of one point', interval('30', '30'), ['interval-reversed']],
  [
    'an interval printed twice, differently',
    interval('30', '400', '15 - 400'),
    ['interval-contradiction'],
  ],
  ['no results at all', reportOf([]), ['no-results']],
  [
    'only results that were withdrawn',
    reportOf([written({ status: 'cancelled' })]),
    ['no-results'],
  ],
  ['no date', collected(null), ['date-missing']],
  ['a date in the future', collected('2026-03-02'), ['date-in-future']],
  ['a day that no calendar has', collected('2026-02-29'), ['date-unread']],
  ['a date of two meanings', collected('03/04/2025'), ['date-unread']],
  ['no sex', patient({ sex: null }), ['sex-missing']],
  ['a word that is no sex', patient({ sex: 'Q' }), ['sex-unknown-word']],
  [
    'a birth after the sample',
    patient({ birthDate: '2026-02-21', ageYears: null }),
    ['born-after-sample'],
  ],
  [
    'a birth on an impossible day',
    patient({ birthDate: '1990-13-01', ageYears: null }),
    ['birth-date-unread'],
  ],
  [
    'a birth date and an age that disagree',
    patient({ birthDate: '1990-05-02', ageYears: 60 }),
    ['age-contradiction'],
  ],
  [
    'years and months that disagree',
    patient({ ageYears: 3, ageMonths: 60 }),
    ['age-contradiction'],
  ],
  ['an age below zero', patient({ ageYears: -1 }), ['age-unread']],
  ['an age of 0 without months', patient({ ageYears: 0 }), ['age-in-months-needed']],
  ['an age of 130', patient({ ageYears: 130 }), ['too-old']],
  ['a child of 5 months', patient({ ageYears: null, ageMonths: 5 }), ['too-young']],
  [
    'a pregnant man',
    patient({ sex: 'male', pregnancy: { weeks: 20, trimester: null } }),
    ['pregnant-male'],
  ],
  [
    'a pregnancy at 80',
    patient({ ageYears: 80, pregnancy: { weeks: 20, trimester: null } }),
    ['age-and-facts-contradict'],
  ],
  [
    'a pregnancy at 5',
    patient({ ageYears: 5, pregnancy: { weeks: null, trimester: null } }),
    ['age-and-facts-contradict'],
  ],
  [
    'a pregnancy of 60 weeks',
    patient({ pregnancy: { weeks: 60, trimester: null } }),
    ['out-of-span'],
  ],
  [
    'a fourth trimester',
    patient({ pregnancy: { weeks: null, trimester: 4 } }),
    ['trimester-unknown'],
  ],
  [
    'week 10 in trimester 3',
    patient({ pregnancy: { weeks: 10, trimester: 3 } }),
    ['pregnancy-contradiction'],
  ],
  ['a birth given by a man', patient({ sex: 'male', afterBirthWeeks: 3 }), ['birth-by-male']],
  [
    'a birth within the present pregnancy',
    patient({ afterBirthWeeks: 5, pregnancy: { weeks: 20, trimester: null } }),
    ['birth-during-pregnancy'],
  ],
  ['periods in a man', patient({ sex: 'male', menstruating: true }), ['periods-in-male']],
  ['a home on no mountain', patient({ altitudeMetres: 30000 }), ['out-of-span']],
  ['cigarettes below zero', patient({ cigarettesPerDay: -1 }), ['out-of-span']],
  ['a condition nobody listed', patient({ conditions: ['the vapours'] }), ['word-unknown']],
  ['a name without end', patient({ name: 'a'.repeat(101) }), ['text-too-long']],
  ['a symptom nobody listed', context({ symptoms: ['ennui'] }), ['word-unknown']],
  ['a clock that strikes 25', context({ sampleTime: '25:00' }), ['time-unread']],
  [
    'an iron tablet taken after the sample',
    context({ ironTabletHoursBefore: -2 }),
    ['out-of-span'],
  ],
  [
    'no bleeding beside a bleed',
    context({ bleeding: ['none', 'nosebleeds'] }),
    ['bleeding-contradiction'],
  ],
  [
    'an earlier panel after the sample',
    reportOf(one, { previous: [{ collected: '2026-02-25', results: one }] }),
    ['previous-after-sample'],
  ],
  [
    'an earlier panel without a date',
    reportOf(one, { previous: [{ collected: null, results: one }] }),
    ['date-missing'],
  ],
];

describe('bad input', () => {
  it.each(cases)('%s is one problem', (_, report, expected) => {
    expect(codesOf(report)).toEqual(expected);
  });

  it('collects every problem of a report, each with its place', () => {
    const results = [written({ value: '3O', unit: null })];
    const report = reportOf(results, {
      patient: { ...somebody, sex: null },
      panel: { collected: null, results },
    });
    const found = problemsOf(report).map(({ code, place }) => `${place.field}: ${code}`);
    expect(found).toEqual([
      'collected: date-missing',
      'ferritin: value-unread',
      'ferritin: unit-missing',
      'patient.sex: sex-missing',
    ]);
  });

  it('says the accepted units in one sentence with file, row and field', () => {
    const [problem] = problemsOf(reportOf([written({ analyte: 'crp', value: '4', unit: 'g/dL' })]));
    expect(problem === undefined ? '' : sayProblem(problem)).toBe(
      'sheet.csv, row 2, crp: cannot use this unit for crp (found "g/dL"); expected one of mg/L, mg/dL, ug/mL, nmol/L.',
    );
  });

  it('shows the beginning of a value without end', () => {
    const [problem] = problemsOf(reportOf([written({ value: '7'.repeat(100_000) })]));
    expect(problem?.found).toHaveLength(80);
  });

  it('names the spelling when only letter case differs', () => {
    const [problem] = problemsOf(
      reportOf([written({ analyte: 'transferrin', value: '2.5', unit: 'G/L' })]),
    );
    expect(problem?.remedy).toBe('If the report means g/L, write it so.');
  });

  it('keeps names and birth dates out of every problem', () => {
    const person = {
      ...somebody,
      name: `Amina ${'x'.repeat(120)}`,
      birthDate: '2026-02-21',
      sex: 'Q',
    };
    const text = JSON.stringify(problemsOf(reportOf(one, { patient: person })));
    expect(text).not.toContain('Amina');
    expect(text).not.toContain('2026-02-21');
  });
});

describe('what is no problem', () => {
  it.each([
    ['the same value twice', reportOf([written(), written()]), ['result-repeated']],
    [
      'the same value in two units',
      reportOf([written(), written({ unit: 'ng/mL' })]),
      ['result-repeated'],
    ],
    [
      'a value and its correction',
      reportOf([written(), written({ value: '61', status: 'corrected' })]),
      ['result-repeated'],
    ],
    [
      'a preliminary value and the final one',
      reportOf([written({ status: 'preliminary' }), written({ value: '61', status: 'final' })]),
      ['result-repeated'],
    ],
    [
      'a value withdrawn beside one that stands',
      reportOf([written(), written({ value: '61', status: 'entered-in-error' })]),
      ['result-withdrawn'],
    ],
    [
      'an interval in words',
      reportOf([written({ interval: { low: null, high: null, text: 'see note' } })]),
      ['interval-unread'],
    ],
    ['a flag nobody knows', reportOf([written({ labFlag: 'ZZ' })]), ['flag-unread']],
    ['a sample of today', collected('2026-03-01'), []],
    ['a leap day', collected('2024-02-29'), []],
    ['a child of 6 months', patient({ ageYears: null, ageMonths: 6 }), []],
    [
      'a pregnancy long after a birth',
      patient({ afterBirthWeeks: 60, pregnancy: { weeks: 20, trimester: null } }),
      [],
    ],
  ] as const)('%s', (_, report, notes) => {
    expect(codesOf(report)).toEqual([]);
    expect(notesOf(report)).toEqual(notes);
  });
});

describe('spans a person is believed in', () => {
  const codes = (report: WrittenReport) => codesOf(report);
  const pregnantFor = (weeks: number) => patient({ pregnancy: { weeks, trimester: null } });
  it.each([
    // Ends of the rows in src/knowledge/spans.json, which are proposals.
    ['weeks of pregnancy', 0, 45, 1, pregnantFor],
    ['weeks after a birth', 0, 104, 1, (afterBirthWeeks: number) => patient({ afterBirthWeeks })],
    ['metres of altitude', -450, 6000, 1, (altitudeMetres: number) => patient({ altitudeMetres })],
    ['cigarettes a day', 0, 200, 1, (cigarettesPerDay: number) => patient({ cigarettesPerDay })],
    [
      'hours since a tablet',
      0,
      8784,
      1,
      (ironTabletHoursBefore: number) => context({ ironTabletHoursBefore }),
    ],
    [
      'days since an injection',
      0,
      3660,
      1,
      (ironInjectionDaysBefore: number) => context({ ironInjectionDaysBefore }),
    ],
    [
      'days since a transfusion',
      0,
      3660,
      1,
      (transfusionDaysBefore: number) => context({ transfusionDaysBefore }),
    ],
    [
      'years of age with periods',
      7,
      65,
      1,
      (ageYears: number) => patient({ ageYears, menstruating: true }),
    ],
    [
      'years of age after a birth',
      10,
      60,
      1,
      (ageYears: number) => patient({ ageYears, afterBirthWeeks: 3 }),
    ],
    ['months of age', 6, 1440, 1, (ageMonths: number) => patient({ ageYears: null, ageMonths })],
  ] as const)('%s from %d to %d', (_, low, high, step, report) => {
    expect(codes(report(low - step))).toHaveLength(1);
    expect(codes(report(low))).toEqual([]);
    expect(codes(report(low + step))).toEqual([]);
    expect(codes(report(high - step))).toEqual([]);
    expect(codes(report(high))).toEqual([]);
    expect(codes(report(high + step))).toHaveLength(1);
  });

  it('refuses a number that is none', () => {
    expect(codes(patient({ altitudeMetres: Number.NaN }))).toEqual(['out-of-span']);
    expect(codes(patient({ ageYears: Number.NaN }))).toEqual(['age-unread']);
    expect(codes(pregnantFor(Number.POSITIVE_INFINITY))).toEqual(['out-of-span']);
  });
});
