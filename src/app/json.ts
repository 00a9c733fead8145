// Bytes in, a JSON value out, or a problem that says where the file stops being JSON.
import { type Checked, faulty, fine } from '../problem.js';

/** @example readJson('clinic.json', bytes) // { ok: true, value: { name: '…' }, notes: [] } */
export function readJson(file: string, bytes: Uint8Array): Checked<unknown> {
  try {
    return fine(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)));
  } catch {
    return faulty([
      {
        code: 'not-json',
        place: { file, row: null, field: null },
        cannot: 'cannot read the file as JSON',
        found: null,
        expected: 'UTF-8 text holding one JSON value',
        remedy: null,
      },
    ]);
  }
}
