// The shape of a file that is read piece by piece, so that its length costs no memory.
import type { InputFile } from './written.js';

/** `read` gives the bytes from one place up to another; `size` was taken when the file was opened. */
export type LargeFile = {
  readonly name: string;
  readonly size: number;
  readonly read: (from: number, to: number) => Uint8Array;
};

/** Bytes already at hand, as such a file. */
export function inMemory({ name, bytes }: InputFile): LargeFile {
  return { name, size: bytes.length, read: (from, to) => bytes.subarray(from, to) };
}

const piece = 256 * 1024;

/** The file from its start to its end, in pieces. */
export function* piecesOf({ size, read }: LargeFile): Generator<Uint8Array> {
  for (let at = 0; at < size; at += piece) yield read(at, Math.min(size, at + piece));
}

const window = 64 * 1024;

/**
 * The same file, read a window at a time: neighbouring pieces cost no more calls of the system.
 * Bytes once given stay as they are.
 */
export function inWindows(file: LargeFile): LargeFile {
  let [start, held] = [0, new Uint8Array(0)];
  const read = (from: number, to: number): Uint8Array => {
    if (to - from > window) return file.read(from, to);
    if (from < start || to > start + held.length) {
      start = from;
      held = new Uint8Array(file.read(from, Math.min(file.size, Math.max(to, from + window))));
    }
    return held.subarray(from - start, to - start);
  };
  return { ...file, read };
}
