// The bytes of an .xlsx file arrive; how far its sheets reach leaves, before the reader lays out a cell for every place.
// A file of one kilobyte may name the cell XFD1048576; ECMA-376 part 1, 18.3.1.4 (cell references).
import { inflateRawSync } from 'node:zlib';

const directoryEntry = Buffer.from('504b0102', 'hex');
const headerLength = 46;
const localLength = 30;

export type Extent = { readonly rows: number; readonly columns: number };

/**
 * Farthest row and column any sheet names; null where a sheet cannot be unpacked within `largest` bytes.
 * @example sheetExtent(bytes, 24_000_000) // { rows: 7, columns: 11 }
 */
export function sheetExtent(bytes: Uint8Array, largest: number): Extent | null {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const extent = { rows: 0, columns: 0 };
  try {
    for (let at = file.indexOf(directoryEntry); at >= 0; ) {
      const nameEnd = at + headerLength + file.readUInt16LE(at + 28);
      const name = file.toString('utf8', at + headerLength, nameEnd);
      if (/sheet[^/]*\.xml$/i.test(name)) reach(unpacked(file, at, largest), extent);
      at = file.indexOf(directoryEntry, nameEnd);
    }
    return extent;
  } catch {
    return null;
  }
}

function unpacked(file: Buffer, entry: number, largest: number): string {
  const [method, packed] = [file.readUInt16LE(entry + 10), file.readUInt32LE(entry + 20)];
  const local = file.readUInt32LE(entry + 42);
  const start = local + localLength + file.readUInt16LE(local + 26) + file.readUInt16LE(local + 28);
  const data = file.subarray(start, start + packed);
  return method === 0
    ? data.toString('latin1')
    : inflateRawSync(data, { maxOutputLength: largest }).toString('latin1');
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
