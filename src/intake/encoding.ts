// A file read in pieces arrives; how its bytes become text leaves, with a note when the encoding was not declared.
import type { Problem } from '../problem.js';
import { decode, windows1252 } from './decode.js';
import { inMemory, type LargeFile, piecesOf } from './large-file.js';

export type Encoded = {
  /** In an encoding in which line ends and quotes are single bytes. */
  readonly file: LargeFile;
  readonly textOf: (bytes: Uint8Array) => string;
  readonly notes: readonly Problem[];
};

/** Bytes of UTF-16's byte-order mark. */
const wideMark = 2;
const largestWide = 32 * 1024 * 1024;

/**
 * By its byte-order mark, else UTF-8 when every byte of the file fits it, else windows-1252 with a note.
 * UTF-16 is turned into UTF-8 in memory, up to 32 MB; nothing is left of a longer one.
 */
export function encodingOf(file: LargeFile): Encoded {
  const [first, second] = file.read(0, Math.min(wideMark, file.size));
  const wide = (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
  if (wide && file.size > largestWide)
    return { file: { ...file, size: 0 }, textOf: utf8, notes: [] };
  if (wide) {
    const { text, notes } = decode(file.name, file.read(0, file.size));
    return { file: inMemory({ name: file.name, bytes: Buffer.from(text) }), textOf: utf8, notes };
  }
  if (isUtf8(file)) return { file, textOf: utf8, notes: [] };
  return { file, textOf: windows1252, notes: decode(file.name, notUtf8).notes };
}

const notUtf8 = new Uint8Array([0xff]);

const decoder = new TextDecoder('utf-8');

export function utf8(bytes: Uint8Array): string {
  return decoder.decode(bytes);
}

function isUtf8(file: LargeFile): boolean {
  const strict = new TextDecoder('utf-8', { fatal: true });
  try {
    for (const bytes of piecesOf(file)) strict.decode(bytes, { stream: true });
    strict.decode();
    return true;
  } catch {
    return false;
  }
}
