// Twelve people who eat differently: the week's sheet of each is one page in type that is read from across a kitchen.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openKit } from '../../src/app/kit.js';
import { makeFridgeSheet } from '../../src/app/make-fridge-sheet.js';
import { understand } from '../../src/app/understand.js';
import { readInput } from '../../src/intake/index.js';
import { clinic } from '../letter/fixtures.js';
import { pdfjsWords } from '../render/pdf/pdfjs-text.js';
import { plainWishes, today } from './wishes.js';

const folder = 'tests/advise/diets';
const kit = await openKit();

/** Large print begins at 16 points: Royal National Institute of Blind People, Clear Print guide; from memory. */
const largeFrom = 16;

async function sheetOf(file: string, paper: 'A4' | 'Letter'): Promise<Uint8Array> {
  const bytes = readFileSync(`${folder}/${file}`);
  const [written] = (await readInput({ name: file, bytes })).reports;
  const read = written?.ok === true ? understand(written.value, today, []) : null;
  if (read === null || !read.ok) throw new Error(`${file} cannot be read`);
  const wishes = { ...plainWishes, form: { paper, size: 'standard' as const } };
  const made = await makeFridgeSheet(read.value, clinic, wishes, 'en', kit);
  const pdf = made.ok ? made.value?.find(({ ending }) => ending === 'fridge.pdf') : undefined;
  if (pdf === undefined) throw new Error(`no sheet for ${file}`);
  return Buffer.from(pdf.content);
}

describe("the week's sheet in English", () => {
  const sheets = readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .flatMap((name) => [[name, 'A4'] as const, [name, 'Letter'] as const]);

  it.each(sheets)('%s on %s: one page, its meals in large type', async (file, paper) => {
    const pages = await pdfjsWords(await sheetOf(file, paper));
    expect(pages).toHaveLength(1);
    const large = pages.flat().filter(({ size }) => size >= largeFrom);
    // Seven days and seven meals at the least.
    expect(large.length).toBeGreaterThanOrEqual(14);
  });
});
