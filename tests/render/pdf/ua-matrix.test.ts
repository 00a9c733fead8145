// Every language in every form is drawn; PDF/UA-1 is checked clause by clause under the numbers of the Matterhorn Protocol 1.1, and sizes are bounded.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LetterDocument, PageForm } from '../../../src/render/block.js';
import { pairDocuments } from '../../../src/render/pair-documents.js';
import { drawPdf, type Fonts } from '../../../src/render/pdf/index.js';
import { languageOf, translatedTags } from '../../languages/folders.js';
import { english } from '../../letter/fixtures.js';
import { lettersIn } from '../../readability/letters.js';
import { facts, testFonts } from './sample.js';
import { uaFaults } from './ua.js';

/** Checkpoints of the Matterhorn Protocol 1.1 (PDF Association) by the clauses of ISO 14289-1 that they test; numbers from memory. */
const checkpoints: readonly (readonly [checkpoint: string, says: string, clause: RegExp])[] = [
  ['01', 'real content is tagged and artifacts are marked', /^7\.1-[13]/],
  ['06', 'metadata carry the identifier and a title', /^(5-1|7\.1-[89])/],
  ['07', 'the title is shown', /^7\.1-10/],
  ['02, 09', 'the tags are known and nested as they must', /^(7\.1-11|7\.2: |6\.2-1|7\.1-4)/],
  ['10', 'characters have text', /^7\.21\.7/],
  ['11', 'the language is known', /^7\.2-(29|34)/],
  ['13', 'figures have words and a place', /^(7\.3-1|figure)/],
  ['14', 'headings skip no level', /^7\.4/],
  ['15', 'tables have heads with a scope and even rows', /^(7\.5|7\.2-(19|43))/],
  ['28', 'links are tagged and say where they lead', /^(7\.18|link)/],
  ['31', 'fonts are embedded with widths and no missing glyph', /^7\.21\.[3458]/],
];

const forms = [
  { paper: 'A4', size: 'standard' },
  { paper: 'Letter', size: 'large' },
] as const satisfies readonly PageForm[];

function usualLetter(tag: string): LetterDocument {
  const language = tag === 'en' ? english : languageOf(tag);
  const letter = lettersIn(language, false).find(({ name }) => name.startsWith('heavy-periods'));
  if (letter === undefined) throw new Error('no letter');
  return letter.document;
}

function besideEnglish(tag: string): LetterDocument {
  const paired = pairDocuments(usualLetter(tag), usualLetter('en'));
  if (!paired.ok) throw new Error(JSON.stringify(paired.problems));
  return paired.value;
}

let fonts: Fonts;
beforeAll(async () => {
  fonts = await testFonts();
});

async function drawn(document: LetterDocument, form: PageForm): Promise<Uint8Array> {
  const made = await drawPdf(document, form, fonts, facts);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

const tags = ['en', ...translatedTags];
const cases = tags.flatMap((tag) => [
  ...forms.map((form) => ({ name: `${tag}, ${form.size}`, tag, form, beside: false })),
  ...(tag === 'en' ? [] : [{ name: `${tag} beside en`, tag, form: forms[0], beside: true }]),
]);

describe.each(cases)('a letter in $name', ({ tag, form, beside }) => {
  let bytes: Uint8Array;
  let faults: readonly string[];
  beforeAll(async () => {
    bytes = await drawn(beside ? besideEnglish(tag) : usualLetter(tag), form);
    faults = uaFaults(bytes);
  });

  it.each(checkpoints)('Matterhorn %s: %s', (_checkpoint, _says, clause) => {
    expect(faults.filter((fault) => clause.test(fault))).toEqual([]);
  });

  it('has no fault under any other number', () => {
    expect(faults).toEqual([]);
  });

  // The limits are this project's own.
  it('is small: 60 kB at most in English, 150 kB in another language, 180 kB in two', () => {
    const most = beside ? 180 : tag === 'en' ? 60 : 150;
    expect(bytes.length).toBeLessThanOrEqual(most * 1000);
  });

  it('passes qpdf --check where that program is at hand', () => {
    const folder = mkdtempSync(join(tmpdir(), 'ua-'));
    const path = join(folder, 'letter.pdf');
    writeFileSync(path, bytes);
    const { status, stderr } = spawnSync('qpdf', ['--check', path], { encoding: 'utf8' });
    rmSync(folder, { recursive: true });
    if (status !== null) expect(stderr).toBe('');
  });
});
