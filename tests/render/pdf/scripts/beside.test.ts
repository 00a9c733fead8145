// Letters in two languages and directions go in; tags, order, mirroring and room for the ink are read from what is placed and drawn.
import { beforeAll, describe, expect, it } from 'vitest';
import type { LetterDocument, PageForm } from '../../../../src/render/block.js';
import { look } from '../../../../src/render/look.js';
import { pairDocuments } from '../../../../src/render/pair-documents.js';
import { drawPdf, type Fonts, layOut } from '../../../../src/render/pdf/index.js';
import { languagesOf } from '../../../../src/render/pdf/languages.js';
import type { PlacedLetter } from '../../../../src/render/pdf/placed.js';
import { collisions, inkBoxes } from '../ink-boxes.js';
import { nodesOf, readPdf, textOf } from '../read-back.js';
import { facts, testFonts } from '../sample.js';
import { uaFaults } from '../ua.js';
import { arabic, english, hindi, letterIn, urdu, type Words } from './beside.js';

let fonts: Fonts;

beforeAll(async () => {
  fonts = await testFonts();
});

function pairOf(first: Words, second: Words): LetterDocument {
  const paired = pairDocuments(letterIn(first), letterIn(second));
  if (!paired.ok) throw new Error(JSON.stringify(paired.problems));
  return paired.value;
}

async function placed(document: LetterDocument, form: PageForm): Promise<PlacedLetter> {
  await fonts.load(languagesOf(document));
  const laid = layOut(document, form, fonts);
  if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
  return laid.value;
}

const sizes = ['compact', 'standard', 'large', 'extra-large'] as const;
const pairs = [
  [english, arabic],
  [arabic, english],
  [english, hindi],
  [urdu, english],
  [hindi, urdu],
] as const;
const letters = [
  ...[arabic, urdu, hindi].map((words) => ({ name: words.lang, document: letterIn(words) })),
  ...pairs.map(([a, b]) => ({ name: `${a.lang} beside ${b.lang}`, document: pairOf(a, b) })),
].flatMap((one) => sizes.map((size) => ({ ...one, size })));

describe.each(letters)('$name in $size print', ({ name, document, size }) => {
  const form = { paper: 'A4', size } as const;

  it('keeps all ink on the paper and every line clear of its neighbours', async () => {
    const { width, height, pages } = await placed(document, form);
    for (const page of pages) {
      const boxes = inkBoxes(page, fonts);
      const edge = look.page.A4.margin / 3;
      for (const { left, right, top, bottom, text } of boxes) {
        expect(left, text).toBeGreaterThan(edge);
        expect(right, text).toBeLessThan(width - edge);
        expect(top, text).toBeGreaterThan(edge);
        expect(bottom, text).toBeLessThan(height - edge);
      }
      // Nastaliq slants: its boxes overlap where its ink does not.
      expect(collisions(boxes, name.includes('ur') ? 0.4 : 0.02)).toEqual([]);
    }
  });

  it('is tagged as PDF/UA-1 asks', async () => {
    const made = await drawPdf(document, form, fonts, facts);
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    expect(uaFaults(made.value)).toEqual([]);
  });
});

async function treeOf(document: LetterDocument) {
  const made = await drawPdf(document, { paper: 'A4', size: 'standard' }, fonts, facts);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return readPdf(made.value);
}

describe.each(pairs)('$0.lang beside $1.lang', (first, second) => {
  it('names the language of each side and reads heading after heading', async () => {
    const pdf = await treeOf(pairOf(first, second));
    const headings = nodesOf(pdf.tree).filter(({ role }) => /^H\d/.test(role));
    const inOrder = [first, second].map(({ title, results, foods, next, help }) => [
      title,
      results,
      foods,
      next,
      help,
    ]);
    const wanted = (inOrder[0] ?? []).flatMap((own, at) => [own, inOrder[1]?.[at] ?? '']);
    expect(headings.map((node) => sortedLetters(textOf(node, pdf)))).toEqual(
      wanted.map(sortedLetters),
    );
    const spoken = nodesOf(pdf.tree).filter(({ dict }) => dict.Lang !== undefined);
    expect(spoken[0]?.dict.Lang).toBe(first.lang);
    const others = new Set(spoken.slice(1).map(({ dict }) => dict.Lang));
    expect([...others].filter((lang) => lang !== 'en')).toEqual(
      second.lang === 'en' ? [] : [second.lang],
    );
    expect(others.has(second.lang)).toBe(true);
  });
});

/** Letters in any order: glyphs of a right-to-left word stand from left to right. */
function sortedLetters(text: string): string {
  return [...text.normalize('NFKD').replace(/[\s\u200B]/g, '')].sort().join('');
}

describe('a right-to-left letter', () => {
  it('has its first column, its markers and its numbers at the right', async () => {
    const { pages, tags } = await placed(letterIn(arabic), { paper: 'A4', size: 'standard' });
    const ink = pages.flatMap((page) => page.ink).filter((one) => one.kind === 'text');
    const middle = (role: string) => {
      const own = ink.filter(({ tag }) => tags[tag]?.role === role);
      return own.reduce((sum, one) => sum + one.x + one.width / 2, 0) / own.length;
    };
    expect(middle('Lbl')).toBeGreaterThan(middle('LBody'));
    const cells = ink.filter(({ tag }) => ['TH', 'TD'].includes(tags[tag]?.role ?? ''));
    const firstRow = cells.filter(({ y }) => y === cells[0]?.y).map(({ x }) => x);
    expect(firstRow).toEqual([...firstRow].sort((a, b) => b - a));
  });

  it.each([arabic, urdu])(
    'prints numbers from left to right in text, table and picture: $lang',
    async (words) => {
      const { pages } = await placed(letterIn(words), { paper: 'A4', size: 'standard' });
      const seen = pages.flatMap((page) =>
        page.ink.flatMap((one) => {
          if (one.kind === 'text') return [one.glyphs];
          return one.kind === 'picture'
            ? one.shapes.flatMap((shape) => (shape.kind === 'letters' ? [shape.glyphs] : []))
            : [];
        }),
      );
      const rows = seen.map((glyphs) => glyphs.map(({ text }) => text).join(''));
      for (const number of ['12.5 µg/L', '30–400', '120–160', '555-0142', '2026-01-05', '12.5']) {
        expect(
          rows.some((row) => row.includes(number)),
          number,
        ).toBe(true);
      }
      expect(rows.filter((row) => row === '30–400').length).toBe(2);
    },
  );
});
