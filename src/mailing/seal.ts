// Plain values arrive; hashes leave by which a later run sees whether anything changed.
import { createHash } from 'node:crypto';
import type { WrittenReport } from '../intake/written.js';

/** @example sha256('') // 'e3b0c442…' */
export function sha256(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/**
 * Hash of a plain value, whatever the order of its fields.
 * @example sealOf({ a: 1, b: 2 }) === sealOf({ b: 2, a: 1 }) // true
 */
export function sealOf(value: unknown): string {
  return sha256(JSON.stringify(value, sorted));
}

/** Hash of what a report says, wherever in its file it stands: a row that moved needs no new letter. */
export function sealOfReport(report: WrittenReport): string {
  return sha256(
    JSON.stringify(report, (key, value: unknown) => (key === 'place' ? null : sorted(key, value))),
  );
}

function sorted(_key: string, value: unknown): unknown {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return value;
  return Object.fromEntries(
    Object.entries(value).sort(([one], [other]) => (one < other ? -1 : one > other ? 1 : 0)),
  );
}
