// From pasted text to a saved PDF, from file:// with the network cut; the bytes are those of the command line.

import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exampleClinic } from '../../src/app/assets.js';
import { readClinic } from '../../src/app/config.js';
import { openKit } from '../../src/app/kit.js';
import type { Wishes } from '../../src/app/make-letter.js';
import { makeLetter } from '../../src/app/make-letter.js';
import { understand } from '../../src/app/understand.js';
import { readInput } from '../../src/intake/index.js';
import { plainWishes } from '../app/wishes.js';
import { type Copy, letter, paste, savedPdf, useExample, writeCopy } from './open-page.js';
import { ironDeficiency } from './texts.js';

let copy: Copy;
beforeAll(async () => {
  copy = await writeCopy();
}, 60_000);
afterAll(() => copy?.close());

const wishes = { ...plainWishes, date: '' };

/** What `ironleaf letter` writes for the same text. */
async function commandLine(some: Partial<Wishes>, date: string): Promise<Buffer> {
  const bytes = new TextEncoder().encode(ironDeficiency);
  const { reports } = await readInput({ name: 'standard input', bytes });
  const [written] = reports;
  if (written === undefined || !written.ok) throw new Error('the text cannot be read');
  const understood = understand(written.value, date, []);
  const clinic = readClinic('clinic.json', readFileSync(exampleClinic), true);
  if (!understood.ok || !clinic.ok) throw new Error('the example cannot be used');
  const outcome = await makeLetter(
    understood.value,
    clinic.value,
    { ...wishes, ...some, date },
    await openKit(),
  );
  if (outcome.kind !== 'made') throw new Error(`the letter was ${outcome.kind}`);
  return Buffer.from(outcome.files[0]?.content ?? []);
}

const cases: readonly (readonly [name: string, wished: Partial<Wishes>])[] = [
  ['English', {}],
  ['Arabic beside English', { language: 'ar', beside: 'en' }],
  ['Hindi in large print', { language: 'hi', form: { paper: 'A4', size: 'large' } }],
];

describe('the page, opened from a disk with no network', () => {
  it.each(cases)(
    'saves the PDF of the command line: %s',
    async (_name, wished) => {
      const { page, asked, complaints } = await copy.open();
      await paste(page, ironDeficiency);
      await useExample(page);
      if (wished.language !== undefined)
        await page.getByLabel('Language of the letter').selectOption(wished.language);
      if (wished.beside !== undefined)
        await page.getByLabel('Beside it').selectOption(wished.beside);
      if (wished.form?.size === 'large') await page.getByLabel('Large print').check();
      await letter(page)
        .locator(`html[lang="${wished.language ?? 'en'}"]`)
        .waitFor();
      const saved = await savedPdf(page);
      const today = await page.evaluate<string>(
        'new Date(Date.now() - new Date().getTimezoneOffset() * 60000).toISOString().slice(0, 10)',
      );
      const expected = await commandLine(wished, today);
      expect(saved.subarray(0, 5).toString()).toBe('%PDF-');
      expect(saved.equals(expected)).toBe(true);
      expect(asked).toEqual([]);
      expect(complaints).toEqual([]);
      await page.context().close();
    },
    60_000,
  );
});
