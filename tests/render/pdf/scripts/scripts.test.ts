// Sentences of every script go in; glyphs are held to HarfBuzz alone, extracted text to pdfjs-dist (both outside readers).
import { readFileSync } from 'node:fs';
import { Blob, Direction, Face, Font, Buffer as ShapeBuffer, shape } from 'harfbuzzjs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Block, Run } from '../../../../src/render/block.js';
import { drawPdf, type Fonts, faceFiles, layOut } from '../../../../src/render/pdf/index.js';
import { collisions, inkBoxes } from '../ink-boxes.js';
import { pdfjsText } from '../pdfjs-text.js';
import { facts, letter, run, testFonts } from '../sample.js';
import { uaFaults } from '../ua.js';
import { type Sample, samples, traps } from './sentences.js';
import { sharedInOrder } from './shared-in-order.js';

let fonts: Fonts;

beforeAll(async () => {
  fonts = await testFonts();
});

const form = { paper: 'A4', size: 'compact' } as const;

function body(runs: readonly Run[]): Block {
  return { kind: 'paragraph', look: 'body', runs };
}

function document({ lang, dir }: Sample, blocks: readonly Block[]) {
  return letter(blocks, { lang, dir, header: null, footer: null });
}

/** Glyph and pen position from the left edge, thousandths of an em. */
type Spot = { readonly id: number; readonly x: number; readonly y: number };

async function placed(sample: Sample, text: string): Promise<readonly Spot[]> {
  await fonts.load([sample.lang]);
  const laid = layOut(document(sample, [body([run(text)])]), form, fonts);
  if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
  const ink = laid.value.pages.flatMap((page) => page.ink).filter((one) => one.kind === 'text');
  expect(new Set(ink.map(({ y }) => y)).size).toBe(1);
  const spots = [...ink]
    .sort((a, b) => a.x - b.x)
    .flatMap(({ x, size, glyphs }) => {
      let pen = (x * 1000) / size;
      return glyphs.map(({ id, advance, dx, dy }) => {
        const spot = { id, x: pen + dx, y: dy };
        pen += advance;
        return spot;
      });
    });
  return fromLeft(spots);
}

function fromLeft(spots: readonly Spot[]): readonly Spot[] {
  const first = spots[0]?.x ?? 0;
  return spots.map(({ id, x, y }) => ({ id, x: x - first, y }));
}

const opened = new Map<string, { readonly font: Font; readonly perEm: number }>();

function outsideFont(file: string) {
  const known = opened.get(file);
  if (known !== undefined) return known;
  const row = faceFiles.find((one) => one.file === `${file}-Regular.ttf`);
  if (row === undefined) throw new Error(`No face ${file}`);
  const face = new Face(new Blob(readFileSync(`node_modules/${row.package}/${row.path}`)));
  const font = { font: new Font(face), perEm: face.upem };
  opened.set(file, font);
  return font;
}

/** The whole sentence in one go, but for signs of basic Latin, which stand in the Latin face left to right. */
function shapedOutside(sample: Sample, text: string): readonly Spot[] {
  const parts = sample.dir === 'rtl' ? [text] : text.split(/([!-~]+)/).filter((one) => one !== '');
  let pen = 0;
  const spots = parts.flatMap((part) => {
    const { font, perEm } = outsideFont(/^[!-~]/.test(part) ? 'NotoSans' : sample.file);
    const buffer = new ShapeBuffer();
    buffer.addText(part);
    buffer.guessSegmentProperties();
    buffer.setDirection(sample.dir === 'rtl' ? Direction.RTL : Direction.LTR);
    buffer.setLanguage(sample.lang);
    shape(font, buffer);
    return buffer.getGlyphInfosAndPositions().map((glyph) => {
      const em = 1000 / perEm;
      const spot = {
        id: glyph.codepoint,
        x: pen + (glyph.xOffset ?? 0) * em,
        y: (glyph.yOffset ?? 0) * em,
      };
      pen += (glyph.xAdvance ?? 0) * em;
      return spot;
    });
  });
  return fromLeft(spots);
}

describe.each(samples)('$lang in $file', (sample) => {
  const { dir, sentences, share } = sample;

  it.each(sentences)('is shaped and placed as HarfBuzz does: %s', async (sentence) => {
    const own = await placed(sample, sentence);
    const outside = shapedOutside(sample, sentence);
    expect(own.map(({ id }) => id)).toEqual(outside.map(({ id }) => id));
    for (const [at, spot] of own.entries()) {
      expect(Math.abs(spot.x - (outside[at]?.x ?? 0)), `glyph ${at}`).toBeLessThan(1);
      expect(spot.y).toBeCloseTo(outside[at]?.y ?? 0, 6);
    }
  });

  it('lacks no glyph and reads back in order, with every number as it was', async () => {
    const words = sentences.map((sentence) => body([run(sentence)]));
    const numbers = traps.map((trap) =>
      body([run(`${sentences[0]} `), run(trap, { isolate: 'ltr' }), run(` ${sentences[1]}`)]),
    );
    const made = await drawPdf(document(sample, [...words, ...numbers]), form, fonts, facts);
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    const read = squeezed(await pdfjsText(made.value));
    const source = [...sentences, ...traps.map((trap) => `${sentences[0]}${trap}${sentences[1]}`)];
    const written = squeezed(source.join(''));
    if (dir === 'ltr') expect(read).toBe(written);
    else expect(sharedInOrder(written, read)).toBeGreaterThanOrEqual(share);
    for (const trap of traps) expect(read).toContain(squeezed(trap));
    expect(uaFaults(made.value)).toEqual([]);
  });
});

describe.each(samples)('lines of $lang in $file', (sample) => {
  it.each(['standard', 'extra-large'] as const)(
    'stand clear of each other in %s print',
    async (size) => {
      await fonts.load([sample.lang]);
      const { sentences } = sample;
      const text = [...sentences, ...[...sentences].reverse(), ...sentences].join(' ');
      const long = [run(`${text} ${text}`)];
      const blocks = [{ kind: 'heading', level: 1, runs: long } as const, body(long)];
      const laid = layOut(document(sample, blocks), { paper: 'A4', size }, fonts);
      if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
      for (const page of laid.value.pages)
        expect(collisions(inkBoxes(page, fonts), touchOf(sample.file))).toEqual([]);
    },
  );
});

/** Nastaliq slants: its boxes overlap where its ink does not. Looked at on paper at the leading of the table of look. */
function touchOf(file: string): number {
  return file === 'NotoNastaliqUrdu' ? 0.4 : 0.02;
}

/** Spaces aside, which extractors guess from gaps. */
function squeezed(text: string): string {
  return text.normalize('NFKC').replace(/[\s\u200B\u200C]/g, '');
}
