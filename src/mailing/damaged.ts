// Records of ours that somebody changed are told by file and row, and nothing is done on their word.
import type { Place } from '../problem.js';

/** A record of a run that cannot be read; the command that meets it stops. */
export class Damaged extends Error {
  constructor(readonly places: readonly Place[]) {
    super('a record of the run cannot be read');
  }
}

/** @throws Damaged when `read` throws anything. */
export function soundly<T>(file: string, read: () => T): T {
  try {
    return read();
  } catch {
    throw new Damaged([{ file, row: null, field: null }]);
  }
}
