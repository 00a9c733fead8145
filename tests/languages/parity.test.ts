// Every language in locales/ is held to the English list: keys, forms, variables, numbers, safety, glossary, record.
import { describe, expect, it } from 'vitest';
import { shelfOf, standingOf } from '../../src/app/languages/shelf.js';
import { unitsOf } from '../../src/app/languages/units.js';
import { composeLetter, isOutdated, readLanguage } from '../../src/letter/index.js';
import { entryOf } from '../../src/letter/record.js';
import { patterns } from '../../src/terms.js';
import { letterOf } from '../letter/fixtures.js';
import { everySaid } from '../letter/read-content.js';
import { languageFilesOf, languageOf, translatedTags } from './folders.js';

const numbersOf = (text: string): readonly string[] =>
  (text.replace(/\{\{?[^{}]*\}\}?/g, '').match(/\d+/g) ?? []).sort();

describe.each(translatedTags)('%s', (tag) => {
  const files = languageFilesOf(tag);
  const shelf = shelfOf(tag, files);
  const units = unitsOf(shelf);
  const lettered = units.filter(({ target }) => target !== '');

  it('has every key, plural form and variable, and no other', () => {
    const read = readLanguage(tag, files);
    expect(read.ok ? [] : read.problems.slice(0, 5)).toEqual([]);
  });

  it('writes the same numbers, in Latin digits', () => {
    const differ = lettered.filter(
      ({ source, target }) => numbersOf(source).join() !== numbersOf(target).join(),
    );
    expect(differ.map(({ key }) => key)).toEqual([]);
    // \p{Nd} holds the digits of every script; these letters print only 0 to 9.
    const foreign = lettered.filter(({ target }) => /(?![0-9])\p{Nd}/u.test(target));
    expect(foreign.map(({ key }) => key)).toEqual([]);
  });

  it('has plain text: composed characters, no control or direction marks, no markup', () => {
    for (const { target, key } of lettered) {
      expect(target.normalize('NFC'), key).toBe(target);
      expect(target, key).not.toMatch(/[\p{Cc}\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069<>]/u);
      expect(target.trim(), key).toBe(target);
    }
  });

  it('fits its labels', () => {
    const long = lettered.filter(
      ({ limit, target }) => limit !== null && [...target].length > limit,
    );
    expect(long.map(({ key, target }) => `${key}: ${target}`)).toEqual([]);
  });

  it('has no message left in English', () => {
    const same = units.filter(
      ({ namespace, source, target }) =>
        namespace === 'letter' && source === target && source.split(' ').length > 3,
    );
    expect(same.map(({ key }) => key)).toEqual([]);
  });

  it('has a glossary of every concept, with terms that its messages use and never those to avoid', () => {
    expect(shelf.glossary.map(({ concept }) => concept)).toEqual(concepts);
    const all = lettered.map(({ target }) => target.toLowerCase()).join('\n');
    const unused = shelf.glossary.filter(
      ({ target }) => !alternatives(target).some((word) => all.includes(word)),
    );
    expect(unused.length).toBeLessThanOrEqual(unusedAtMost);
    const approved = shelf.glossary
      .flatMap(({ target }) => alternatives(target))
      .sort((one, other) => other.length - one.length);
    const wrong = lettered
      // Picture stories are about other things, and a pot is of the metal.
      .filter(({ key }) => !key.startsWith('picture.') && !key.endsWith('-or-iron-pot'))
      .flatMap(({ key, target, terms }) => {
        const rest = approved.reduce(
          (text, word) => text.replaceAll(word, '·'),
          target.toLowerCase(),
        );
        return terms
          .flatMap(({ avoid }) => avoid)
          .filter((word) => holdsWord(rest, word.toLowerCase()))
          .map((word) => `${key}: ${word}`);
      });
    expect(wrong).toEqual([]);
  });

  it('is recorded message by message, nothing outdated, and says no more of itself than the record', () => {
    const standing = standingOf(shelf);
    const unrecorded = shelf.texts.filter((placed) => {
      const entry = entryOf(shelf.record, placed.namespace, placed.key);
      return entry === null || isOutdated(entry, placed);
    });
    expect(unrecorded.map(({ key }) => key)).toEqual([]);
    expect(standing.have).toBe(standing.need);
    expect(shelf.meta.reviewState).toBe(standing.state);
  });

  it('tells each pattern with the same messages as English, in the same order', () => {
    const language = languageOf(tag);
    for (const pattern of patterns) {
      const keys = [letterOf({ pattern }), letterOf({ pattern, language })].map((input) => {
        const made = composeLetter(input);
        if (!made.ok) throw new Error(JSON.stringify(made.problems));
        return everySaid({ ...made.value, bands: [] }).map(({ key }) => key);
      });
      expect(keys[1], pattern).toEqual(keys[0]);
    }
  });

  // Food that raises iron must not be named where iron may harm: EASL 2022, haemochromatosis, diet.
  it('names no food that raises iron in a letter about raised iron', () => {
    const language = languageOf(tag);
    const made = composeLetter(letterOf({ pattern: 'raised-tsat-and-ferritin', language }));
    const keys = made.ok ? everySaid(made.value).map(({ key }) => key) : [];
    const raising = keys.filter((key) =>
      /^(foods:|swap\.|food\.(kinds|list\.(meat|fish|plants|vitamin))|step\.eat-for-iron)/.test(
        key,
      ),
    );
    expect(keys.length).toBeGreaterThan(20);
    expect(raising).toEqual([]);
  });
});

const concepts = [
  'iron',
  'iron-store',
  'blood-count',
  'haemoglobin',
  'ferritin',
  'transferrin',
  'transferrin-saturation',
  'serum-iron',
  'red-blood-cell',
  'usual-range',
  'well-below',
  'a-little-below',
  'a-little-above',
  'well-above',
  'blood-test',
  'test-again',
  'clinic',
  'clinician',
  'specialist',
  'pharmacist',
  'dietitian',
  'interpreter',
  'emergency',
  'period',
  'pregnancy',
  'iron-tablets',
  'poo',
  'sticky-poo-like-tar',
  'bleeding',
  'tiredness',
  'shortness-of-breath',
  'heart-racing',
];
/** Glossary terms stand uninflected; a sentence may only hold a form of some. */
const unusedAtMost = 8;

/** 'poo / stool (gloss)' are two ways to say it. */
function alternatives(target: string): readonly string[] {
  return target
    .toLowerCase()
    .split(/\s*[/;,،、()（）]\s*/)
    .filter((word) => word !== '');
}

/** In scripts that write without spaces, anywhere. */
function holdsWord(text: string, word: string): boolean {
  if (/\p{Script=Han}/u.test(word)) return text.includes(word);
  const escaped = word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`(?<![\\p{L}\\p{M}])${escaped}(?![\\p{L}\\p{M}])`, 'u').test(text);
}
