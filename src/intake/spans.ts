// A file of lines arrives; where each line, or each record with its quoted line ends, begins and ends leaves.
import { type LargeFile, piecesOf } from './large-file.js';

/** Bytes from `start` up to `end`, line end not among them; `row` is the line as an editor counts it. */
export type Span = { readonly start: number; readonly end: number; readonly row: number };

/** `open` where the file ended inside quotes. */
export type RecordSpan = Span & { readonly open: boolean };

const [lf, cr, quote] = [0x0a, 0x0d, 0x22];

/**
 * Lines of a file; CR, LF and CRLF all end one. Only for encodings in which these bytes are nothing else:
 * UTF-8 and the single-byte ones.
 * @example [...linesOf(inMemory({ name: 'a', bytes: Buffer.from('x\r\ny') }))] // rows 1 and 2
 */
export function linesOf(file: LargeFile, from = 0): Generator<Span> {
  return cut(file, from, false);
}

/** Records of a table (RFC 4180): a line end between quotes belongs to its cell. */
export function recordsOf(file: LargeFile, from = 0): Generator<RecordSpan> {
  return cut(file, from, true);
}

function* cut(file: LargeFile, from: number, quoted: boolean): Generator<RecordSpan> {
  let [start, at, row, line, inside, before] = [from, 0, 1, 1, false, 0];
  for (const bytes of piecesOf(file)) {
    for (let i = 0; i < bytes.length; i++, at++) {
      const byte = bytes[i];
      if (byte === quote) inside = quoted && !inside;
      else if (byte === lf || byte === cr) {
        const second = byte === lf && before === cr;
        if (!second) line++;
        if (!inside) {
          if (!second && at >= from) yield { start, end: at, row, open: false };
          start = Math.max(from, at + 1);
          row = line;
        }
      }
      before = byte ?? 0;
    }
  }
  if (start < file.size) yield { start, end: file.size, row, open: inside };
}
