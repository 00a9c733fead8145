// Levels go in; visual order is checked against the examples of Unicode Standard Annex 9, rule L2, and bidi-js.
import bidiFactory from 'bidi-js';
import { describe, expect, it } from 'vitest';
import { levelsOf, paintedText, visualOrder } from '../../../src/render/pdf/bidi.js';
import { breakPlaces } from '../../../src/render/pdf/breaks.js';

describe('visual order', () => {
  it.each([
    { levels: [0, 0, 1, 1, 0], order: [0, 1, 3, 2, 4] },
    { levels: [1, 1, 1], order: [2, 1, 0] },
    { levels: [1, 2, 2, 1], order: [3, 1, 2, 0] },
    { levels: [0, 1, 2, 2, 1, 0], order: [0, 4, 2, 3, 1, 5] },
    { levels: [2, 2], order: [0, 1] },
    { levels: [], order: [] },
  ])('of levels $levels is $order', ({ levels, order }) => {
    expect(visualOrder(levels)).toEqual(order);
  });

  it('turns the first example of rule L2 as the annex does', () => {
    // UAX 9, section 3.4: capitals stand for right-to-left letters.
    const text = 'car means CAR.';
    const order = visualOrder([...'00000000001110'].map(Number));
    expect(order.map((at) => text.charAt(at)).join('')).toBe('car means RAC.');
  });

  it('equals bidi-js for Hebrew, Arabic and numbers', () => {
    const bidi = (bidiFactory as unknown as typeof bidiFactory.default)();
    for (const text of ['אבג abc 12.5 דה', 'ferritin فيريتين 30–400 x', 'מגדל (12) ab']) {
      for (const dir of ['ltr', 'rtl'] as const) {
        const levels = bidi.getEmbeddingLevels(text, dir);
        expect(visualOrder([...levelsOf(text, dir)])).toEqual(
          bidi.getReorderedIndices(text, levels),
        );
      }
    }
  });
});

describe('levels', () => {
  it('keep an isolated phone number left to right after Arabic letters', () => {
    const text = 'اتصل \u2066555-0199\u2069 الآن';
    const order = visualOrder([...levelsOf(text, 'rtl')]);
    const seen = order.map((at) => text.charAt(at)).join('');
    expect(paintedText(seen)).toContain('555-0199');
  });

  it('without an isolate would turn it round: the reason isolates are used', () => {
    const text = 'اتصل 555-0199 الآن';
    const seen = visualOrder([...levelsOf(text, 'rtl')])
      .map((at) => text.charAt(at))
      .join('');
    expect(seen).toContain('0199-555');
  });
});

describe('places to end a line', () => {
  it('come after spaces and hyphens, never within a word', () => {
    const at = breakPlaces('well-known iron', 'en').map((place) => place.at);
    expect(at).toEqual([5, 11, 15]);
  });

  it('never come at a no-break space', () => {
    expect(breakPlaces('98\u00A0g', 'en').map((place) => place.at)).toEqual([4]);
  });

  it.each(['120–160', '2026-01-05', '555-0199', '120/80'])('never come within %s', (text) => {
    expect(breakPlaces(text, 'en').map((place) => place.at)).toEqual([text.length]);
  });

  it('come between the words of Thai, which has no spaces', () => {
    expect(breakPlaces('ธาตุเหล็กต่ำ', 'th').length).toBeGreaterThan(1);
  });
});
