// Spellings of laboratories: flags, statuses, sex, numbers, dates, factors. HL7 tables 0001, 0078, 0085 and FHIR's
// observation-status and administrative-gender; words and signs beside them are common practice, no source.
import { describe, expect, it } from 'vitest';
import { monthsBetween, readDate, trimesterOf } from '../../src/report/index.js';
import { convert } from '../../src/report/convert.js';
import { scale } from '../../src/report/decimal.js';
import { readLabFlag, readStanding } from '../../src/report/marks.js';
import { readNumber } from '../../src/report/number.js';
import { judge } from '../../src/report/plausible.js';
import { readSex } from '../../src/report/words.js';
import { only } from './written.js';

describe('a flag', () => {
  it.each([
    ['N', 'N, normal, within range, in range, WNL, n'],
    ['L', 'L, low, LO, ↓, -, below, below low normal, L*, *L, (L)'],
    ['H', 'H, high, HI, ↑, +, above, above high normal, H*, *H'],
    ['LU', 'LU, significantly low'],
    ['HU', 'HU, significantly_high'],
    ['LL', 'LL, critical low, critically low, panic low, ↓↓, --, L!, LL!, CL'],
    ['HH', 'HH, critical high, critically high, panic high, ↑↑, ++, H!, HH!, CH'],
    ['A', 'A, abnormal, *, abn'],
    ['AA', 'AA, critical, crit, panic, critically abnormal, !, !!, **'],
  ])('%s is also written %s', (flag, spellings) => {
    for (const spelling of spellings.split(', '))
      expect([spelling, readLabFlag(spelling)]).toEqual([
        spelling,
        { flag, offScale: null, known: true },
      ]);
  });

  it.each(['U', 'D', 'B', 'W', 'null', 'none', '', ' '])(
    '%j says nothing of this result',
    (written) => {
      expect(readLabFlag(written)).toEqual({ flag: null, offScale: null, known: true });
    },
  );

  it.each([
    ['H~U', 'H', null, true],
    ['U~', null, null, true],
    ['~', null, null, true],
    ['~L', 'L', null, true],
    ['D;;H', 'H', null, true],
    ['L/D', 'L', null, true],
    ['ZZ,L', 'L', null, true],
    ['ZZ', 'A', null, false],
    ['ZZ,<', 'A', '<', false],
    ['<', 'L', '<', true],
    ['>', 'H', '>', true],
    ['H,>', 'H', '>', true],
    ['<,L', 'L', '<', true],
  ] as const)(
    '%s of several parts is %s, off scale %s, known %s',
    (written, flag, offScale, known) => {
      expect(readLabFlag(written)).toEqual({ flag, offScale, known });
    },
  );
});

describe('a status', () => {
  it.each([
    ['final', ', final, F, complete, completed, U, verified, V'],
    ['corrected', 'corrected, amended, appended, C'],
    ['preliminary', 'preliminary, P, partial, S, registered, R, provisional, interim, unknown'],
    [
      'void',
      'entered-in-error, entered  in error, entered_in_error, cancelled, canceled, wrong, W, deleted, D, X',
    ],
  ])('%s is also written %s', (standing, spellings) => {
    for (const spelling of spellings.split(', '))
      expect([spelling, readStanding(` ${spelling} `)]).toEqual([spelling, standing]);
  });

  it('in neither standard is none', () => {
    expect(readStanding('perhaps')).toBeNull();
    expect(readStanding(null)).toBe('final');
  });
});

describe('sex', () => {
  it.each([
    ['female', 'female, F, woman, girl'],
    ['male', 'male, M, man, boy'],
    ['unknown', 'unknown, U, unk, other, O, ambiguous, A, N, X, not applicable, not__applicable'],
  ])('%s is also written %s', (sex, spellings) => {
    for (const spelling of spellings.split(', '))
      expect([spelling, readSex(` ${spelling} `)]).toEqual([spelling, sex]);
  });
});

describe('a number', () => {
  it.each([
    ['12.5', 12.5, null],
    [' 5 ', 5, null],
    ['< 5', 5, '<'],
    ['<=5', 5, '<='],
    ['=<5', 5, '<='],
    ['≤5', 5, '<='],
    ['>5', 5, '>'],
    ['>=5', 5, '>='],
    ['=>5', 5, '>='],
    ['≥5', 5, '>='],
    ['123456789012', 123456789012, null],
    ['1234,567', 1234.567, null],
    ['1,3456', 1.3456, null],
    ['0,123', 0.123, null],
  ])('%s is %d with comparator %s', (written, value, comparator) => {
    expect(readNumber(written)).toEqual({ ok: true, value, comparator });
  });

  it.each([
    ['12 5', 'value-missing'],
    ['x 5', 'value-missing'],
    ['5x', 'value-unread'],
    ['x5', 'value-unread'],
    ['<>5', 'value-unread'],
    ['==5', 'value-unread'],
    ['1,346', 'value-ambiguous'],
    ['12,346', 'value-ambiguous'],
    ['123,456', 'value-ambiguous'],
    ['1234567890123', 'value-too-long'],
  ])('%s is none: %s', (written, code) => {
    expect(readNumber(written)).toMatchObject({ ok: false, code });
  });
});

describe('a date', () => {
  it.each([
    [' 2024-02-29 ', '2024-02-29'],
    [' 20240229 ', '2024-02-29'],
    ['2024-02-29T0830', '2024-02-29'],
    ['2024-02-29T08:30:15.123Z', '2024-02-29'],
    ['20240229083015.123+0200', '2024-02-29'],
    ['2024-02-29T08:3', null],
    ['202402291', null],
    ['x2024-02-29', null],
    ['2024-02-29x', null],
    ['x20240229', null],
    ['20240229x', null],
    ['1850-01-01', '1850-01-01'],
    ['1849-12-31', null],
    ['2024-12-31', '2024-12-31'],
    ['2024-01-00', null],
    ['2024-01-01', '2024-01-01'],
  ])('%s is read as %s', (written, expected) => {
    expect(readDate(written)).toBe(expected);
  });

  it('is so many months from another', () => {
    expect(monthsBetween('2024-05-10', '2024-05-10')).toBe(0);
  });

  it('before the first week is of no trimester', () => {
    expect(trimesterOf(-1)).toBeNull();
  });
});

describe('a factor', () => {
  it.each([
    [12.1, '10', '1', 121],
    [1.5e-10, '1', '1', 1.5e-10],
    [1.5e-7, '1', '1', 1.5e-7],
    [1.5e21, '1', '1', 1.5e21],
    [2.5e22, '0.1', '10', 2.5e20],
    [-2.5, '2', '1', -5],
  ])('on %d: times %s over %s is %d', (value, times, over, expected) => {
    expect(scale(value, times, over)).toBe(expected);
  });

  it.each([
    [1, '1', '0', 'a factor divides by zero'],
    [Number.NaN, '1', '1', 'not a finite decimal number'],
    [1, 'x10', '1', 'not a finite decimal number'],
    [1, '10x', '1', 'not a finite decimal number'],
    [1, '1e5', '1', 'not a finite decimal number'],
  ])('that is none is our fault: %d times %s over %s', (value, times, over, message) => {
    expect(() => scale(value, times, over)).toThrow(message);
  });

  it('of a unit not accepted is our fault', () => {
    expect(() => convert('ferritin', 1, 'fL')).toThrow("no unit 'fL' for ferritin");
  });
});

describe('a printed interval', () => {
  const read = (text: string) =>
    only({ analyte: 'mch', value: '30', unit: 'pg', interval: { low: null, high: null, text } })
      .interval;
  it.each([
    ['27-33pg', { low: 27, high: 33 }],
    [' 27 - 33 ', { low: 27, high: 33 }],
    ['≥27', { low: 27, high: null }],
    ['>=27', { low: 27, high: null }],
    ['< 33', { low: null, high: 33 }],
    ['< 0', { low: null, high: 0 }],
    ['5(27 - 33)', null],
    ['(27 - 33)9', null],
    ['x< 33', null],
    ['< 33 x', null],
    ['27 - 33 x', null],
    ['x 27 - 33', null],
  ])('%s is read as %o', (text, expected) => {
    expect(read(text)).toEqual(expected);
  });

  it.each([
    // A fraction's unit is written 1: the last digit of the interval is no unit.
    ['0.37 - 0.51', { low: 0.37, high: 0.51 }],
    ['0.37-0.51', { low: 0.37, high: 0.51 }],
    ['0.36 - 0.46', { low: 0.36, high: 0.46 }],
    ['0.35 - 0.41', { low: 0.35, high: 0.41 }],
  ])('of haematocrit, %s keeps its last digit', (text, expected) => {
    const interval = { low: null, high: null, text };
    expect(only({ analyte: 'haematocrit', value: '0.45', unit: '1', interval }).interval).toEqual(
      expected,
    );
    expect(only({ analyte: 'haematocrit', value: '0.45', unit: 'L/L', interval }).interval).toEqual(
      expected,
    );
  });
});

describe('a judgement', () => {
  const of = (
    analyte: 'ferritin' | 'serum-iron' | 'haemoglobin' | 'tibc' | 'transferrin-saturation',
    value: number,
    unit: string,
    comparator: '<' | '<=' | '>' | '>=' | null = null,
  ) => judge({ analyte, value, unit, comparator, interval: null });

  it('of an everyday value is that it is plausible', () => {
    expect(of('haemoglobin', 132, 'g/L')).toEqual({ verdict: 'plausible' });
  });

  it.each([
    ['tibc', 350, 'mg/dL', 'limits-tibc'],
    ['transferrin-saturation', 0.35, '%', 'saturation-fraction'],
    ['haemoglobin', 13.2, 'g/L', 'limits-haemoglobin'],
  ] as const)('of %s %d %s names the rule that refused: %s', (analyte, value, unit, rule) => {
    expect(of(analyte, value, unit)).toMatchObject({ verdict: 'impossible', rule });
  });

  it.each([
    ['<', 0.5, 'plausible'],
    ['<=', 0.5, 'plausible'],
    ['>', 0.5, 'doubtful'],
    ['>', 20000, 'plausible'],
    ['>=', 20000, 'plausible'],
    ['<=', 20000, 'doubtful'],
  ] as const)('of ferritin %s%d: %s', (comparator, value, verdict) => {
    expect(of('ferritin', value, 'ug/L', comparator).verdict).toBe(verdict);
  });

  it.each([
    [
      'ferritin',
      6000,
      'ug/L',
      '6000 ug/L is above 5000 ug/L, which is seldom seen; is it right, or did the sheet say pmol/L (2670 ug/L)?',
    ],
    ['ferritin', 0.5, 'ug/L', '0.5 ug/L is below 2 ug/L, which is seldom seen; is it right?'],
    // Everyday in ug/dL and in ug/L alike, so that neither is suggested.
    [
      'serum-iron',
      255,
      'umol/L',
      '255 umol/L is above 60 umol/L, which is seldom seen; is it right?',
    ],
    [
      'serum-iron',
      1,
      'umol/L',
      '1 umol/L is below 2 umol/L, which is seldom seen; is it right, or did the sheet say mg/L (17.91 umol/L)?',
    ],
  ] as const)('of %s %d %s asks: %s', (analyte, value, unit, question) => {
    expect(of(analyte, value, unit)).toMatchObject({ verdict: 'doubtful', doubt: { question } });
  });

  it('by the printed interval says which unit it fits', () => {
    const interval = { low: 1.8, high: 5.7 };
    expect(
      judge({ analyte: 'serum-iron', value: 18, unit: 'ug/dL', comparator: null, interval }),
    ).toEqual({
      verdict: 'doubtful',
      doubt: {
        kind: 'unit',
        rule: 'printed-serum-iron',
        question:
          'the printed interval fits umol/L, not ug/dL; did the sheet say 18 umol/L (18 umol/L)?',
        likelyUnit: 'umol/L',
      },
    });
  });

  it('by a printed interval that fits no unit asks nothing', () => {
    const interval = { low: 9000, high: 90000 };
    expect(
      judge({ analyte: 'ferritin', value: 60, unit: 'ug/L', comparator: null, interval }),
    ).toEqual({ verdict: 'plausible' });
  });
});
