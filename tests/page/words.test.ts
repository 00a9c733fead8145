// Every language of the page says every message, with the same blanks, and leaves none in English.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAge } from '../../src/intake/index.js';
import { monthsIn } from '../../src/page/months-in.js';
import { analytes, dietAvoids, diets, nextSteps } from '../../src/terms.js';

const read = (tag: string) =>
  JSON.parse(readFileSync(`locales/${tag}/page.json`, 'utf8')) as Record<string, string>;
const english = read('en');
const blanks = (text: string) =>
  [...text.matchAll(/\{\{[\w-]+\}\}/g)].map(([blank]) => blank).sort();

it.each(['en', 'es', 'ar', 'hi'])('the hint at a baby’s age in %s can be typed as it is', (tag) => {
  expect(readAge(monthsIn(tag, 8))).toEqual({ years: null, months: 8 });
});

describe.each(['es', 'ar', 'hi'])('the page in %s', (tag) => {
  const own = read(tag);
  it('says every message of the English page and no other', () => {
    expect(Object.keys(own).sort()).toEqual(Object.keys(english).sort());
  });
  it('keeps the blanks of every message', () => {
    for (const [key, text] of Object.entries(english))
      expect([key, blanks(own[key] ?? '')]).toEqual([key, blanks(text)]);
  });
  it('is in one form of Unicode and says nothing empty', () => {
    for (const text of Object.values(own)) {
      expect(text).toBe(text.normalize('NFC'));
      expect(text.trim()).not.toBe('');
    }
  });
});

describe('the page in English', () => {
  it('has words for every member of the lists it shows whole', () => {
    const needed = [
      ...analytes.map((each) => `test.${each}`),
      ...nextSteps.map((each) => `step.${each}`),
      ...diets.map((each) => `diet.${each}`),
      ...dietAvoids.map((each) => `avoid.${each}`),
    ];
    expect(needed.filter((key) => !(key in english))).toEqual([]);
  });

  it('has no words that the page never says', () => {
    const source = readdirSync('src/page', { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => readFileSync(`src/page/${name}`, 'utf8'))
      .join('\n');
    // Members of closed lists and the parts of the call sheet are asked for by their group.
    const grouped =
      /^(test|step|diet|avoid|symptom|bleeding|condition|medicine|need|call|tier|clinic)\.|^(look\.analogy|person\.sex)\.|^understood\.(ok|doubtful|problem|ignored)$/;
    const unsaid = Object.keys(english).filter(
      (key) => !grouped.test(key) && !source.includes(`'${key}'`),
    );
    expect(unsaid).toEqual([]);
  });
});
