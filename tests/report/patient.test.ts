// The person: months of age, trimester, closed words, and text that cannot steer a page.
import { describe, expect, it } from 'vitest';
import type { WrittenPatient } from '../../src/intake/written.js';
import { cleanText, monthsBetween, readDate, trimesterOf } from '../../src/report/index.js';
import { measured, nothingElse, reportOf, somebody, written } from './written.js';

const person = (over: Partial<WrittenPatient>) =>
  measured(reportOf([written()], { patient: { ...somebody, ...over } })).patient;

describe('age at the sample of 20 February 2026', () => {
  it.each([
    // Calendar arithmetic, worked out by hand.
    [{ birthDate: '1992-02-20', ageYears: null }, 408],
    [{ birthDate: '1992-02-21', ageYears: null }, 407],
    [{ birthDate: '1992-02-19', ageYears: 34 }, 408],
    [{ birthDate: '2025-08-20', ageYears: null }, 6],
    [{ ageYears: 34 }, 408],
    [{ ageYears: 0.75 }, 9],
    [{ ageYears: 2, ageMonths: 30 }, 30],
    [{ ageYears: null, ageMonths: 7 }, 7],
    [{ ageYears: null }, null],
  ] as const)('%o is %s months', (over, months) => {
    expect(person(over).ageMonths).toBe(months);
  });
});

describe('dates', () => {
  it.each([
    ['2024-02-29', '2024-02-29'],
    ['2024-02-29T08:30:00+02:00', '2024-02-29'],
    ['2024-02-29 08:30', '2024-02-29'],
    ['20240229', '2024-02-29'],
    ['202402290830', '2024-02-29'],
    ['2023-02-29', null],
    ['1900-02-29', null],
    ['2000-02-29', '2000-02-29'],
    ['2024-00-10', null],
    ['2024-13-10', null],
    ['2024-04-31', null],
    ['2024-4-1', null],
    ['0024-04-01', null],
    ['tomorrow', null],
  ])('%s is read as %s', (text, expected) => {
    expect(readDate(text)).toBe(expected);
  });

  it.each([
    ['2020-01-15', '2021-01-14', 11],
    ['2020-01-15', '2021-01-15', 12],
    ['2020-01-15', '2021-01-16', 12],
    ['2020-01-31', '2020-02-29', 0],
    ['2020-03-01', '2020-02-01', -1],
  ])('from %s to %s are %d months', (from, to, months) => {
    expect(monthsBetween(from, to)).toBe(months);
  });
});

describe('pregnancy', () => {
  it.each([
    // Completed weeks: trimester 1 to week 13, 2 to week 27, 3 from week 28 (Healthwise library, Trimester).
    [0, 1],
    [13, 1],
    [14, 2],
    [27, 2],
    [28, 3],
    [45, 3],
    [46, null],
  ])('week %d is trimester %s', (weeks, trimester) => {
    expect(trimesterOf(weeks)).toBe(trimester);
  });

  it.each([
    [
      { weeks: 15, trimester: null },
      { weeks: 15, trimester: 2 },
    ],
    [
      { weeks: 13.9, trimester: null },
      { weeks: 13, trimester: 1 },
    ],
    [
      { weeks: 30, trimester: 3 },
      { weeks: 30, trimester: 3 },
    ],
    [
      { weeks: null, trimester: 3 },
      { weeks: null, trimester: 3 },
    ],
    [
      { weeks: null, trimester: null },
      { weeks: null, trimester: null },
    ],
  ])('%o is read as %o', (pregnancy, expected) => {
    expect(person({ pregnancy }).pregnancy).toEqual(expected);
  });

  it.each([10, 60])('is believed at %d years', (ageYears) => {
    expect(person({ ageYears, pregnancy: { weeks: 9, trimester: null } }).pregnancy?.weeks).toBe(9);
  });

  it('is believed of a person whose sex is not known', () => {
    expect(person({ sex: 'unknown', pregnancy: { weeks: 9, trimester: null } }).sex).toBe(
      'unknown',
    );
  });
});

describe('words of the file', () => {
  it.each([
    // HL7 table 0001 and FHIR administrative-gender.
    ['F', 'female'],
    ['Female', 'female'],
    ['m', 'male'],
    ['male', 'male'],
    ['U', 'unknown'],
    ['other', 'unknown'],
    ['unknown', 'unknown'],
  ])('sex %s is %s', (sex, expected) => {
    expect(person({ sex }).sex).toBe(expected);
  });

  it('become members of the closed lists, once each', () => {
    const { conditions, medicines } = person({
      conditions: ['Kidney disease', 'kidney-disease', 'GOUT'],
      medicines: ['iron_tablets'],
    });
    expect(conditions).toEqual(['kidney-disease', 'gout']);
    expect(medicines).toEqual(['iron-tablets']);
  });

  it('of the context and the diet are narrowed too', () => {
    const diet = {
      pattern: 'Vegan',
      avoids: ['Nuts'],
      lowCost: true,
      fastingMonth: false,
      cuisines: [' west-african ', ''],
    };
    const report = measured(
      reportOf([written()], {
        patient: { ...somebody, diet, cigarettesPerDay: 'unknown-amount', altitudeMetres: 2400 },
        context: {
          ...nothingElse,
          symptoms: ['Chest pain'],
          bleeding: ['none'],
          sampleTime: '08:40',
          notes: ['Sample\u0000 slightly\nhaemolysed'],
        },
      }),
    );
    expect(report.patient.diet).toEqual({
      ...diet,
      pattern: 'vegan',
      avoids: ['nuts'],
      cuisines: ['west-african'],
    });
    expect(report.patient).toMatchObject({
      cigarettesPerDay: 'unknown-amount',
      altitudeMetres: 2400,
    });
    expect(report.context).toMatchObject({
      symptoms: ['chest-pain'],
      bleeding: ['none'],
      sampleTime: '08:40',
      notes: ['Sample slightly haemolysed'],
    });
  });
});

describe('a name', () => {
  it.each([
    ['  Amina   Diallo ', 'Amina Diallo'],
    ['Amina\u202Eollaid', 'Aminaollaid'],
    ['Amina\u0000\u001B[31m', 'Amina [31m'],
    ['Amina\r\nDiallo', 'Amina Diallo'],
    ['Ami\u200Bna', 'Amina'],
    ['José', 'José'],
    ['Jose\u0301', 'José'],
    // Joiners belong to Persian and Sinhala spelling.
    ['علی\u200Cرضا', 'علی\u200Cرضا'],
    ['<script>', '<script>'],
    ['../../x', '../../x'],
  ])('%j is kept as %j', (name, expected) => {
    expect(person({ name }).name).toBe(expected);
    expect(cleanText(name)).toBe(expected);
  });

  it('of nothing visible is no name', () => {
    expect(person({ name: '\u202E \u200B', id: '' })).toMatchObject({ name: null, id: null });
  });

  it('may have a hundred characters', () => {
    expect(person({ name: '𐐀'.repeat(100) }).name).toHaveLength(200);
  });
});
