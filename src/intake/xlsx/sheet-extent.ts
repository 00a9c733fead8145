// The bytes of an .xlsx file arrive; how far its sheets reach leaves, before the reader lays out a cell for every place.
// A file of one kilobyte may name the cell XFD1048576; ECMA-376 part 1, 18.3.1.4 (cell references).
import { Inflate } from 'fflate';

const directoryEntry = [0x50, 0x4b, 0x01, 0x02];
const headerLength = 46;
const localLength = 30;

export type Extent = { readonly rows: number; readonly columns: number };

/**
 * Farthest row and column any sheet names; null where a part cannot be unpacked within `largest` bytes or holds a
 * piece of text longer than any cell.
 * @example sheetExtent(bytes, 24_000_000) // { rows: 7, columns: 11 }
 */
export function sheetExtent(bytes: Uint8Array, largest: number): Extent | null {
  const file = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const extent = { rows: 0, columns: 0 };
  try {
    for (let at = nextEntry(bytes, 0); at >= 0; ) {
      const nameEnd = at + headerLength + file.getUint16(at + 28, true);
      const name = new TextDecoder().decode(bytes.subarray(at + headerLength, nameEnd));
      if (/\.xml$/i.test(name)) {
        const xml = unpacked(bytes, file, at, largest);
        if (longestRun(xml) > largestCell) return null;
        if (/sheet[^/]*\.xml$/i.test(name)) reach(xml, extent);
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

/** Longest stretch without a sign of markup. */
function longestRun(xml: string): number {
  let [longest, from] = [0, 0];
  for (let i = 0; i <= xml.length; i++) {
    const sign = xml.charCodeAt(i);
    if (sign !== 60 && sign !== 62 && i < xml.length) continue;
    longest = Math.max(longest, i - from);
    from = i + 1;
  }
  return longest;
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

/** Attributes `r` and `ref` name a row, a cell or two corners. */
function reach(xml: string, extent: { rows: number; columns: number }): void {
  for (const [, first = '', last = first] of xml.matchAll(
    /\sr(?:ef)?\s*=\s*["']\$?([A-Z]{0,3}\d{1,9})(?::([A-Z]{0,3}\d{1,9}))?["']/gi,
  )) {
    for (const corner of [first, last]) {
      const letters = corner.replace(/\d+/g, '').toUpperCase();
      const column = [...letters].reduce((sum, sign) => sum * 26 + sign.charCodeAt(0) - 64, 0);
      extent.columns = Math.max(extent.columns, column);
      extent.rows = Math.max(extent.rows, Number(corner.slice(letters.length)));
    }
  }
}
