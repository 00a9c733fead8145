// The bytes of an .xlsx file arrive; how far its sheets reach leaves, before the reader lays out a cell for every place.
// A file of one kilobyte may name the cell XFD1048576; ECMA-376 part 1, 18.3.1.4 (cell references).
import { Inflate } from 'fflate';

const directoryEntry = [0x50, 0x4b, 0x01, 0x02];
const headerLength = 46;
const localLength = 30;

export type Extent = {
  readonly rows: number;
  readonly columns: number;
  /** Cells that hold an error of a formula. */
  readonly errors: number;
};

/**
 * Farthest row and column any sheet names, and no fewer rows than stand in it without a name; null where the parts
 * cannot be unpacked within `largest` bytes, hold a piece of text longer than any cell, too many elements, or a cell
 * whose place is none.
 * @example sheetExtent(bytes, 24_000_000) // { rows: 7, columns: 11, errors: 0 }
 */
export function sheetExtent(bytes: Uint8Array, largest: number): Extent | null {
  const file = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const extent = { rows: 0, columns: 0, errors: 0 };
  let [tags, size] = [0, 0];
  try {
    for (let at = nextEntry(bytes, 0); at >= 0; ) {
      const nameEnd = at + headerLength + file.getUint16(at + 28, true);
      const name = new TextDecoder().decode(bytes.subarray(at + headerLength, nameEnd));
      if (/\.(?:xml|rels)$/i.test(name)) {
        const xml = unpacked(bytes, file, at, largest - size);
        size += xml.length;
        const seen = survey(xml);
        tags += seen.tags;
        const most = isStyles.test(xml) ? mostStyleTags : mostTags;
        if (seen.longest > largestCell || seen.tags > most || tags > mostTags) return null;
        if (isSheet.test(xml) && !reach(xml, extent)) return null;
      }
      at = nextEntry(bytes, nameEnd);
    }
    return extent;
  } catch {
    return null;
  }
}

/** A cell holds at most 32,767 characters, each of six at most when written as XML; the reader is slow over longer ones. */
const largestCell = 200_000;

/** Twelve filled columns in every row; each tag costs the reader about a microsecond. */
const mostTags = 900_000;

/** Spreadsheet programs stop at about 65,000 formats of cells (from memory). */
const mostStyleTags = 400_000;

const [opening, closing] = [60, 62];

/** Longest stretch without a sign of markup, and how many tags there are. */
function survey(xml: string): { readonly longest: number; readonly tags: number } {
  let [longest, from, tags] = [0, 0, 0];
  for (let i = 0; i <= xml.length; i++) {
    const sign = xml.charCodeAt(i);
    if (sign !== opening && sign !== closing && i < xml.length) continue;
    if (sign === opening) tags++;
    longest = Math.max(longest, i - from);
    from = i + 1;
  }
  return { longest, tags };
}

function nextEntry(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(0x50, from); at >= 0; at = bytes.indexOf(0x50, at + 1)) {
    if (directoryEntry.every((byte, i) => bytes[at + i] === byte)) return at;
  }
  return -1;
}

function unpacked(bytes: Uint8Array, file: DataView, entry: number, largest: number): string {
  const method = file.getUint16(entry + 10, true);
  const packed = file.getUint32(entry + 20, true);
  const local = file.getUint32(entry + 42, true);
  const start =
    local + localLength + file.getUint16(local + 26, true) + file.getUint16(local + 28, true);
  const data = bytes.subarray(start, start + packed);
  return method === 0 ? latin1.decode(data) : inflated(data, largest);
}

/** What is looked for is ASCII; any table of one byte a character will do. */
const latin1 = new TextDecoder('latin1');
const stepLength = 16 * 1024;

/** Unpacked in small steps, so that a bomb is met before it has grown. */
function inflated(data: Uint8Array, largest: number): string {
  const parts: string[] = [];
  let length = 0;
  let ended = false;
  const inflate = new Inflate((part, last) => {
    length += part.length;
    if (length > largest) throw new Error('unpacks beyond the limit');
    parts.push(latin1.decode(part));
    ended = last;
  });
  for (let at = 0; at < data.length; at += stepLength)
    inflate.push(data.subarray(at, at + stepLength), at + stepLength >= data.length);
  if (!ended) throw new Error('ends before its time');
  return parts.join('');
}

/** Whatever the part is called, this element makes it a sheet. */
const isSheet = /<(?:[^\s<>/]+:)?sheetData[\s/>]/;
const isStyles = /<(?:[^\s<>/]+:)?styleSheet[\s/>]/;
const rowsAndCells = /<(?:[^\s<>/]+:)?(row|c)(?=[\s/>])([^<]*)/g;
const itsPlace = /(?<![\w.-])r\s*=\s*(?:"([^"]*)"|'([^']*)'|(.?))/;
const isError = /(?<![\w.-])t\s*=\s*["']e["']/;
const plainPlace = /^([A-Z]{0,3})(\d{1,7})$/;

/**
 * Rows and cells need no `r`; a row that has none lies below the one before. False for a place that is none: the reader
 * would count 'FERRITIN1' as the column it spells, and lay out every cell before it.
 */
function reach(xml: string, extent: { -readonly [K in keyof Extent]: number }): boolean {
  let rows = 0;
  for (const [, element, attributes = ''] of xml.matchAll(rowsAndCells)) {
    if (element === 'row') extent.rows = Math.max(extent.rows, ++rows);
    if (isError.test(attributes)) extent.errors += 1;
    const place = itsPlace.exec(attributes);
    if (place === null) continue;
    const [, letters, row] = plainPlace.exec(place[1] ?? place[2] ?? '') ?? [];
    if (letters === undefined) return false;
    const column = [...letters].reduce((sum, sign) => sum * 26 + sign.charCodeAt(0) - 64, 0);
    extent.columns = Math.max(extent.columns, column);
    extent.rows = Math.max(extent.rows, Number(row));
  }
  return true;
}
