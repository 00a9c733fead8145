// Holds every letter the fixtures can make to grade 6 and short sentences, with formulas checked by hand first.
import { describe, expect, it } from 'vitest';
import { analogies, patterns } from '../../src/terms.js';
import { casesOf } from './cases.js';
import { examples } from './examples.js';
import { letterOf } from './fixtures.js';
import { compose, spokenProse } from './read-content.js';
import {
  count,
  fleschEase,
  fleschKincaid,
  meanSentence,
  sentencesOf,
  smog,
} from './readability.js';

const everyLetter = [...casesOf(), ...(await examples())];

/** Two texts counted and computed by hand from the published formulas. */
const simple = 'Your iron store is low. You may feel weak at times. Please call us this week.';
const hard =
  'Ferritin concentration reflects available iron. Inflammation elevates ferritin, so interpretation needs additional information.';

describe('the readability counter', () => {
  it('counts a simple text as by hand', () => {
    const counts = count([simple]);
    expect(counts).toMatchObject({ words: 16, sentences: 3, syllables: 17, long: 0 });
    expect(fleschKincaid(counts)).toBeCloseTo(-0.9725, 4);
    expect(fleschEase(counts)).toBeCloseTo(111.5342, 4);
  });

  it('counts a hard text as by hand', () => {
    const counts = count([hard]);
    expect(counts).toMatchObject({ words: 13, sentences: 2, syllables: 40, long: 9 });
    expect(fleschKincaid(counts)).toBeCloseTo(23.2527, 4);
    expect(fleschEase(counts)).toBeCloseTo(-60.0702, 4);
    expect(smog(counts)).toBeCloseTo(15.2477, 4);
  });

  it('computes SMOG as by hand for thirty sentences with twenty-five long words', () => {
    const counts = { words: 300, sentences: 30, syllables: 400, long: 25, longestSentence: 10 };
    expect(smog(counts)).toBeCloseTo(8.3441, 4);
  });

  it('does not end a sentence at a decimal point and leaves values out', () => {
    expect(sentencesOf('It is \u20663.6 g/L\u2069 now. Call 2.5 times.')).toHaveLength(2);
    expect(count(['Call \u2066555-0142\u2069 now.']).words).toBe(2);
  });
});

describe('every letter', () => {
  // Thresholds: NHS digital service manual (20 words a sentence), American Family Physician 2015 (grade 5 to 6);
  // the mean of 12 words and SMOG 9 are this project's own proposal.
  it.each(everyLetter)('$name is at grade 6 or below, in short sentences', ({ input }) => {
    const counts = count(spokenProse(compose(input)));
    expect(fleschKincaid(counts)).toBeLessThanOrEqual(6);
    expect(smog(counts)).toBeLessThanOrEqual(9);
    expect(meanSentence(counts)).toBeLessThanOrEqual(12);
    expect(counts.longestSentence).toBeLessThanOrEqual(20);
  });

  it.each(everyLetter)('$name keeps paragraphs to three sentences', ({ input }) => {
    const content = compose(input);
    const passages = [
      content.meaning,
      content.choices,
      content.picture,
      content.food,
      content.tablets,
    ];
    const paragraphs = passages.flatMap((passage) => passage?.paragraphs ?? []);
    for (const paragraph of [...paragraphs, content.summary.sentences]) {
      const sentences = paragraph.flatMap(({ text }) => sentencesOf(text));
      expect(sentences.length, paragraph.map(({ text }) => text).join(' ')).toBeLessThanOrEqual(3);
    }
  });

  it.each(patterns)(
    'about %s fits easy read: fifteen words a sentence and no picture in words',
    (pattern) => {
      const content = compose(letterOf({ pattern, options: { easyRead: true } }));
      expect(content.picture).toBeNull();
      expect(count(spokenProse(content)).longestSentence).toBeLessThanOrEqual(15);
    },
  );

  it.each(analogies)('keeps the picture of the %s at grade 3 or below', (analogy) => {
    for (const pattern of patterns) {
      const { picture } = compose(letterOf({ pattern, options: { analogy } }));
      if (picture === null) continue;
      const counts = count(picture.paragraphs.flat().map(({ text }) => text));
      expect(fleschKincaid(counts)).toBeLessThanOrEqual(3);
    }
  });

  // One sheet, both sides, at 14 point; the number is this project's own proposal.
  it.each(patterns)('about %s stays brief: at most 500 words beside the picture', (pattern) => {
    const { bands: _bands, picture: _picture, ...rest } = compose(letterOf({ pattern }));
    expect(count(spokenProse({ ...rest, bands: [], picture: null })).words).toBeLessThanOrEqual(
      500,
    );
  });
});
