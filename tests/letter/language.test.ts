// A catalogue is whole or it is refused: keys, plural forms, variables, dates.
import { describe, expect, it } from 'vitest';
import { composeLetter, readLanguage } from '../../src/letter/index.js';
import { english, englishFiles, letterOf } from './fixtures.js';
import { compose, everySaid, plain } from './read-content.js';

type Messages = Record<string, string>;
const letterMessages = () => ({ ...(englishFiles().letter as Messages) });
const patientFiles = (letter: Messages, meta: object) => ({
  meta: { ...(englishFiles().meta as object), ...meta },
  letter,
  foods: englishFiles().foods,
});
const problemsOf = (tag: string, files: Record<string, unknown>) => {
  const read = readLanguage(tag, files);
  return read.ok ? [] : read.problems;
};

describe('a language', () => {
  it('is read whole when every file is there', () => {
    expect(readLanguage('en', englishFiles()).ok).toBe(true);
  });

  it('needs no file for the clinician to speak to patients', () => {
    expect(problemsOf('en', patientFiles(letterMessages(), {}))).toEqual([]);
  });

  it('is refused with the key of every missing, empty and unknown message', () => {
    const letter = letterMessages();
    delete letter['summary.heading'];
    letter.title = ' ';
    letter['made-up'] = 'x';
    const fields = problemsOf('en', patientFiles(letter, {})).map(({ place }) => place.field);
    expect(fields.sort()).toEqual(['made-up', 'summary.heading', 'title']);
  });

  it('is refused when a message lacks a variable, misspells one or has one too many', () => {
    const letter = letterMessages();
    letter['step.heard-by'] = 'Call {{phone}} by {{day}}.';
    letter['running.page-of'] = 'Page {page}';
    letter.title = 'Results {{name}}';
    const fields = problemsOf('en', patientFiles(letter, {})).map(({ place }) => place.field);
    expect(fields.sort()).toEqual(['running.page-of', 'step.heard-by', 'title']);
  });

  // Source of the forms: Unicode CLDR 48 plural rules as Node's Intl carries them.
  it('must have all six plural forms in Arabic', () => {
    const forms = problemsOf('ar', patientFiles(letterMessages(), { tag: 'ar', intl: 'ar' }))
      .map(({ place }) => place.field ?? '')
      .filter((field) => field.startsWith('gap.calcium_'));
    expect(forms.sort()).toEqual(
      ['few', 'many', 'two', 'zero'].map((form) => `gap.calcium_${form}`),
    );
  });

  it('is refused when this Node has no plurals for it', () => {
    const read = readLanguage('sm', patientFiles(letterMessages(), { tag: 'sm', intl: undefined }));
    expect(read.ok).toBe(false);
  });

  it.each([
    ['a month too few', (dates: readonly string[]) => dates.slice(1)],
    ['no year', (dates: readonly string[]) => dates.with(4, '{{day}} May')],
    ['two days', (dates: readonly string[]) => dates.with(4, '{{day}} {{day}} May {{year}}')],
    ['another variable', (dates: readonly string[]) => dates.with(4, '{{day}} {{month}} {{year}}')],
  ])('is refused when its dates have %s', (_name, change) => {
    const { dates } = englishFiles().meta as { dates: readonly string[] };
    const problems = problemsOf('en', patientFiles(letterMessages(), { dates: change(dates) }));
    expect(problems.map(({ place }) => place.file)).toEqual(['locales/en/meta.json']);
  });

  it('writes an English date with the day first and the month in words', () => {
    expect(english.date('2026-03-05')).toBe('5 March 2026');
  });
});

describe('a message', () => {
  it('is said as it stands when a name holds braces, nesting marks or markup', () => {
    const name = '{{phone}} $t(title) <b>&';
    const content = compose(letterOf({ pattern: 'unclear', patient: { name } }));
    expect(plain(content.greeting.text)).toBe(`Dear ${name},`);
  });

  it('keeps marks of direction in a name from reaching beyond it', () => {
    const content = compose(
      letterOf({ pattern: 'unclear', patient: { name: 'Ann\u202E\u2069 X' } }),
    );
    expect(content.greeting.text).toBe('Dear \u2068Ann X\u2069,');
  });

  it('stops the letter with a problem when a language lost it after reading', () => {
    const read = readLanguage('en', patientFiles(letterMessages(), {}));
    if (!read.ok) throw new Error('unreadable');
    read.value.words.removeResourceBundle('en-GB', 'foods');
    const made = composeLetter(letterOf({ pattern: 'early-low-intake', language: read.value }));
    expect(made.ok).toBe(false);
    if (!made.ok) expect(made.problems[0]?.code).toBe('language-message');
  });

  it('never shows a key or an open variable', () => {
    const texts = everySaid(compose(letterOf({ pattern: 'iron-deficiency-anaemia' }))).map(
      ({ text }) => text,
    );
    for (const text of texts) {
      expect(text).not.toMatch(/\{\{|\}\}|\bundefined\b|\bnull\b|NaN/);
      expect(text).not.toMatch(/^[a-z-]+(\.[a-z-]+)+$/);
    }
  });

  it('says two hours and one hour in the right form', () => {
    const gaps = (hours: number) =>
      compose(
        letterOf({
          pattern: 'early-low-intake',
          advice: {
            tablets: { dose: null, points: [], gaps: [{ medicine: 'calcium', hours, rule: 'x' }] },
          },
        }),
      ).tablets?.items.map(({ text }) => text);
    expect(gaps(1)).toEqual(['Leave 1 hour between iron and calcium tablets.']);
    expect(gaps(2)).toEqual(['Leave 2 hours between iron and calcium tablets.']);
  });
});
