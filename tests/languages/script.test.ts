// A letter to be read aloud: numbers and units as they are said, nothing that only the eye can use.
import { describe, expect, it } from 'vitest';
import { sayInterval, sayPhone, sayValue } from '../../src/letter/aloud.js';
import { composeScript } from '../../src/letter/index.js';
import { voiceOf } from '../../src/letter/say.js';
import { english, graded, letterOf } from '../letter/fixtures.js';

const voice = voiceOf(english, false);

// How each is said: BIPM SI Brochure, 9th edition, 5.3 and 5.4 (names of units, 'per' for the stroke); the rest common practice.
describe('a value', () => {
  it.each([
    ['9', 'ug/L', '9 micrograms per litre'],
    ['9', 'µg/l', '9 micrograms per litre'],
    ['12.5', 'g/dL', '12 point 5 grams per decilitre'],
    ['12,05', 'g/dL', '12 point 0 5 grams per decilitre'],
    ['<5', 'ng/mL', 'less than 5 nanograms per millilitre'],
    ['≥ 100', 'fL', '100 or more femtolitres'],
    ['35', '%', '35 per cent'],
    ['4.1', '10*12/L', '4 point 1 times ten to the power of twelve per litre'],
  ])('%s %s is said "%s"', (value, unit, said) => {
    expect(sayValue(voice, value, unit)).toBe(said);
  });

  it.each([
    ['30–400', '30 to 400'],
    ['11.5 - 15.5', '11 point 5 to 15 point 5'],
    ['<5', 'less than 5'],
  ])('range %s is said "%s"', (interval, said) => {
    expect(sayInterval(voice, interval)).toBe(said);
  });

  it('to call is read digit by digit', () => {
    expect(sayPhone('555-0142')).toBe('5 5 5, 0 1 4 2');
    expect(sayPhone('+44 113 496 0000')).toBe('+ 4 4, 1 1 3, 4 9 6, 0 0 0 0');
  });
});

describe('a script', () => {
  const pattern = 'iron-deficiency-anaemia' as const;
  const made = composeScript(letterOf({ pattern }));
  const script = made.ok ? made.value : '';

  it('begins with asking who it is, and ends with asking what was understood', () => {
    const parts = script.trim().split('\n\n');
    expect(parts.findIndex((part) => part.startsWith('First ask for the name'))).toBeLessThan(
      parts.findIndex((part) => part.includes('Dear Noor')),
    );
    expect(parts.at(-1)).toMatch(/^At the end, ask/);
  });

  it('holds no unit in signs, no sign of comparison, no direction marks and no words about a line', () => {
    expect(script).not.toMatch(/[a-z]\/d?[lL]\b|[<>%]|[\u2066-\u2069]|shaded|mark is your/);
    expect(script).toContain('4 micrograms per litre. Usual range: 20 to 500.');
    expect(script).toContain('5 5 5, 0 1 4 2');
  });

  it('says when to get help, every caution of the letter and that questions are welcome', () => {
    for (const words of [
      'Chest pain',
      'Please do not start iron tablets on your own.',
      'Your choices and questions\nTell us what matters to you.',
    ])
      expect(script).toContain(words);
  });

  it('is refused where a language lacks the words, and for a unit it cannot say', () => {
    const words = english.words.cloneInstance();
    const mute = { ...english, words: Object.assign(words, { exists: () => false }) };
    const refused = composeScript(letterOf({ pattern, language: mute }));
    expect(refused.ok || refused.problems[0]?.code).toBe('no-spoken-words');
    const odd = [graded(['ferritin', '4', 'fmol', '20-500', 'well-below', 'low'])];
    expect(composeScript(letterOf({ pattern, results: odd })).ok).toBe(false);
  });
});
