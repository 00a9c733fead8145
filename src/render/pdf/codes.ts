// A face arrives; the character code that each of its glyphs has in every document leaves.
import type { Glyph, OpenFace } from './shape.js';

/** Codes that depend on the face alone, so that a line written out once serves every later document. */
export type FixedCodes = {
  /** Null for a glyph that stands for other text than one character of the face: a ligature, a joined form. */
  readonly codeOf: (glyph: Glyph) => number | null;
  readonly count: number;
};

const known = new WeakMap<OpenFace, FixedCodes>();

/**
 * Numbers a face's characters from 1 in the order of Unicode, each with the glyph the face has for it.
 * @example fixedCodes(notoSans).codeOf(glyphOfSpace) // 1
 */
export function fixedCodes(face: OpenFace): FixedCodes {
  const ready = known.get(face);
  if (ready !== undefined) return ready;
  const codes = new Map<string, number>();
  for (const point of face.points) {
    const id = face.font.nominalGlyph(point);
    if (id !== undefined && id !== 0 && point >= space && codes.size < mostFixed) {
      codes.set(`${id} ${String.fromCodePoint(point)}`, codes.size + 1);
    }
  }
  const found = new WeakMap<Glyph, number>();
  const fixed: FixedCodes = {
    count: codes.size,
    codeOf: (glyph) => {
      const quick = found.get(glyph);
      if (quick !== undefined) return quick === 0 ? null : quick;
      const code = codes.get(`${glyph.id} ${glyph.text}`) ?? 0;
      found.set(glyph, code);
      return code === 0 ? null : code;
    },
  };
  known.set(face, fixed);
  return fixed;
}

const space = 0x20;
/** Leaves codes for ligatures and joined forms. */
const mostFixed = 0xe000;
