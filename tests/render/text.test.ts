// The plain text: every sentence, in order, in lines short enough for a braille display or a voice.
import { describe, expect, it } from 'vitest';
import type { Content } from '../../src/letter/content.js';
import { readMarkup } from '../../src/render/read-markup.js';
import { writeText } from '../../src/render/text.js';
import { content, documentOf } from './fixture.js';

const text = writeText(documentOf(content));

/** Every said sentence of a content, except the pictures' inner labels and titles. */
function sentencesOf(value: unknown, key = ''): readonly string[] {
  if (value === null || typeof value !== 'object') return [];
  if (['labels', 'title'].includes(key) && !('key' in value)) return [];
  if ('key' in value && 'text' in value && typeof value.text === 'string') return [value.text];
  return Object.entries(value).flatMap(([name, inner]) =>
    name === 'labels' || name === 'pageOf' ? [] : sentencesOf(inner, name),
  );
}

const flat = (words: string) => words.replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ');

describe('the letter as text', () => {
  it('holds every sentence of the letter', () => {
    const pictureTitles = ['Where your result lies', 'A shop that makes shirts'];
    // The shipped template saves paper: these two stand without a heading of their own.
    const joined = [content.choices.heading.text, content.contact.heading.text];
    const whole = flat(text);
    const sentences = sentencesOf(content satisfies Content).filter(
      (sentence) => ![...pictureTitles, ...joined].includes(sentence),
    );
    expect(sentences.length).toBeGreaterThan(50);
    expect(sentences.filter((sentence) => !whole.includes(flat(sentence)))).toEqual([]);
  });

  it('keeps lines to seventy columns', () => {
    expect(text.split('\n').filter((line) => line.length > 70)).toEqual([]);
  });

  it('keeps a number and its unit on one line', () => {
    expect(text).not.toMatch(/\d\n(g|ug|%)|\/\n/);
  });

  it('drops isolates where everything runs left to right', () => {
    expect(text).not.toMatch(/[\u2066-\u2069]/);
    expect(text).toMatch(/Your result:\s118 g\/L\./);
  });

  it('keeps isolates around numbers where text runs right to left', () => {
    const arabic = writeText(documentOf({ ...content, lang: 'ar', dir: 'rtl' }));
    expect(arabic).toContain('\u2066118 g/L\u2069');
  });

  it('has headings on lines of their own and a box to tick before each step', () => {
    expect(text).toContain('\n\nIn short\n\n');
    expect(text).toMatch(/\n\[ \] Book a talk/);
    expect(text).toMatch(/\n\[ \] Tell us/);
  });

  it('reads a row of a table as one line, each cell after its head', () => {
    const read = readMarkup(
      '<article lang="en" dir="ltr" title="T"><table class="results"><thead><tr><th scope="col">Test</th><th scope="col">Value</th></tr></thead><tbody><tr><th scope="row">Ferritin</th><td>7 ug/L</td></tr></tbody></table></article>',
      'f',
    );
    expect(read.ok && writeText(read.value)).toBe('Ferritin; Value: 7 ug/L\n');
  });

  it('breaks Chinese between characters and counts them as two columns', () => {
    const read = readMarkup(
      `<article lang="zh-Hans" dir="ltr" title="T"><p>${'\u94C1\u84C4\u79EF\u91CF\u504F\u4F4E'.repeat(20)}</p></article>`,
      'f',
    );
    const lines = read.ok ? writeText(read.value).trimEnd().split('\n') : [];
    expect(lines.length).toBeGreaterThan(3);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(35);
  });
});
