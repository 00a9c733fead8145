// A JSON file of many objects arrives (a list, or one a line); where each begins and ends leaves, without reading any.
import { type LargeFile, piecesOf } from '../large-file.js';
import { linesOf, type Span } from '../spans.js';

/** `row` is the number in the list, or the line. */
export type Members =
  | { readonly form: 'list' | 'lines'; readonly spans: Generator<Span> }
  /** One object, or something else that only a reader of the whole can judge. */
  | { readonly form: 'whole' };

/** The list is broken here: what follows cannot be told apart. */
export class BrokenList extends Error {
  constructor(readonly row: number) {
    super('broken list');
  }
}

const sign = (text: string) => text.charCodeAt(0);
const [quote, backslash, comma] = [sign('"'), sign('\\'), sign(',')];
const [openBrace, closeBrace, openBracket, closeBracket] = ['{', '}', '[', ']'].map(sign);
const blank = new Set([' ', '\t', '\r', '\n'].map(sign));
const headLength = 64 * 1024;

/** @param from first byte behind a byte-order mark. */
export function membersOf(file: LargeFile, from: number): Members {
  const head = file.read(from, Math.min(file.size, from + headLength));
  const first = head.find((byte) => !blank.has(byte));
  if (first === openBracket) return { form: 'list', spans: listOf(file, from) };
  return oneALine(file, from)
    ? { form: 'lines', spans: filledLines(file, from) }
    : { form: 'whole' };
}

function* filledLines(file: LargeFile, from: number): Generator<Span> {
  for (const line of linesOf(file, from))
    if (file.read(line.start, line.end).some((byte) => !blank.has(byte))) yield line;
}

/** The first two lines with something in them are an object each. */
function oneALine(file: LargeFile, from: number): boolean {
  const shape = /^\s*\{.*\}\s*$/;
  let seen = 0;
  for (const { start, end } of filledLines(file, from)) {
    if (end - start > largestMember || !shape.test(Buffer.from(file.read(start, end)).toString()))
      return false;
    seen += 1;
    if (seen === 2) return true;
  }
  return false;
}

/** Bytes of one report, or one Bundle, in a file of many. */
export const largestMember = 4 * 1024 * 1024;

/** Objects of a list. @throws BrokenList where something else stands between them, or the list has no end. */
function* listOf(file: LargeFile, from: number): Generator<Span> {
  let [at, depth, row, start] = [0, 0, 0, 0];
  let [inText, escaped, ended] = [false, false, false];
  /** A comma, or the list's bracket, goes before each object. */
  let due = true;
  for (const bytes of piecesOf(file)) {
    for (let i = 0; i < bytes.length; i++, at++) {
      if (at < from) continue;
      const byte = bytes[i] ?? 0;
      if (inText) {
        if (escaped) escaped = false;
        else if (byte === backslash) escaped = true;
        else if (byte === quote) inText = false;
        continue;
      }
      if (byte === quote && depth > 1) inText = true;
      else if (byte === openBrace || byte === openBracket) {
        if (depth === 1) {
          if (!due || ended || byte !== openBrace) throw new BrokenList(row + 1);
          [start, row, due] = [at, row + 1, false];
        } else if (depth === 0 && ended) throw new BrokenList(row);
        depth++;
      } else if (byte === closeBrace || byte === closeBracket) {
        depth--;
        if (depth === 1) yield { start, end: at + 1, row };
        if (depth === 0) {
          if (row > 0 && due) throw new BrokenList(row + 1);
          ended = true;
        }
        if (depth < 0) throw new BrokenList(row);
      } else if (depth <= 1 && !blank.has(byte)) {
        if (byte !== comma || due || depth === 0) throw new BrokenList(row + 1);
        due = true;
      }
    }
  }
  if (!ended) throw new BrokenList(row);
}
