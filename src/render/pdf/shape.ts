// A stretch of text of one face and one direction arrives; HarfBuzz's glyphs leave, each with the text it stands for.
import { Blob, Buffer, Direction, Face, Font, shape } from 'harfbuzzjs';

/** Lengths in thousandths of an em. `natural` is the face's own advance, `advance` after kerning. */
export type Glyph = {
  readonly id: number;
  readonly text: string;
  readonly advance: number;
  readonly natural: number;
  readonly dx: number;
  readonly dy: number;
};

/** Glyphs from left to right. */
export type Shaped = { readonly glyphs: readonly Glyph[]; readonly width: number };

/** A font file, opened once. */
export type OpenFace = {
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly font: Font;
  readonly perEm: number;
  /** Above and below the base line, thousandths of an em, both positive. */
  readonly ascent: number;
  readonly descent: number;
  readonly covers: (codePoint: number) => boolean;
  /** Code points that the face holds, in the order of Unicode. */
  readonly points: readonly number[];
};

/** Second and later glyphs of a cluster stand for no text of their own. */
export const silent = '\u200B';

/** Opens one font file. */
export function openFace(file: string, bytes: Uint8Array): OpenFace {
  const face = new Face(new Blob(bytes));
  const font = new Font(face);
  const scale = 1000 / face.upem;
  const { ascender, descender } = font.hExtents();
  const covered = new Set(face.collectUnicodes());
  return {
    file,
    bytes,
    font,
    perEm: face.upem,
    ascent: ascender * scale,
    descent: -descender * scale,
    covers: (codePoint) => covered.has(codePoint),
    points: [...covered].sort((a, b) => a - b),
  };
}

let buffer: Buffer | null = null;

/**
 * Shapes text of one face, direction and language.
 * @returns glyphs from left to right; a glyph number 0 means that the face lacks the character.
 * @example shapeText(notoSans, 'fi', false, 'en').glyphs.map((glyph) => glyph.text) // ['f', 'i']
 */
export function shapeText(face: OpenFace, text: string, rtl: boolean, lang: string): Shaped {
  buffer ??= new Buffer();
  buffer.clearContents();
  buffer.addText(text);
  buffer.guessSegmentProperties();
  buffer.setDirection(rtl ? Direction.RTL : Direction.LTR);
  buffer.setLanguage(lang);
  shape(face.font, buffer);
  const scale = 1000 / face.perEm;
  const drawn = buffer.getGlyphInfosAndPositions().map((glyph) => ({
    id: glyph.codepoint,
    cluster: glyph.cluster,
    advance: (glyph.xAdvance ?? 0) * scale,
    natural: face.font.glyphHAdvance(glyph.codepoint) * scale,
    dx: (glyph.xOffset ?? 0) * scale,
    dy: (glyph.yOffset ?? 0) * scale,
  }));
  const texts = clusterTexts(text, drawn);
  const glyphs = drawn.map(({ cluster: _, ...glyph }, at) => ({
    ...glyph,
    text: texts[at] ?? silent,
  }));
  return { glyphs, width: glyphs.reduce((sum, glyph) => sum + glyph.advance, 0) };
}

/** The widest glyph of a cluster carries the cluster's text, so that a page reads back exactly. */
function clusterTexts(
  text: string,
  drawn: readonly { readonly cluster: number; readonly natural: number }[],
): readonly string[] {
  const starts = [...new Set(drawn.map((glyph) => glyph.cluster))].sort((a, b) => a - b);
  const widest = new Map<number, number>();
  drawn.forEach((glyph, at) => {
    const best = widest.get(glyph.cluster);
    if (best === undefined || glyph.natural > (drawn[best]?.natural ?? 0)) {
      widest.set(glyph.cluster, at);
    }
  });
  const texts = drawn.map(() => silent);
  starts.forEach((start, nth) => {
    const at = widest.get(start);
    if (at !== undefined) texts[at] = text.slice(start, starts[nth + 1] ?? text.length);
  });
  return texts;
}
