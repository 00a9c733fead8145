// Lines of mixed direction go in; their order is held to UAX 9 worked by hand, and to bidi-js on what is placed.
import bidiFactory from 'bidi-js';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Direction } from '../../../../src/direction.js';
import { levelsOf, paintedText, visualOrder } from '../../../../src/render/pdf/bidi.js';
import { type Fonts, layOut } from '../../../../src/render/pdf/index.js';
import { letter, run, testFonts } from '../sample.js';
import { samples, traps } from './sentences.js';

let fonts: Fonts;

beforeAll(async () => {
  fonts = await testFonts();
});

/**
 * Unicode Standard Annex 9, rules in the order of its section 3.3: each case is worked by hand from the rule named.
 * `seen` is the line from left to right before mirroring, without control characters.
 */
const worked: readonly (readonly [rule: string, Direction, text: string, seen: string])[] = [
  ['L2: letters turn, words around them stay', 'ltr', 'car אבג.', 'car גבא.'],
  ['P3 and L2: the paragraph runs right to left', 'rtl', 'אבג car דה', 'הד car גבא'],
  ['W1: a mark takes its letter’s type', 'rtl', 'ab\u0301 אב', 'בא ab\u0301'],
  ['W2: digits after Arabic letters are Arabic digits', 'rtl', 'ت 12', '12 ت'],
  ['W4: one point between digits joins them', 'rtl', 'אב 12.5 גד', 'דג 12.5 בא'],
  ['W4: one comma between digits joins them', 'rtl', 'אב 1,200 גד', 'דג 1,200 בא'],
  ['W4: a colon between digits joins them', 'rtl', 'אב 10:30 גד', 'דג 10:30 בא'],
  ['W4: a plain minus joins European digits', 'rtl', 'אב 30-40 גד', 'דג 30-40 בא'],
  ['W4 fails between Arabic digits: the parts change places', 'rtl', 'ت 30-40', '40-30 ت'],
  ['W5: a sign of percent goes with European digits', 'rtl', 'אב 35% גד', 'דג 35% בא'],
  ['W5 fails after Arabic letters: the sign follows reading', 'rtl', 'ت 35%', '%35 ت'],
  ['W7: digits after Latin letters are Latin', 'rtl', 'אב abc 12 גד', 'דג abc 12 בא'],
  ['N0: a pair of brackets follows what it holds', 'rtl', 'אב (גד) ab', 'ab )דג( בא'],
  ['N0: a pair around Latin in Hebrew follows the paragraph', 'rtl', 'אב (ab) גד', 'דג )ab( בא'],
  ['N0: a pair in Latin words stays with them', 'rtl', 'אב book(s) גד', 'דג book(s) בא'],
  ['N1: signs between two of one direction take it', 'ltr', 'ab אב, גד ef', 'ab דג ,בא ef'],
  ['N2: signs between two directions take the paragraph’s', 'rtl', 'אב, ab', 'ab ,בא'],
  ['X5a: an isolate keeps its own order', 'rtl', 'ت \u206630–40\u2069 ب', 'ب 30–40 ت'],
  ['X5a: a date in an isolate', 'rtl', 'ت \u20662026-01-05\u2069', '2026-01-05 ت'],
  [
    'X5a: a phone number in an isolate',
    'rtl',
    'ت \u2066+44 113 496 0000\u2069',
    '+44 113 496 0000 ت',
  ],
  ['X5a: a comparator in an isolate', 'rtl', 'ت \u2066<5\u2069', '<5 ت'],
  ['X5a: brackets round an isolate follow the paragraph', 'rtl', 'ت (\u20665 g\u2069)', ')5 g( ت'],
  ['X5b: a right-to-left isolate in Latin', 'ltr', 'ab \u2067אב 12\u2069 cd', 'ab 12 בא cd'],
  [
    'X6a: what follows an isolate is as if it were not there',
    'rtl',
    'אב \u2066ab\u2069 גד',
    'דג ab בא',
  ],
];

function seenOf(text: string, dir: Direction): string {
  const order = visualOrder([...levelsOf(text, dir)]);
  return paintedText(order.map((at) => text.charAt(at)).join(''));
}

describe('a line of mixed direction', () => {
  it.each(worked)('%s (%s): %s', (_, dir, text, seen) => {
    expect(seenOf(text, dir)).toBe(seen);
  });
});

describe('what is placed on paper', () => {
  const mixed = samples
    .filter(({ dir }) => dir === 'rtl')
    .flatMap(({ lang, sentences }) =>
      traps.map((trap) => ({ lang, words: sentences[0] ?? '', trap })),
    );

  it.each(mixed)('stands as bidi-js orders it: $lang $trap', async ({ lang, words, trap }) => {
    await fonts.load([lang]);
    const runs = [run(`${words} (`), run(trap, { isolate: 'ltr' }), run(') iron')];
    const form = { paper: 'A4', size: 'compact' } as const;
    const laid = layOut(
      letter([{ kind: 'paragraph', look: 'body', runs }], {
        lang,
        dir: 'rtl',
        header: null,
        footer: null,
      }),
      form,
      fonts,
    );
    if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
    const text = `${words} (\u2066${trap}\u2069) iron`;
    const bidi = (bidiFactory as unknown as typeof bidiFactory.default)();
    const order = bidi.getReorderedIndices(text, bidi.getEmbeddingLevels(text, 'rtl'));
    const outside = paintedText(order.map((at) => text.charAt(at)).join(''));
    const own = laid.value.pages
      .flatMap((page) => page.ink)
      .filter((ink) => ink.kind === 'text')
      .sort((a, b) => a.x - b.x)
      .flatMap(({ glyphs }) => glyphs.map((glyph) => glyph.text))
      .join('');
    expect(squeezed(own)).toBe(squeezed(outside));
  });
});

/** Spaces, joiners and what stands for no text of its own aside; ligatures one by one. */
function squeezed(text: string): string {
  return text.replace(/[\s\u200B]/g, '');
}
