// Glyphs to be drawn arrive; character codes leave, and at the end the Type 0 fonts that explain them.
import { type Canvas, packedStream, type Reference } from './canvas.js';
import { type FixedCodes, fixedCodes } from './codes.js';
import { fontParts } from './font-parts.js';
import type { Fonts } from './fonts.js';
import type { Glyph, OpenFace } from './shape.js';
import { hex4 } from './to-unicode.js';

/** The faces of one open document. */
export type Typecase = {
  /** Registers the face on the current page; its name in content streams. */
  readonly use: (file: string) => string;
  /** The operand of TJ for a row of glyphs; `rise` operators stand between rows of different height. */
  readonly show: (file: string, glyphs: readonly Glyph[], size: number) => string;
  /** Writes the fonts; nothing more can be drawn. */
  readonly close: () => void;
};

/** One face in one document: a code for each pair of glyph and the text it stands for. */
type Sort = {
  readonly name: string;
  readonly face: OpenFace;
  readonly font: Reference;
  readonly fixed: FixedCodes;
  /** What was drawn, by code. */
  readonly cast: Map<number, Glyph>;
  /** Codes given in this document, after the fixed ones. */
  readonly own: Map<string, number>;
  /** Rows of this document whose glyphs are in the cast. */
  readonly rows: WeakSet<Row>;
};

/** A row written out with fixed codes alone, and whom to call for it. */
type Row = { readonly shown: string; readonly cast: ReadonlyMap<number, Glyph> };

/** Rows live as long as their lines, and those as long as their paragraphs, whose number is bounded. */
const written = new WeakMap<readonly Glyph[], Row>();

const mostCodes = 0xffff;

/**
 * Opens an empty type case on a document.
 * @throws when one face needs more than 65,535 codes.
 */
export function openTypecase(canvas: Canvas, fonts: Fonts): Typecase {
  const sorts = new Map<string, Sort>();
  const sortOf = (file: string): Sort => {
    const known = sorts.get(file);
    if (known !== undefined) return known;
    const face = fonts.faceOfFile(file);
    const sort: Sort = {
      name: `F${sorts.size + 1}`,
      face,
      font: canvas.ref({}),
      fixed: fixedCodes(face),
      cast: new Map(),
      own: new Map(),
      rows: new WeakSet(),
    };
    sorts.set(file, sort);
    return sort;
  };
  return {
    use: (file) => {
      const sort = sortOf(file);
      canvas.page.fonts[sort.name] ??= sort.font;
      return sort.name;
    },
    show: (file, glyphs, size) => {
      const sort = sortOf(file);
      const row = written.get(glyphs) ?? rowOf(sort, glyphs);
      if (row === null) return showGlyphs(sort, glyphs, size);
      if (!sort.rows.has(row)) {
        for (const [code, glyph] of row.cast) sort.cast.set(code, glyph);
        sort.rows.add(row);
      }
      return row.shown;
    },
    close: () => {
      for (const sort of sorts.values()) writeFont(sort, canvas);
    },
  };
}

/** Null where a glyph has no fixed code, or is lifted: then the operand depends on the document or the size. */
function rowOf(sort: Sort, glyphs: readonly Glyph[]): Row | null {
  const cast = new Map<number, Glyph>();
  for (const glyph of glyphs) {
    const code = sort.fixed.codeOf(glyph);
    if (code === null || glyph.dy !== 0) return null;
    cast.set(code, glyph);
  }
  const row = { shown: showGlyphs(sort, glyphs, 1), cast };
  written.set(glyphs, row);
  return row;
}

function codeOf(sort: Sort, glyph: Glyph): number {
  const code = sort.fixed.codeOf(glyph) ?? ownCode(sort, glyph);
  sort.cast.set(code, glyph);
  return code;
}

function ownCode(sort: Sort, glyph: Glyph): number {
  const key = `${glyph.id} ${glyph.text}`;
  const known = sort.own.get(key);
  if (known !== undefined) return known;
  const code = sort.fixed.count + sort.own.size + 1;
  if (code > mostCodes) throw new Error('One face needs more codes than there are');
  sort.own.set(key, code);
  return code;
}

/** ISO 32000-1, 7.3.4: a string of characters is half as long as one of digits, but only ASCII passes everywhere. */
function stringOf(codes: readonly number[]): string {
  if (codes.some((code) => code > 0x7f)) return `<${codes.map(hex4).join('')}>`;
  const characters = codes.map((code) => `\0${String.fromCharCode(code)}`).join('');
  return `(${characters.replace(/[()\\]/g, '\\$&').replaceAll('\r', '\\r')})`;
}

/** ISO 32000-1, 9.4.3: numbers in TJ move back by thousandths of an em; Ts lifts marks off the base line. */
function showGlyphs(sort: Sort, glyphs: readonly Glyph[], size: number): string {
  const out: string[] = [];
  let codes: number[] = [];
  let row = '';
  let owed = 0;
  let rise = 0;
  const flush = () => {
    if (codes.length > 0) row += stringOf(codes);
    codes = [];
  };
  const endRow = () => {
    flush();
    if (row !== '') out.push(`[${row}] TJ`);
    row = '';
  };
  for (const glyph of glyphs) {
    if (glyph.dy !== rise) {
      endRow();
      rise = glyph.dy;
      out.push(`${short((rise * size) / 1000)} Ts`);
    }
    const shift = owed + glyph.dx;
    if (Math.abs(shift) > 0.05) {
      flush();
      row += short(-shift);
    }
    codes.push(codeOf(sort, glyph));
    owed = (Math.abs(shift) > 0.05 ? 0 : shift) + glyph.advance - glyph.natural - glyph.dx;
  }
  endRow();
  if (rise !== 0) out.push('0 Ts');
  return out.join('\n');
}

/** ISO 32000-1, 9.7: a composite font whose codes are glyph and text, found through CIDToGIDMap and ToUnicode. */
function writeFont(sort: Sort, canvas: Canvas): void {
  const { face } = sort;
  const { name, file, length, map, unicode, widths } = fontParts(sort.face, sort.fixed, sort.cast);
  const { ascent, descent } = face;
  const descriptor = canvas.ref({
    Type: 'FontDescriptor',
    FontName: name,
    Flags: 4,
    FontBBox: [-1000, -descent, 3000, ascent],
    ItalicAngle: 0,
    Ascent: ascent,
    Descent: -descent,
    CapHeight: ascent * 0.7,
    StemV: 80,
    FontFile2: packedStream(canvas, file, { Length1: length }),
  });
  descriptor.end();
  const descendant = canvas.ref({
    Type: 'Font',
    Subtype: 'CIDFontType2',
    BaseFont: name,
    CIDSystemInfo: {
      Registry: new String('Adobe'),
      Ordering: new String('Identity'),
      Supplement: 0,
    },
    FontDescriptor: descriptor,
    DW: 0,
    W: widths,
    CIDToGIDMap: packedStream(canvas, map, {}),
  });
  descendant.end();
  Object.assign(sort.font.data, {
    Type: 'Font',
    Subtype: 'Type0',
    BaseFont: name,
    Encoding: 'Identity-H',
    DescendantFonts: [descendant],
    ToUnicode: packedStream(canvas, unicode, {}),
  });
  sort.font.end();
}

/** Two decimals are 1/7200 inch. */
export function short(number: number): string {
  return String(Math.round(number * 100) / 100);
}
