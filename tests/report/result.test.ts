// One written result: its number, its comparator, its marks, and the strings that are copied.
import { describe, expect, it } from 'vitest';
import { codesOf, notesOf, only, reportOf, written } from './written.js';

describe('a value', () => {
  it.each([
    ['60', null, 60, null, '60'],
    ['12,5', null, 12.5, null, '12,5'],
    ['12.50', null, 12.5, null, '12.50'],
    ['0,123', null, 0.123, null, '0,123'],
    ['5', '<', 5, '<', '<5'],
    ['5', '≤', 5, '<=', '≤5'],
    ['5', ' >= ', 5, '>=', '>=5'],
    ['<5', null, 5, '<', '<5'],
    ['> 400', null, 400, '>', '> 400'],
    ['=<5', null, 5, '<=', '=<5'],
    ['<5', '<', 5, '<', '<5'],
    ['<\n5', null, 5, '<', '< 5'],
  ])(
    'written as %s with comparator %s is measured and copied',
    (value, comparator, number, sign, copied) => {
      const result = only({ analyte: 'crp', unit: 'mg/L', value, comparator, confirmed: true });
      expect(result.quantity).toEqual({ value: number, unit: 'mg/L', comparator: sign });
      expect(result.copied.value).toBe(copied);
    },
  );

  it('keeps the unit as the laboratory wrote it', () => {
    const { quantity, copied } = only({ value: '60', unit: 'µg/l' });
    expect(quantity.unit).toBe('ug/L');
    expect(copied.unit).toBe('µg/l');
  });
});

describe('a laboratory flag', () => {
  it.each([
    // HL7 table 0078 and FHIR observation-interpretation; the words and arrows are common practice, no source.
    ['L', 'L'],
    ['low', 'L'],
    ['↓', 'L'],
    ['H', 'H'],
    ['High', 'H'],
    ['H*', 'H'],
    ['LL', 'LL'],
    ['Critical low', 'LL'],
    ['HH', 'HH'],
    ['HH!', 'HH'],
    ['LU', 'LU'],
    ['HU', 'HU'],
    ['N', 'N'],
    ['normal', 'N'],
    ['A', 'A'],
    ['*', 'A'],
    ['AA', 'AA'],
    ['panic', 'AA'],
    ['H~U', 'H'],
    ['D,L', 'L'],
    ['U', null],
    ['', null],
    [null, null],
    ['<', 'L'],
    ['>', 'H'],
    ['ZZ', 'A'],
    ['constructor', 'A'],
  ])('written as %s is %s', (labFlag, expected) => {
    expect(only({ labFlag }).labFlag).toBe(expected);
  });

  it('of off scale is kept as the comparator', () => {
    expect(only({ labFlag: '<' }).quantity.comparator).toBe('<');
    expect(only({ labFlag: '<', comparator: '<=' }).quantity.comparator).toBe('<=');
  });
});

describe('a status', () => {
  it.each([
    // FHIR observation-status and HL7 table 0085.
    [null, false],
    ['final', false],
    ['F', false],
    ['corrected', false],
    ['amended', false],
    ['preliminary', true],
    ['P', true],
    ['registered', true],
    ['unknown', true],
  ])('of %s gives preliminary %s', (status, preliminary) => {
    expect(only({ status }).preliminary).toBe(preliminary);
  });

  it.each(['entered-in-error', 'entered in error', 'cancelled', 'D', 'X'])(
    'of %s leaves the result out, with a note',
    (status) => {
      const report = reportOf([
        written(),
        written({ analyte: 'mcv', unit: 'fL', value: '90', status }),
      ]);
      expect(codesOf(report)).toEqual([]);
      expect(notesOf(report)).toEqual(['result-withdrawn']);
    },
  );
});
