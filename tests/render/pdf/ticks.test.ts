// Boxes to tick and signs beside words: drawn where reading begins, outside the reading order, and the list stays a list.
import { beforeAll, describe, expect, it } from 'vitest';
import type { Block } from '../../../src/render/block.js';
import { drawPdf, type Fonts, layOut } from '../../../src/render/pdf/index.js';
import type { Ground, PlacedLetter } from '../../../src/render/pdf/placed.js';
import { nodesOf, readPdf, textOf } from './read-back.js';
import { a4, facts, letter, paragraph, run, testFonts } from './sample.js';
import { uaFaults } from './ua.js';

let fonts: Fonts;
beforeAll(async () => {
  fonts = await testFonts();
  await fonts.load(['en', 'ar']);
});

const words = ['Come and talk with us.', 'Have one more blood test.'];
const own: Block = { kind: 'notice', look: 'plain', blocks: [paragraph('Bring your tablets.')] };
const steps: Block = {
  kind: 'list',
  ordered: false,
  ticks: true,
  items: words.map((text, nth) => [
    {
      kind: 'section',
      lang: null,
      dir: null,
      keep: false,
      sign: 'phone',
      blocks: nth === 0 ? [paragraph(text)] : [paragraph(text), own],
    },
  ]),
};
const inArabic = { lang: 'ar', dir: 'rtl' } as const;

function placed(of: typeof inArabic | object = {}): PlacedLetter {
  const made = layOut(letter([steps], of), a4, fonts);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

function groundsOf(of: PlacedLetter, kind: Ground['kind'], widest = 40) {
  return of.pages
    .flatMap(({ grounds }) => grounds)
    .flatMap((one) => (one.kind === kind && 'height' in one && one.width < widest ? [one] : []));
}

async function bytesOf(of: object = {}): Promise<Uint8Array> {
  const made = await drawPdf(letter([steps], of), a4, fonts, facts);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

describe('a list to tick', () => {
  // ISO 32000-1, 14.8.4.3.3: a list item holds a body, and a label only where one is drawn as text.
  it('is a list of items with a body and no label', async () => {
    const pdf = readPdf(await bytesOf());
    const nodes = nodesOf(pdf.tree);
    const items = nodes.filter(({ role }) => role === 'LI');
    expect(
      items.map(({ children }) => children.map((one) => ('role' in one ? one.role : ''))),
    ).toEqual([['LBody'], ['LBody']]);
    expect(nodes.some(({ role }) => role === 'Figure')).toBe(false);
    expect(items.map((item) => textOf(item, pdf))).toEqual([
      words[0],
      `${words[1]}Bring your tablets.`,
    ]);
  });

  // ISO 14289-1, 7.1: what is no real content is an artifact.
  it.each([{}, inArabic])('satisfies the checkable clauses of PDF/UA-1', async (of) => {
    expect(uaFaults(await bytesOf(of))).toEqual([]);
  });

  it('has a box and a sign for each item, from where reading begins, and words after them', () => {
    for (const of of [{}, inArabic]) {
      const made = placed(of);
      const [boxes, signs] = [groundsOf(made, 'box'), groundsOf(made, 'sign')];
      expect([boxes.length, signs.length]).toEqual([2, 2]);
      const towards = 'dir' in of ? -1 : 1;
      const texts = made.pages.flatMap(({ ink }) =>
        ink.flatMap((one) => (one.kind === 'text' ? [one] : [])),
      );
      const edge = (of: { x: number; width: number }, side: 'near' | 'far') =>
        (side === 'near') === (towards === 1) ? of.x : of.x + of.width;
      boxes.forEach((box, nth) => {
        const sign = signs[nth];
        const line = texts[0];
        if (sign === undefined || line === undefined) throw new Error('nothing beside the box');
        expect((edge(sign, 'near') - edge(box, 'far')) * towards).toBeGreaterThan(0);
        expect((edge(line, 'near') - edge(sign, 'far')) * towards).toBeGreaterThan(0);
      });
    }
  });

  // Common practice in typesetting, no source: a mark in the margin is centred on its line, not on its paragraph.
  it('stands on the first line of its item', () => {
    const made = placed();
    const lines = made.pages.flatMap(({ ink }) =>
      ink.flatMap((one) => (one.kind === 'text' ? [one] : [])),
    );
    for (const ground of [...groundsOf(made, 'box'), ...groundsOf(made, 'sign')]) {
      const middle = ground.y + ground.height / 2;
      expect(lines.some(({ y, size }) => middle < y && middle > y - size)).toBe(true);
    }
  });
});

describe('columns that open with lines of two sizes', () => {
  it('stand on one base line', () => {
    const [first, second] = [
      { kind: 'heading', level: 2, runs: [run('What you need to do')] } as const,
      paragraph('Tick its box.', 'small'),
    ];
    const made = layOut(letter([{ kind: 'pair', first, second }]), a4, fonts);
    const lines = made.ok
      ? made.value.pages.flatMap(({ ink }) => ink.flatMap((one) => ('size' in one ? [one.y] : [])))
      : [];
    expect(new Set(lines.map((y) => y.toFixed(6))).size).toBe(1);
    expect(lines.length).toBeGreaterThan(1);
  });
});
