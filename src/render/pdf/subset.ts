// A font file and the glyphs drawn arrive; a small font file with these glyphs alone leaves, and their new numbers.

/** A font cut down: its bytes, and by the number of each glyph in the whole font its number here. */
export type CutFont = {
  readonly bytes: Uint8Array;
  readonly numbers: ReadonlyMap<number, number>;
};

/**
 * Cuts a TrueType font down to some glyphs, the parts they are composed of and glyph 0, the box for what is missing.
 * Only the tables that a PDF asks of an embedded font are left (ISO 32000-1, 9.9): the letter is shaped already, and
 * a Type 0 font finds its glyphs by number. Our faces carry no hints. HarfBuzz can do this too, but its code for it
 * takes longer to start than a letter takes to draw.
 * Source: OpenType 1.9.1, chapters otff, glyf, head, hhea, hmtx, loca and maxp.
 * @param glyphs numbers from 0 to 65,535; a number that the font lacks is our bug.
 * @throws when the font is no TrueType font.
 * @example cutFont(notoSans, [36, 37]).numbers // Map { 0 => 0, 36 => 1, 37 => 2 }
 */
export function cutFont(font: Uint8Array, glyphs: Iterable<number>): CutFont {
  const whole = openTables(font);
  const kept = withParts(whole, glyphs);
  const numbers = new Map(kept.map((glyph, number) => [glyph, number]));
  const outlines = kept.map((glyph) => outlineOf(whole, glyph, numbers));
  const head = copyOf(whole.table('head'));
  head.setUint32(checksumAdjustment, 0);
  head.setInt16(locaFormat, longLoca);
  const hhea = copyOf(whole.table('hhea'));
  hhea.setUint16(metricsCount, kept.length);
  const maxp = copyOf(whole.table('maxp'));
  maxp.setUint16(glyphCount, kept.length);
  const bytes = joinTables({
    glyf: joined(outlines),
    head,
    hhea,
    hmtx: metricsOf(whole, kept),
    loca: locationsOf(outlines),
    maxp,
  });
  return { bytes, numbers };
}

// Places within the tables, by their chapters.
const checksumAdjustment = 8;
const locaFormat = 50;
const longLoca = 1;
const metricsCount = 34;
const glyphCount = 4;

type Whole = {
  readonly table: (tag: string) => DataView;
  /** Bytes of the outline of a glyph; none for a blank. */
  readonly outline: (glyph: number) => DataView;
};

function openTables(font: Uint8Array): Whole {
  const all = viewOf(font);
  const places = new Map<string, DataView>();
  for (let at = 12, end = 12 + 16 * all.getUint16(4); at < end; at += 16) {
    const tag = String.fromCharCode(...font.subarray(at, at + 4));
    const [from, length] = [all.getUint32(at + 8), all.getUint32(at + 12)];
    places.set(tag, viewOf(font.subarray(from, from + length)));
  }
  const table = (tag: string): DataView => {
    const found = places.get(tag);
    if (found === undefined) throw new Error(`A face has no table ${tag}`);
    return found;
  };
  const [glyf, loca] = [table('glyf'), table('loca')];
  const isLong = table('head').getInt16(locaFormat) === longLoca;
  const start = (glyph: number) =>
    isLong ? loca.getUint32(4 * glyph) : 2 * loca.getUint16(2 * glyph);
  const outline = (glyph: number) => part(glyf, start(glyph), start(glyph + 1));
  return { table, outline };
}

/** In rising order, so that the same glyphs make the same file. */
function withParts(whole: Whole, glyphs: Iterable<number>): number[] {
  const all = new Set([0, ...glyphs]);
  // A set goes on with what is added to it on the way: parts may have parts.
  for (const glyph of all) for (const { number } of partsOf(whole.outline(glyph))) all.add(number);
  return [...all].sort((a, b) => a - b);
}

type Part = { readonly at: number; readonly number: number };

const wordArguments = 0x1;
const oneScale = 0x8;
const moreParts = 0x20;
const twoScales = 0x40;
const fourScales = 0x80;

/** The glyphs that one is composed of, and where their numbers stand; a plain outline has none. */
function partsOf(outline: DataView): Part[] {
  if (outline.byteLength === 0 || outline.getInt16(0) >= 0) return [];
  const parts: Part[] = [];
  let flags = moreParts;
  for (let at = 10; (flags & moreParts) !== 0; ) {
    flags = outline.getUint16(at);
    parts.push({ at: at + 2, number: outline.getUint16(at + 2) });
    const scales = flags & oneScale ? 1 : flags & twoScales ? 2 : flags & fourScales ? 4 : 0;
    at += 4 + (flags & wordArguments ? 4 : 2) + 2 * scales;
  }
  return parts;
}

function outlineOf(
  whole: Whole,
  glyph: number,
  numbers: ReadonlyMap<number, number>,
): Uint8Array<ArrayBuffer> {
  const outline = whole.outline(glyph);
  const copy = copyOf(outline, 4);
  for (const { at, number } of partsOf(outline)) copy.setUint16(at, numbers.get(number) ?? 0);
  return bytesOf(copy);
}

/** Past the last long metric a font gives bearings alone, and the last width holds on. */
function metricsOf(whole: Whole, kept: readonly number[]): DataView {
  const hmtx = whole.table('hmtx');
  const count = whole.table('hhea').getUint16(metricsCount);
  const metrics = viewOf(new Uint8Array(4 * kept.length));
  for (const [number, glyph] of kept.entries()) {
    const isLong = glyph < count;
    metrics.setUint16(4 * number, hmtx.getUint16(4 * (isLong ? glyph : count - 1)));
    const bearing = isLong ? 4 * glyph + 2 : 4 * count + 2 * (glyph - count);
    metrics.setInt16(4 * number + 2, hmtx.getInt16(bearing));
  }
  return metrics;
}

function locationsOf(outlines: readonly Uint8Array[]): DataView {
  const locations = viewOf(new Uint8Array(4 * (outlines.length + 1)));
  let end = 0;
  for (const [number, { length }] of outlines.entries()) {
    end += length;
    locations.setUint32(4 * (number + 1), end);
  }
  return locations;
}

/** A font file of these tables, in the order of their tags, with the checksums of the chapter otff. */
function joinTables(tables: Readonly<Record<string, DataView>>): Uint8Array {
  const entries = Object.entries(tables);
  const count = entries.length;
  const power = Math.floor(Math.log2(count));
  const directory = viewOf(new Uint8Array(12 + 16 * count));
  directory.setUint32(0, 0x00010000);
  directory.setUint16(4, count);
  directory.setUint16(6, 16 * 2 ** power);
  directory.setUint16(8, power);
  directory.setUint16(10, 16 * (count - 2 ** power));
  let from = directory.byteLength;
  let headFrom = 0;
  const padded = entries.map(([, table]) => bytesOf(copyOf(table, 4)));
  for (const [index, [tag, { byteLength }]] of entries.entries()) {
    const at = 12 + 16 * index;
    for (let letter = 0; letter < 4; letter += 1)
      directory.setUint8(at + letter, tag.charCodeAt(letter));
    const bytes = padded[index] ?? new Uint8Array();
    directory.setUint32(at + 4, checksum(bytes));
    directory.setUint32(at + 8, from);
    directory.setUint32(at + 12, byteLength);
    if (tag === 'head') headFrom = from;
    from += bytes.length;
  }
  const file = bytesOf(joined([bytesOf(directory), ...padded]));
  viewOf(file).setUint32(headFrom + checksumAdjustment, (0xb1b0afba - checksum(file)) >>> 0);
  return file;
}

function checksum(bytes: Uint8Array): number {
  const view = viewOf(bytes);
  let sum = 0;
  for (let at = 0; at < bytes.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}

function joined(pieces: readonly Uint8Array[]): DataView {
  const bytes = new Uint8Array(pieces.reduce((length, piece) => length + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return viewOf(bytes);
}

/** A copy, filled up with zeros to a multiple of `unit` bytes. */
function copyOf(view: DataView, unit = 1): DataView<ArrayBuffer> {
  const bytes = new Uint8Array(Math.ceil(view.byteLength / unit) * unit);
  bytes.set(bytesOf(view));
  return viewOf(bytes);
}

function part(view: DataView, from: number, to: number): DataView {
  return new DataView(view.buffer, view.byteOffset + from, to - from);
}

function viewOf<B extends ArrayBufferLike>(bytes: Uint8Array<B>): DataView<B> {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function bytesOf<B extends ArrayBufferLike>(view: DataView<B>): Uint8Array<B> {
  return new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
}
