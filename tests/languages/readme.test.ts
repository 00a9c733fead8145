// The table of languages that people read is held to the folders and to what their records say of review.
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { shelfOf, standingOf } from '../../src/app/languages/shelf.js';
import { languageFilesOf, translatedTags } from './folders.js';

const readme = readFileSync('README.md', 'utf8');
const guide = 'docs/languages.md';
const rows = [
  ...`${readme}\n${existsSync(guide) ? readFileSync(guide, 'utf8') : ''}`.matchAll(
    /^\| `(?<tag>[\w-]+)` +\| (?<name>[^|]+?) +\| (?<script>[^|]+?) +\| (?<dir>[^|]+?) +\| (?<checked>[^|]+?) +\|$/gm,
  ),
].map(({ groups }) => groups as Record<'tag' | 'name' | 'script' | 'dir' | 'checked', string>);

// Names of the four-letter codes: ISO 15924.
const scripts: Readonly<Record<string, string>> = {
  Arab: 'Arabic',
  Beng: 'Bengali',
  Cyrl: 'Cyrillic',
  Deva: 'Devanagari',
  Guru: 'Gurmukhi',
  Hans: 'Han',
  Latn: 'Latin',
};

describe('the table of languages', () => {
  it('has a row for English and every folder, and no other', () => {
    const tags = ['en', ...translatedTags];
    expect([...new Set(rows.map(({ tag }) => tag))].sort()).toEqual([...tags].sort());
    for (const tag of tags) expect(readme).toContain(`\`${tag}\``);
  });

  it.each(translatedTags)('tells the truth about %s', (tag) => {
    const shelf = shelfOf(tag, languageFilesOf(tag));
    const row = rows.find((one) => one.tag === tag);
    const { meta } = shelf;
    expect(row?.name).toContain(meta.englishName.split(' ')[0]);
    expect(row?.script).toBe(scripts[meta.script]);
    expect(row?.dir).toBe(meta.dir === 'rtl' ? 'right to left' : 'left to right');
    expect(row?.checked === 'nobody').toBe(standingOf(shelf).state === 'draft-machine');
  });
});
