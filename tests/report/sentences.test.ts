// What the operator reads: every fault in one sentence with its place, what was found, what would be right.
import { describe, expect, it } from 'vitest';
import type { WrittenPanel, WrittenPatient, WrittenReport } from '../../src/intake/written.js';
import type { WrittenResult } from '../../src/intake/written.js';
import { sayProblem } from '../../src/problem.js';
import { checkReport } from '../../src/report/index.js';
import { nothingElse, problemsOf, reportOf, somebody, today, written } from './written.js';

const one = [written()];
const result = (over: Partial<WrittenResult>) => reportOf([written(over)]);
const patient = (over: Partial<WrittenPatient>) =>
  reportOf(one, { patient: { ...somebody, ...over } });
const context = (over: Partial<WrittenReport['context']>) =>
  reportOf(one, { context: { ...nothingElse, ...over } });
const interval = (low: string | null, high: string | null, text: string | null = null) =>
  result({ interval: { low, high, text } });
const collected = (date: string | null) =>
  reportOf(one, { panel: { collected: date, results: one } });
const previous = (...panels: readonly WrittenPanel[]) => reportOf(one, { previous: panels });
const pregnant = (weeks: number | null, trimester: number | null) => ({
  pregnancy: { weeks, trimester },
});

const ferritin = 'sheet.csv, row 2, ferritin: ';
const number = `${ferritin}cannot read the value of ferritin as a number`;
const units = 'expected one of ug/L, ng/mL, pmol/L, ng/dL, ug/dL, mg/L, ug/mL, mg/mL.';

const results: readonly (readonly [WrittenReport, string])[] = [
  [
    result({ unit: null }),
    `${ferritin}no unit for ferritin; ${units}\n  A unit is never guessed: copy it from the report.`,
  ],
  [
    result({ unit: 'furlongs' }),
    `${ferritin}cannot use this unit for ferritin (found "furlongs"); ${units}`,
  ],
  [
    result({ analyte: 'transferrin', value: '2.5', unit: ' G/L ' }),
    'sheet.csv, row 2, transferrin: cannot use this unit for transferrin (found " G/L "); expected one of g/L, mg/dL, g/dL, mg/L, umol/L.\n  If the report means g/L, write it so.',
  ],
  [result({ value: ' ' }), `${number}; expected digits such as 30.`],
  [result({ value: '3O' }), `${number} (found "3O"); expected digits such as 30 or 12.5.`],
  [result({ value: '1,346' }), `${number} (found "1,346"); expected 1346 or 1.346.`],
  [
    result({ value: '1234567890123' }),
    `${number} (found "1234567890123"); expected at most 12 characters.`,
  ],
  [result({ value: '<>5' }), `${number} (found "<>5"); expected one of < <= > >=.`],
  [
    result({ comparator: '~' }),
    `${ferritin}cannot read the comparator (found "~"); expected one of < <= > >=.`,
  ],
  [
    result({ value: '<5', comparator: '>' }),
    `${ferritin}cannot use two different comparators (found "> and <").`,
  ],
  [
    result({ status: 'perhaps' }),
    `${ferritin}cannot read the status (found "perhaps"); expected final, preliminary, corrected, cancelled or entered-in-error.`,
  ],
  [
    result({ analyte: 'haemoglobin', value: ' 13.2 ', unit: 'g/L' }),
    'sheet.csv, row 2, haemoglobin: haemoglobin of 13.2 g/L is not possible.\n  13.2 g/dL would be 132 g/L. Check the report.',
  ],
  [
    reportOf([written(), written(), written({ value: '61' })]),
    `${ferritin}two values for ferritin on one date (found "60 ug/L and 61 ug/L"); expected one value, or one marked corrected.`,
  ],
  [
    reportOf([written(), written({ comparator: '<' })]),
    `${ferritin}two values for ferritin on one date (found "60 ug/L and <60 ug/L"); expected one value, or one marked corrected.`,
  ],
  [reportOf([]), 'no result to tell; expected at least one iron result.'],
];

const intervals: readonly (readonly [WrittenReport, string])[] = [
  [
    interval('0', '0'),
    `${ferritin}cannot compare with an interval from zero to zero (found "0–0"); expected the limits printed on the report, or none.`,
  ],
  ...[
    ['5', '0'],
    ['400', '30'],
  ].map(
    ([low = null, high = null]) =>
      [
        interval(low, high),
        `${ferritin}cannot use an interval whose low end is not below its high end (found "${low}–${high}"); expected the lower limit first.`,
      ] as const,
  ),
  ...['30 - 500', '15 - 400'].map(
    (text) =>
      [
        interval('30', '400', text),
        `${ferritin}cannot use an interval whose ends and printed text disagree (found "${text}"); expected the same limits in both.`,
      ] as const,
  ),
];

const dates: readonly (readonly [WrittenReport, string])[] = [
  [collected(null), 'collected: no date of the sample; expected a date such as 2024-02-29.'],
  [collected(' '), 'collected: no date of the sample; expected a date such as 2024-02-29.'],
  [
    collected('2026-03-02'),
    'collected: the sample is dated in the future (found "2026-03-02"); expected a date up to 2026-03-01.',
  ],
  [
    collected('03/04/2025'),
    'collected: cannot read the date of the sample (found "03/04/2025"); expected a date such as 2024-02-29.',
  ],
  [
    previous({ collected: '2026-02-25', results: one }),
    'previous[0].collected: an earlier panel is dated after the sample (found "2026-02-25"); expected a date up to 2026-02-20.',
  ],
  [
    previous(
      { collected: '2025-01-01', results: one },
      { collected: null, results: one },
      { collected: '2024-01-01', results: one },
    ),
    'previous[1].collected: no date of the sample; expected a date such as 2024-02-29.',
  ],
];

const people: readonly (readonly [WrittenReport, string])[] = [
  ...[null, ' '].map(
    (sex) =>
      [
        patient({ sex }),
        "patient.sex: no sex; expected female, male or unknown.\n  Write 'unknown' when it is not known; both readings are then compared.",
      ] as const,
  ),
  [patient({ sex: 'Q' }), 'patient.sex: cannot read the sex; expected female, male or unknown.'],
  [
    patient({ birthDate: '2026-02-21', ageYears: null }),
    'patient.birthDate: the sample is dated before the birth.',
  ],
  [
    patient({ birthDate: '1990-13-01', ageYears: null }),
    'patient.birthDate: cannot read the birth date; expected a date such as 1990-05-02.',
  ],
  [
    patient({ birthDate: '1990-05-02', ageYears: 60 }),
    'patient: the birth date and the age contradict each other; expected one age, on the day of the sample.',
  ],
  [
    patient({ ageYears: 3, ageMonths: 60 }),
    'patient: the age in years and in months contradict each other; expected one age, on the day of the sample.',
  ],
  [patient({ ageYears: -1 }), 'patient.ageYears: cannot read the age; expected a number from 0.'],
  [
    patient({ ageYears: null, ageMonths: -1 }),
    'patient.ageMonths: cannot read the age; expected a number from 0.',
  ],
  [
    patient({ ageYears: 0 }),
    'patient.ageYears: age 0 is not enough; expected the age in months, or a birth date.',
  ],
  [patient({ ageYears: 130 }), 'patient: cannot believe the age; expected at most 120 years.'],
  [
    patient({ ageYears: null, ageMonths: 5 }),
    'patient: no letter is made for a child under 6 months.\n  The limits used here begin at that age; a clinician reads these results.',
  ],
  [
    patient({ sex: 'male', ...pregnant(20, null) }),
    'patient.pregnancy: a male patient is said to be pregnant.',
  ],
  [
    patient({ ageYears: 80, ...pregnant(20, null) }),
    'patient.pregnancy: the age contradicts pregnancy; expected 10 to 60 years.',
  ],
  [
    patient(pregnant(60, null)),
    'patient.pregnancy: cannot take pregnancy weeks at its word (found "60"); expected 0 to 45 wk.',
  ],
  [
    patient(pregnant(null, 4)),
    'patient.pregnancy: cannot use this trimester (found "4"); expected 1, 2 or 3.',
  ],
  [
    patient(pregnant(null, 1.2345678901234567e100)),
    'patient.pregnancy: cannot use this trimester (found "1.2345678901234567e+"); expected 1, 2 or 3.',
  ],
  [
    patient(pregnant(10, 3)),
    'patient.pregnancy: the week and the trimester contradict each other (found "week 10 and trimester 3"); expected trimester 1 for that week.',
  ],
  [
    patient({ sex: 'male', afterBirthWeeks: 3 }),
    'patient.afterBirthWeeks: a male patient is said to have given birth.',
  ],
  [
    patient({ ageYears: 5, afterBirthWeeks: 3 }),
    'patient.afterBirthWeeks: the age contradicts a birth; expected 10 to 60 years.',
  ],
  [
    patient({ afterBirthWeeks: 5, ...pregnant(20, null) }),
    'patient.afterBirthWeeks: the last birth lies within the present pregnancy (found "5 weeks after birth, 20 weeks pregnant"); expected one of the two.',
  ],
  [
    patient({ sex: 'male', menstruating: true }),
    'patient.menstruating: a male patient is said to have periods.',
  ],
  [
    patient({ ageYears: 5, menstruating: true }),
    'patient.menstruating: the age contradicts periods; expected 7 to 65 years.',
  ],
  [
    patient({ altitudeMetres: 30000 }),
    'patient.altitudeMetres: cannot take altitude metres at its word (found "30000"); expected -450 to 6000 m.',
  ],
  [
    patient({ altitudeMetres: 1.2345678901234567e100 }),
    'patient.altitudeMetres: cannot take altitude metres at its word (found "1.2345678901234567e+"); expected -450 to 6000 m.',
  ],
  [
    patient({ cigarettesPerDay: -1 }),
    'patient.cigarettesPerDay: cannot take cigarettes per day at its word (found "-1"); expected 0 to 200 {cigarettes}/d.',
  ],
  [
    patient({ name: 'a'.repeat(101) }),
    'patient.name: the text is too long; expected at most 100 characters.',
  ],
  [
    patient({ id: 'a'.repeat(65) }),
    'patient.id: the text is too long; expected at most 64 characters.',
  ],
];

const diet = { avoids: [], lowCost: false, fastingMonth: false, cuisines: [] } as const;
const words: readonly (readonly [WrittenReport, RegExp])[] = [
  [
    patient({ conditions: ['the vapours'] }),
    /^patient.conditions: cannot use this word \(found "the vapours"\); expected one of kidney-disease, kidney-disease-dialysis, /,
  ],
  [
    patient({ medicines: ['leeches'] }),
    /^patient.medicines: cannot use this word \(found "leeches"\); expected one of iron-tablets, /,
  ],
  [
    patient({ diet: { ...diet, pattern: 'air' } }),
    /^patient.diet.pattern: cannot use this word \(found "air"\)/,
  ],
  [
    patient({ diet: { ...diet, pattern: null, avoids: ['Chalk'] } }),
    /^patient.diet.avoids: cannot use this word \(found "Chalk"\)/,
  ],
  [
    context({ symptoms: ['ennui'] }),
    /^context.symptoms: cannot use this word \(found "ennui"\); expected one of tiredness, /,
  ],
  [
    context({ bleeding: ['tears'] }),
    /^context.bleeding: cannot use this word \(found "tears"\); expected one of none, heavy-periods, /,
  ],
];

const samples: readonly (readonly [WrittenReport, string])[] = [
  ...['25:00', '108:40', '08:401'].map(
    (sampleTime) =>
      [
        context({ sampleTime }),
        `context.sampleTime: cannot read the time of the sample (found "${sampleTime}"); expected hours and minutes such as 08:40.`,
      ] as const,
  ),
  [
    context({ ironTabletHoursBefore: -2 }),
    'context.ironTabletHoursBefore: cannot take hours before sample at its word (found "-2"); expected 0 to 8784 h.',
  ],
  [
    context({ ironInjectionDaysBefore: -2 }),
    'context.ironInjectionDaysBefore: cannot take days before sample at its word (found "-2"); expected 0 to 3660 d.',
  ],
  [
    context({ transfusionDaysBefore: -2 }),
    'context.transfusionDaysBefore: cannot take days before sample at its word (found "-2"); expected 0 to 3660 d.',
  ],
  [
    context({ bleeding: ['none', 'nosebleeds'] }),
    'context.bleeding: bleeding contradicts itself (found "none, nosebleeds"); expected none alone, or the bleeding.',
  ],
];

describe('a fault', () => {
  it.each([...results, ...intervals, ...dates, ...people, ...samples])('%#: %s', (report, said) => {
    expect(problemsOf(report).map(sayProblem)).toEqual([said]);
  });

  it.each(words)('of words %#: %s', (report, said) => {
    const [first = '', ...others] = problemsOf(report).map(sayProblem);
    expect(first).toMatch(said);
    expect(others).toEqual([]);
  });

  it('of ours is thrown', () => {
    expect(() => checkReport(reportOf(one), '1 March')).toThrow('today must be an ISO date');
  });
});

const notes: readonly (readonly [WrittenReport, string])[] = [
  [
    reportOf([
      written(),
      written({ analyte: 'mcv', unit: 'fL', value: '90', status: 'cancelled' }),
    ]),
    'sheet.csv, row 2, mcv: left out mcv, withdrawn by the laboratory.',
  ],
  [
    result({ labFlag: 'ZZ' }),
    `${ferritin}took an unknown laboratory flag as abnormal (found "ZZ").`,
  ],
  [
    interval(null, null, 'see note'),
    `${ferritin}cannot compare with the printed interval (found "see note"); expected an interval such as 30 - 400 or < 5.\n  It is copied into the letter as printed; guideline limits are used alone.`,
  ],
  [
    reportOf([written(), written()]),
    `${ferritin}took one of 2 values for ferritin (found "60 ug/L").`,
  ],
  [
    previous(
      ...Array.from({ length: 7 }, (_, at) => ({ collected: `${2018 + at}-01-01`, results: one })),
    ),
    'kept the 6 latest earlier panels (found "7 earlier panels").',
  ],
  ...[['x'.repeat(501)], Array.from({ length: 51 }, () => 'x')].map(
    (long) =>
      [
        context({ notes: long }),
        'context.notes: cut the notes of the laboratory short; expected at most 50 notes of 500 characters.',
      ] as const,
  ),
];

describe('a note', () => {
  const notesOf = (report: WrittenReport) => {
    const checked = checkReport(report, today);
    return checked.ok ? checked.notes : null;
  };

  it.each(notes)('%#: %s', (report, said) => {
    expect(notesOf(report)?.map(sayProblem)).toEqual([said]);
  });

  it.each([
    ['one result', reportOf(one)],
    ['a blank interval', interval(null, ' ', '  ')],
    ['an interval printed twice alike', interval('30', '400', '30 - 400')],
    ['fifty notes of five hundred characters', context({ notes: Array(50).fill('x'.repeat(500)) })],
    ['a blank comparator', result({ comparator: ' ' })],
    ['a blank time', context({ sampleTime: ' ' })],
    ['a time with spaces around it', context({ sampleTime: ' 08:40 ' })],
    ['a diet without a pattern', patient({ diet: { ...diet, pattern: ' ' } })],
    [
      'a birth as long ago as the pregnancy',
      patient({ afterBirthWeeks: 20, ...pregnant(20, null) }),
    ],
    [
      'a birth fourteen weeks before trimester 2',
      patient({ afterBirthWeeks: 14, ...pregnant(null, 2) }),
    ],
    [
      'a birth beside a pregnancy of no known length',
      patient({ afterBirthWeeks: 3, ...pregnant(null, null) }),
    ],
    ['a birth at the start of trimester 1', patient({ afterBirthWeeks: 0, ...pregnant(null, 1) })],
    ['a pregnancy at an age not told', patient({ ageYears: null, ...pregnant(20, null) })],
    [
      'a birth date and an age of the last birthday',
      patient({ birthDate: '1992-02-20', ageYears: 33 }),
    ],
  ])('is not written of %s', (_, report) => {
    expect(problemsOf(report)).toEqual([]);
    expect(notesOf(report)).toEqual([]);
  });

  it.each([
    [
      'a birth thirteen weeks before trimester 2',
      patient({ afterBirthWeeks: 13, ...pregnant(null, 2) }),
      ['birth-during-pregnancy'],
    ],
    [
      'a birth out of span beside a pregnancy',
      patient({ afterBirthWeeks: 200, ...pregnant(20, null) }),
      ['out-of-span'],
    ],
  ])('nor twice of %s', (_, report, codes) => {
    expect(problemsOf(report).map(({ code }) => code)).toEqual(codes);
  });
});

describe('an age', () => {
  const codesOf = (over: Partial<WrittenPatient>) =>
    problemsOf(patient(over)).map(({ code }) => code);

  // Worked out by hand for the sample of 20 February 2026: a year either way of 34 completed years.
  it.each([
    ['1993-02-20', []],
    ['1993-02-21', ['age-contradiction']],
    ['1990-02-21', []],
    ['1990-02-20', ['age-contradiction']],
    [' ', []],
  ])('of 34 beside a birth on %s: %o', (birthDate, codes) => {
    expect(codesOf({ birthDate })).toEqual(codes);
  });

  it.each([
    [35, ['age-contradiction']],
    [36, []],
    [47, []],
    [48, ['age-contradiction']],
  ])('of 3 years beside %i months: %o', (ageMonths, codes) => {
    expect(codesOf({ ageYears: 3, ageMonths })).toEqual(codes);
  });

  it('of a child born on the day of the sample is too young, of no sample is not known', () => {
    expect(codesOf({ birthDate: '2026-02-20', ageYears: null })).toEqual(['too-young']);
    const undated = reportOf(one, {
      patient: { ...somebody, birthDate: '1990-05-02', ageYears: null },
      panel: { collected: null, results: one },
    });
    expect(problemsOf(undated).map(({ code }) => code)).toEqual(['date-missing']);
  });
});

describe('what is kept', () => {
  it('of notes is fifty of five hundred characters, blank ones left out', () => {
    const read = (long: readonly string[]) => {
      const checked = checkReport(context({ notes: long }), today);
      return checked.ok ? checked.value.context.notes : null;
    };
    expect(read([' ', 'haemolysed'])).toEqual(['haemolysed']);
    expect(read(['𐐀'.repeat(501)])).toEqual(['𐐀'.repeat(500)]);
    expect(read(Array.from({ length: 51 }, (_, at) => `${at}`))).toHaveLength(50);
  });

  it('of the person is trimmed and in bounds', () => {
    const cuisines = Array.from({ length: 21 }, (_, at) => `${at}`.padEnd(65, 'x'));
    const checked = checkReport(
      reportOf(one, {
        patient: { ...somebody, menstruating: true, diet: { ...diet, pattern: ' ', cuisines } },
        context: { ...nothingElse, sampleTime: ' 08:40 ' },
      }),
      today,
    );
    const kept = checked.ok ? checked.value : null;
    expect(kept?.patient.menstruating).toBe(true);
    expect(kept?.patient.diet?.pattern).toBeNull();
    expect(kept?.patient.diet?.cuisines).toHaveLength(20);
    expect(kept?.patient.diet?.cuisines[0]).toHaveLength(64);
    expect(kept?.context.sampleTime).toBe('08:40');
  });
});
