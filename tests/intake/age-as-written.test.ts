// Ages as people write them. Words of the page's languages: what Intl.NumberFormat (CLDR) prints for a unit.
import { describe, expect, it } from 'vitest';
import { readAge } from '../../src/intake/age-as-written.js';

const printed = (language: string, count: number, unit: 'month' | 'year') =>
  new Intl.NumberFormat(`${language}-u-nu-latn`, {
    style: 'unit',
    unit,
    unitDisplay: 'long',
  }).format(count);

describe('an age', () => {
  it.each(['en', 'es', 'hi', 'ar', 'fr', 'de'])('is read as %s prints it', (language) => {
    for (const count of [8, 11]) {
      const [months, years] = [printed(language, count, 'month'), printed(language, count, 'year')];
      expect(readAge(months), months).toEqual({ years: null, months: count });
      expect(readAge(years), years).toEqual({ years: count, months: null });
    }
  });

  it.each([
    ['34', { years: 34, months: null }],
    ['34y', { years: 34, months: null }],
    ['8 mths.', { years: null, months: 8 }],
    ['8 weeks', null],
    ['about 8', null],
    ['', null],
  ])('%j is %j', (text, expected) => {
    expect(readAge(text)).toEqual(expected);
  });
});
