// Letters in every language are drawn; glyphs are held to HarfBuzz alone, extracted text to pdfjs-dist, values to the laboratory's bytes.
import { readFileSync } from 'node:fs';
import { Blob, Direction, Face, Font, Buffer as ShapeBuffer, shape } from 'harfbuzzjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { composeLetter, type Language } from '../../src/letter/index.js';
import type { LetterDocument, PageForm } from '../../src/render/block.js';
import { writeHtml } from '../../src/render/html.js';
import { pairDocuments } from '../../src/render/pair-documents.js';
import { drawPdf, type Fonts, faceFiles } from '../../src/render/pdf/index.js';
import { composeParagraph } from '../../src/render/pdf/paragraph.js';
import { writeText } from '../../src/render/text.js';
import { english, graded, letterOf } from '../letter/fixtures.js';
import { documentOf } from '../render/fixture.js';
import { pdfjsText } from '../render/pdf/pdfjs-text.js';
import { facts, letter, run, testFonts } from '../render/pdf/sample.js';
import { sharedInOrder } from '../render/pdf/scripts/shared-in-order.js';
import { languageFilesOf, languageOf, translatedTags } from './folders.js';

let fonts: Fonts;

beforeAll(async () => {
  fonts = await testFonts();
});

/** As laboratories write them: comparators, decimal commas, dashes and spaces of every kind. */
const copied = [
  ['haemoglobin', '10.4', 'g/dL', '11.5 - 15.5', 'a-little-below', 'low'],
  ['ferritin', '<5', 'µg/L', '30–400', 'well-below', 'low'],
  ['transferrin-saturation', '6', '%', '16-50', 'well-below', 'low'],
  ['mcv', '74,2', 'fL', '80 – 100', 'a-little-below', 'low'],
] as const;
const results = copied.map(graded);
const tablets = {
  dose: null,
  points: ['empty-stomach-with-water', 'tar-like-stool-is-not'] as const,
  gaps: [{ medicine: 'levothyroxine' as const, hours: 4, rule: 'none' }],
};

function letterIn(language: Language): LetterDocument {
  const pattern = 'iron-deficiency-anaemia';
  const made = composeLetter(letterOf({ pattern, results, language, advice: { tablets } }));
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return documentOf(made.value);
}

async function drawn(document: LetterDocument, size: PageForm['size']): Promise<Uint8Array> {
  const made = await drawPdf(document, { paper: 'A4', size }, fonts, facts);
  // A character without a glyph would be a problem here.
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

const squeezed = (text: string): string =>
  text.normalize('NFKC').replace(/[\s\u200B\u200C\u2066-\u2069]/g, '');

/** Texts of the letter without their variables, such as stand on paper. */
function textsOf(tag: string): readonly string[] {
  const { letter: messages } = languageFilesOf(tag) as { letter: Record<string, string> };
  return [...new Set(Object.values(messages))]
    .filter((text) => !text.includes('{'))
    .filter((text) => text.length > 3);
}

type Outside = { readonly font: Font; readonly covers: ReadonlySet<number> };
const opened = new Map<string, Outside>();

/** The whole face from its package, opened by HarfBuzz alone. */
function outsideFont(file: string): Outside {
  const known = opened.get(file);
  if (known !== undefined) return known;
  const row = faceFiles.find((one) => one.file === file);
  if (row === undefined) throw new Error(`No face ${file}`);
  const face = new Face(new Blob(readFileSync(`node_modules/${row.package}/${row.path}`)));
  const made = { font: new Font(face), covers: new Set(face.collectUnicodes()) };
  opened.set(file, made);
  return made;
}

const plainLatin = /[\x21-\x7E\u00B0-\u00B5\u00D7\u2010-\u2013\u2212\u2264\u2265]/;
const latin = 'NotoSans-Regular.ttf';

/** Parts of one face each: basic Latin in the Latin face, the rest in the language's own where it can. */
function partsOf(text: string, own: string): readonly (readonly [string, string])[] {
  const parts: [string, string][] = [];
  for (const character of text) {
    const last = parts.at(-1);
    const joins = /[\s\p{M}\u200C\u200D]/u.test(character);
    const held = outsideFont(own).covers.has(character.codePointAt(0) ?? 0);
    const file = plainLatin.test(character) || !held ? latin : own;
    if (last !== undefined && (joins || last[0] === file)) last[1] += character;
    else parts.push([file, character]);
  }
  return parts;
}

function idsOutside(text: string, file: string, rtl: boolean, lang: string): readonly number[] {
  const buffer = new ShapeBuffer();
  buffer.addText(text);
  buffer.guessSegmentProperties();
  buffer.setDirection(rtl ? Direction.RTL : Direction.LTR);
  buffer.setLanguage(lang);
  shape(outsideFont(file).font, buffer);
  return buffer.getGlyphInfosAndPositions().map(({ codepoint }) => codepoint);
}

function idsOwn(text: string, { tag, dir }: Language): readonly number[] {
  const { units } = composeParagraph([run(text)], { lang: tag, dir, strong: false }, fonts);
  const pieces = units.flatMap(({ pieces: inked, spaces }) => [...inked, ...spaces]);
  const ordered = dir === 'rtl' ? pieces.reverse() : pieces;
  return ordered.flatMap(({ shaped }) => shaped.glyphs.map(({ id }) => id));
}

/** Right to left, what pdfjs gives back in order: the shares measured for these faces, less one in a hundred. */
const shares: Readonly<Record<string, number>> = { ar: 0.97, fa: 0.97, ur: 0.9 };

describe.each(translatedTags)('%s', (tag) => {
  const language = languageOf(tag);

  it('is drawn as a letter, side by side with English and in large print, no glyph missing', async () => {
    const own = letterIn(language);
    const pair = pairDocuments(own, letterIn(english));
    if (!pair.ok) throw new Error(JSON.stringify(pair.problems));
    for (const [document, size] of [
      [own, 'large'],
      [pair.value, 'standard'],
    ] as const)
      expect((await drawn(document, size)).length).toBeGreaterThan(10_000);
    // Two sheets at most, light enough for any post box of the electronic kind: our own limits, no source.
    const usual = await drawn(own, 'standard');
    expect(
      Buffer.from(usual)
        .toString('latin1')
        .match(/\/Type \/Page\n/g)?.length,
    ).toBeLessThan(5);
    expect(usual.length).toBeLessThan(150_000);
  });

  it('copies every value, unit and interval byte for byte into HTML, text and PDF', async () => {
    const document = letterIn(language);
    const html = writeHtml(document, { paper: 'A4', size: 'standard' });
    const text = writeText(document).replace(/[\u2066-\u2069]/g, '');
    const pdf = squeezed(await pdfjsText(await drawn(document, 'standard')));
    const words = html
      .replace(/<[^>]*>/g, '')
      .replaceAll('\u00A0', ' ')
      .replaceAll('&lt;', '<');
    for (const [, value, unit, interval] of copied) {
      for (const string of [`${value} ${unit}`, interval]) {
        expect(words).toContain(string);
        expect(text.replaceAll('\u00A0', ' ')).toContain(string);
      }
      expect(pdf).toContain(squeezed(`${value} ${unit}`));
    }
  });

  it('is shaped as HarfBuzz shapes each whole sentence', async () => {
    await fonts.load([tag]);
    const rtl = language.dir === 'rtl';
    const family = fonts.families(tag)[0];
    if (family === undefined) throw new Error('no face');
    const texts = textsOf(tag).filter((text) => !rtl || !/[A-Za-z0-9(]/.test(text));
    expect(texts.length).toBeGreaterThan(200);
    // Nastaliq adds glyphs that only space words apart; lines are broken between words, so words are compared.
    const pieces = tag === 'ur' ? [...new Set(texts.flatMap((text) => text.split(' ')))] : texts;
    for (const text of pieces) {
      const outside = rtl
        ? idsOutside(text, family.regular, true, tag)
        : partsOf(text, family.regular).flatMap(([file, part]) =>
            idsOutside(part, file, false, tag),
          );
      expect(idsOwn(text, language), text).toEqual(outside);
    }
  });

  it('reads back from the PDF', async () => {
    const texts = textsOf(tag).slice(0, language.dir === 'rtl' ? 60 : 400);
    const blocks = texts.map((text) => ({
      kind: 'paragraph' as const,
      look: 'body' as const,
      runs: [run(text)],
    }));
    const { dir } = language;
    const page = letter(blocks, { lang: tag, dir, header: null, footer: null });
    const read = squeezed(await pdfjsText(await drawn(page, 'compact')));
    const written = squeezed(texts.join(''));
    const share = shares[tag];
    if (share === undefined) expect(read).toBe(written);
    else expect(sharedInOrder(written, read)).toBeGreaterThanOrEqual(share);
  });
});
