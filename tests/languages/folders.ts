// The folders in locales/ arrive; the tags of finished translations and their files leave.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { type Language, readLanguage } from '../../src/letter/index.js';

const needed = ['meta.json', 'letter.json', 'foods.json', 'fridge.json', 'glossary.json'];

/** Every language but English whose folder is whole. */
export const translatedTags: readonly string[] = readdirSync('locales', { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && entry.name !== 'en')
  .map(({ name }) => name)
  .filter((tag) => {
    const have = readdirSync(join('locales', tag));
    return needed.every((name) => have.includes(name));
  })
  .sort();

export function languageFilesOf(tag: string): Record<string, unknown> {
  const names = readdirSync(join('locales', tag)).filter((name) => name.endsWith('.json'));
  return Object.fromEntries(
    names.map((name) => [
      basename(name, '.json'),
      JSON.parse(readFileSync(join('locales', tag, name), 'utf8')) as unknown,
    ]),
  );
}

const opened = new Map<string, Language>();

/** @throws when the language cannot be read. */
export function languageOf(tag: string): Language {
  const known = opened.get(tag);
  if (known !== undefined) return known;
  const read = readLanguage(tag, languageFilesOf(tag));
  if (!read.ok) throw new Error(JSON.stringify(read.problems.slice(0, 5), null, 1));
  opened.set(tag, read.value);
  return read.value;
}
