// A composed paragraph and a width arrive; lines leave, their pieces placed from the left and in reading order.
import type { Direction } from '../../direction.js';
import { visualOrder } from './bidi.js';
import type { Fonts } from './fonts.js';
import { graphemes, widthOf, type Paragraph, type Piece, type Unit } from './paragraph.js';
import { silent, type Glyph } from './shape.js';

/** Glyphs drawn in one go. `x` and `width` in thousandths of an em, from the left edge of the line's ink. */
type LinePiece = {
  readonly run: number;
  readonly file: string;
  readonly x: number;
  readonly width: number;
  readonly glyphs: readonly Glyph[];
};

/** `width` leaves out the spaces at the end, which are drawn past the edge so that words stay apart when read. */
export type Line = { readonly pieces: readonly LinePiece[]; readonly width: number };

const slack = 0.01;

/**
 * Breaks greedily: as many units on a line as fit; a unit wider than the line is broken between characters.
 * @param width in thousandths of an em.
 * @example breakLines(paragraph, Infinity, 'ltr', fonts).length // 1
 */
export function breakLines(
  paragraph: Paragraph,
  width: number,
  dir: Direction,
  fonts: Fonts,
): readonly Line[] {
  const key = `${dir} ${width}`;
  const known = broken.get(paragraph) ?? new Map<string, readonly Line[]>();
  broken.set(paragraph, known);
  const lines = known.get(key) ?? breakAnew(paragraph, width, dir, fonts);
  known.set(key, lines);
  return lines;
}

/** Lines live as long as their paragraph, whose number is bounded. */
const broken = new WeakMap<Paragraph, Map<string, readonly Line[]>>();

function breakAnew(
  paragraph: Paragraph,
  width: number,
  dir: Direction,
  fonts: Fonts,
): readonly Line[] {
  const lines: Unit[][] = [];
  let units: Unit[] = [];
  let used = 0;
  const end = () => {
    lines.push(units);
    units = [];
    used = 0;
  };
  const add = (unit: Unit) => {
    if (units.length > 0 && used + unit.width > width + slack) end();
    units.push(unit);
    used += unit.width + unit.spaceWidth;
    if (unit.must) end();
  };
  for (const unit of paragraph.units) {
    if (unit.width > width + slack) for (const part of apart(unit, fonts)) add(part);
    else add(unit);
  }
  if (units.length > 0) end();
  accompany(lines, width);
  return lines.map((line) => placeLine(line, dir));
}

/** A last line this short, as a share of the width, looks lost. */
const shortLast = 0.2;

/** One short word alone on the last line gets company from the line before. */
function accompany(lines: readonly Unit[][], width: number): void {
  const last = lines.at(-1);
  const before = lines.at(-2);
  const [only, second] = last ?? [];
  if (last === undefined || before === undefined || only === undefined) return;
  if (second !== undefined || only.width > width * shortLast || before.length < 4) return;
  const moves = before.at(-1);
  // Between parts of one broken word stands no space.
  if (moves === undefined || moves.must || moves.spaceWidth === 0) return;
  before.pop();
  last.unshift(moves);
}

/** Widest unit: what the narrowest column must hold. Thousandths of an em. */
export function narrowest(paragraph: Paragraph): number {
  return Math.max(0, ...paragraph.units.map((unit) => unit.width));
}

/** Width when nothing breaks, thousandths of an em. */
export function unbroken(paragraph: Paragraph): number {
  const last = paragraph.units.at(-1);
  const all = paragraph.units.reduce((sum, unit) => sum + unit.width + unit.spaceWidth, 0);
  return all - (last?.spaceWidth ?? 0);
}

function apart(unit: Unit, fonts: Fonts): readonly Unit[] {
  const parts = unit.pieces.flatMap((piece) =>
    Array.from(graphemes(piece.text), ({ segment }): Unit => {
      const face = fonts.faceOfFile(piece.file);
      const shaped = fonts.shape(face, segment, piece.level % 2 === 1, piece.lang);
      const one = { ...piece, text: segment, shaped };
      return { pieces: [one], spaces: [], width: shaped.width, spaceWidth: 0, must: false };
    }),
  );
  const last = parts.pop();
  if (last === undefined) return [unit];
  const { spaces, spaceWidth, must } = unit;
  return [...parts, { ...last, spaces, spaceWidth, must }];
}

function placeLine(units: readonly Unit[], dir: Direction): Line {
  const base = dir === 'rtl' ? 1 : 0;
  const last = units.at(-1);
  const pieces = units.flatMap((unit) => [...unit.pieces, ...unit.spaces]);
  const trailing = last?.spaces.length ?? 0;
  const kept = pieces.length - trailing;
  // Rule L1: spaces at the end of a line take the paragraph's own level.
  const levels = pieces.map((piece, at) => (at < kept ? piece.level : base));
  const lefts = new Array<number>(pieces.length).fill(0);
  let x = dir === 'rtl' ? -(last?.spaceWidth ?? 0) : 0;
  for (const at of visualOrder(levels)) {
    lefts[at] = x;
    x += pieces[at]?.shaped.width ?? 0;
  }
  return { pieces: joined(pieces, levels, lefts), width: widthOf(pieces.slice(0, kept)) };
}

type Growing = { run: number; file: string; x: number; width: number; glyphs: Glyph[] };

/**
 * Left-to-right neighbours of one run and face become one piece. Right-to-left words stay apart, in reading
 * order, each with the space that follows it, and signs between them one by one: so readers that turn each
 * word round find every word, space and bracket in its place.
 */
function joined(
  pieces: readonly Piece[],
  levels: readonly number[],
  lefts: readonly number[],
): readonly LinePiece[] {
  const out: Growing[] = [];
  let before = -1;
  pieces.forEach((piece, at) => {
    const level = levels[at] ?? 0;
    const x = lefts[at] ?? 0;
    const last = out.at(-1);
    const { run, file, shaped } = piece;
    const { glyphs, width } = shaped;
    const alike = last !== undefined && before === level && last.run === run && last.file === file;
    if (alike && level % 2 === 0 && Math.abs(last.x + last.width - x) < slack) {
      last.glyphs.push(...glyphs);
      last.width += width;
    } else if (alike && level % 2 === 1 && isSpace(piece) && Math.abs(x + width - last.x) < slack) {
      last.glyphs.unshift(...glyphs);
      last.width += width;
      last.x = x;
    } else if (level % 2 === 1 && standsApart(piece)) {
      out.push(...oneByOne(piece, x));
    } else out.push({ run, file, x, width, glyphs: [...glyphs] });
    before = level;
  });
  return out;
}

function isSpace(piece: Piece): boolean {
  return piece.text.trim() === '';
}

/** Signs between words; and words whose letters climb (Nastaliq), which readers take for lines of their own. */
function standsApart({ text, shaped }: Piece): boolean {
  return !/[\p{L}\p{M}\p{N}]/u.test(text) || shaped.glyphs.some(climbs);
}

/** Marks have no width and move freely; a letter off the base line climbs. */
function climbs(glyph: Glyph): boolean {
  return glyph.natural > 0 && Math.abs(glyph.dy) > lowClimb;
}

const lowClimb = 100;

/** Glyphs stand from left to right; reading order is the other way, each letter with the marks before it. */
function oneByOne({ run, file, shaped }: Piece, x: number): readonly Growing[] {
  const letters: Growing[] = [];
  let glyphs: Glyph[] = [];
  let left = x;
  let width = 0;
  for (const glyph of shaped.glyphs) {
    glyphs.push(glyph);
    width += glyph.advance;
    if (glyph.text === silent) continue;
    letters.push({ run, file, x: left, width, glyphs });
    left += width;
    glyphs = [];
    width = 0;
  }
  letters.at(-1)?.glyphs.push(...glyphs);
  return letters.reverse();
}
