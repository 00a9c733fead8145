// Random letters go in; whatever they hold, every word is placed once, in order, inside the page (own rule, no source).
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Block, PageForm } from '../../../src/render/block.js';
import { look } from '../../../src/render/look.js';
import { type Fonts, layOut } from '../../../src/render/pdf/index.js';
import type { PlacedLetter } from '../../../src/render/pdf/placed.js';
import { cell, heading, letter, paragraph, testFonts } from './sample.js';

let fonts: Fonts;

beforeAll(async () => {
  fonts = await testFonts();
  await fonts.load(['en']);
});

const words = fc
  .array(fc.constantFrom('iron', 'ferritin', 'g/L', '98', 'a', 'blood', 'haemoglobin'), {
    minLength: 1,
    maxLength: 60,
  })
  .map((list) => list.join(' '));

const { block } = fc.letrec<{ block: Block }>((tie) => ({
  block: fc.oneof(
    { maxDepth: 2, depthSize: 'small' },
    words.map((text) => paragraph(text)),
    words.map((text) => heading(2, text.slice(0, 40).trim())),
    fc.array(words, { minLength: 1, maxLength: 4 }).map(
      (items): Block => ({
        kind: 'list',
        ordered: false,
        items: items.map((text) => [paragraph(text)]),
      }),
    ),
    fc.array(fc.tuple(words, words), { minLength: 1, maxLength: 6 }).map(
      (rows): Block => ({
        kind: 'table',
        look: 'plain',
        caption: null,
        head: [],
        rows: rows.map((row) => row.map((text) => cell(text))),
      }),
    ),
    fc
      .array(tie('block'), { minLength: 1, maxLength: 4 })
      .map((blocks): Block => ({ kind: 'notice', look: 'plain', blocks })),
    fc
      .tuple(fc.array(tie('block'), { minLength: 1, maxLength: 4 }), fc.boolean())
      .map(([blocks, keep]): Block => ({ kind: 'section', lang: null, dir: null, keep, blocks })),
    fc
      .tuple(tie('block'), tie('block'))
      .map(([first, second]): Block => ({ kind: 'pair', first, second })),
    fc.constant<Block>({ kind: 'page-break' }),
    fc.constant<Block>({ kind: 'rule' }),
  ),
}));

function textOf(one: Block): string {
  switch (one.kind) {
    case 'heading':
    case 'paragraph':
      return one.runs.map((run) => run.text).join('');
    case 'list':
      return one.items.map((item) => `\u2022${item.map(textOf).join('')}`).join('');
    case 'table':
      return one.rows
        .flat()
        .map((own) => own.blocks.map(textOf).join(''))
        .join('');
    case 'notice':
    case 'section':
      return one.blocks.map(textOf).join('');
    case 'pair':
      return textOf(one.first) + textOf(one.second);
    default:
      return '';
  }
}

/** Text in the order of the tags, whichever page it stands on. */
function taggedText({ pages, tags }: PlacedLetter): string {
  const texts = tags.map(() => '');
  for (const ink of pages.flatMap((page) => page.ink)) {
    if (ink.kind === 'text') {
      texts[ink.tag] += ink.glyphs.map((glyph) => glyph.text).join('');
    }
  }
  return texts.join('');
}

const bare = (text: string) => text.replace(/[\s\u2013\u2022]/g, '');

describe('a letter of any blocks', () => {
  const forms = fc.record({
    paper: fc.constantFrom<PageForm['paper']>('A4', 'Letter'),
    size: fc.constantFrom<PageForm['size']>('compact', 'standard', 'large', 'extra-large'),
  });

  it('is placed whole, in order and within the page', () => {
    fc.assert(
      fc.property(fc.array(block, { minLength: 1, maxLength: 8 }), forms, (blocks, form) => {
        const made = layOut(letter(blocks), form, fonts);
        if (!made.ok) {
          expect(made.problems.map((problem) => problem.code)).toEqual(['too-tall']);
          return;
        }
        expect(bare(taggedText(made.value))).toBe(bare(blocks.map(textOf).join('')));
        const { width, height, margin } = look.page[form.paper];
        for (const ink of made.value.pages.flatMap((page) => page.ink)) {
          expect(ink.y).toBeLessThanOrEqual(height - margin);
          if (ink.kind !== 'text') continue;
          expect(ink.y).toBeGreaterThan(0);
          expect(ink.x).toBeGreaterThanOrEqual(margin - 0.01);
          expect(ink.x).toBeLessThan(width - margin + 0.01);
        }
      }),
      { numRuns: 150, seed: 20260105 },
    );
  }, 60_000);
});
