// A face and the glyphs drawn of it, by code, arrive; what a PDF embeds to explain them leaves: font, map, widths, text.
import { type Bounded, bounded } from '../../bounded.js';
import { type Packed, pack } from './canvas.js';
import type { FixedCodes } from './codes.js';
import type { Glyph, OpenFace } from './shape.js';
import { cutFont } from './subset.js';
import { toUnicode } from './to-unicode.js';

export type FontParts = {
  readonly name: string;
  readonly file: Packed;
  /** Bytes of the font file before it was packed. */
  readonly length: number;
  readonly map: Packed;
  readonly unicode: Packed;
  readonly widths: ReturnType<typeof widthsOf>;
};

/** Fonts of earlier documents by their codes: cutting and packing one costs as much as laying out its letter. */
const cutBefore = new WeakMap<OpenFace, Bounded<FontParts>>();
const mostCut = 100;

/** @param drawn glyphs by code; codes past the fixed ones are of one document alone. */
export function fontParts(
  face: OpenFace,
  fixed: FixedCodes,
  drawn: ReadonlyMap<number, Glyph>,
): FontParts {
  const all = new Map([...drawn, ...plainLetters(face, fixed, drawn)]);
  const before = cutBefore.get(face) ?? bounded<FontParts>(mostCut);
  cutBefore.set(face, before);
  const codes = Uint16Array.from(all.keys()).sort();
  // A code of this document alone, such as a ligature's, may stand for something else in the next.
  const own = [...drawn].flatMap(([code, { id, text }]) =>
    code > fixed.count ? [`${code}=${id} ${text}`] : [],
  );
  const key = [codes.join(' '), ...own].join(' ');
  const known = before.get(key);
  if (known !== undefined) return known;
  const parts = cutParts(
    face,
    [...all].sort(([a], [b]) => a - b),
  );
  before.set(key, parts);
  return parts;
}

/**
 * A document with many letters from A to z gets all of them, and digits and signs: then most letters of an evening
 * have one font in common, whatever the names in them.
 */
function plainLetters(
  face: OpenFace,
  fixed: FixedCodes,
  drawn: ReadonlyMap<number, Glyph>,
): ReadonlyMap<number, Glyph> {
  const all = lettersOf(face, fixed);
  const count = [...all.keys()].filter((code) => drawn.has(code)).length;
  return count < manyLetters ? new Map() : all;
}

const manyLetters = 24;
const plain = Array.from({ length: 0x7f - 0x20 }, (_, at) => 0x20 + at);
const letters = new WeakMap<OpenFace, ReadonlyMap<number, Glyph>>();

function lettersOf(face: OpenFace, fixed: FixedCodes): ReadonlyMap<number, Glyph> {
  const known = letters.get(face);
  if (known !== undefined) return known;
  const all = new Map<number, Glyph>();
  for (const point of plain) {
    const id = face.font.nominalGlyph(point);
    if (id === undefined || id === 0) continue;
    const natural = face.font.glyphHAdvance(id) * (1000 / face.perEm);
    const glyph = {
      id,
      text: String.fromCodePoint(point),
      advance: natural,
      natural,
      dx: 0,
      dy: 0,
    };
    const code = fixed.codeOf(glyph);
    if (code !== null) all.set(code, glyph);
  }
  letters.set(face, all);
  return all;
}

function cutParts(face: OpenFace, cast: Cast): FontParts {
  const { bytes, numbers } = cutFont(
    face.bytes,
    cast.map(([, glyph]) => glyph.id),
  );
  const [highest = 0] = cast.at(-1) ?? [];
  const map = new Uint8Array(2 * (highest + 1));
  for (const [code, { id }] of cast) {
    const number = numbers.get(id) ?? 0;
    map[2 * code] = number >> 8;
    map[2 * code + 1] = number & 0xff;
  }
  return {
    name: subsetName(face, cast),
    file: pack(bytes),
    length: bytes.length,
    map: pack(map),
    unicode: pack(new TextEncoder().encode(toUnicode(cast))),
    widths: widthsOf(cast),
  };
}

type Cast = readonly (readonly [code: number, glyph: Glyph])[];

/** ISO 32000-1, 9.7.4.3: the first code of a stretch, then the widths of the stretch. */
function widthsOf(cast: Cast): readonly (number | number[])[] {
  const out: (number | number[])[] = [];
  let stretch: number[] = [];
  let next = -1;
  for (const [code, { natural }] of cast) {
    if (code !== next) {
      stretch = [];
      out.push(code, stretch);
    }
    stretch.push(Math.round(natural * 1000) / 1000);
    next = code + 1;
  }
  return out;
}

/** ISO 32000-1, 9.6.4: six letters say that a font is a subset; the same subset has the same ones. */
function subsetName(face: OpenFace, cast: Cast): string {
  let hash = 0;
  for (const [code, { id }] of cast) hash = (hash * 31 + code * 7 + id) % 308_915_776;
  const letters = Array.from({ length: 6 }, (_, at) =>
    String.fromCharCode(65 + (Math.floor(hash / 26 ** at) % 26)),
  );
  return `${letters.join('')}+${face.file.replace(/\.[^.]*$/, '')}`;
}
