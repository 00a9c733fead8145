// A table of passwords arrives; the password of each patient's letter by id leaves.
import { type Checked, faulty, fine, type Problem } from '../problem.js';
import { readAddresses } from './print/addresses.js';

export type Passwords = ReadonlyMap<string, string>;

/** Readers disagree on how to write other letters as bytes, and eight is the least that is worth the name. */
const fit = /^[\x21-\x7E]{8,64}$/;

/**
 * Reads `id,password`, with a header.
 * Problems: no table; an id twice; a password that is not 8 to 64 printable ASCII characters without spaces.
 * The passwords stay out of every problem.
 * @example readPasswords('locks.csv', 'id,password\nSB-1,tern-quay-41\n') // { ok: true, value: Map { 'SB-1' => … } }
 */
export function readPasswords(file: string, text: string): Checked<Passwords> {
  const table = readAddresses(file, text);
  if (!table.ok) return table;
  const unfit = [...table.value].filter(
    ([, cells]) => cells.length !== 1 || !fit.test(cells[0] ?? ''),
  );
  if (unfit.length > 0) return faulty(unfit.map(([id]) => problem(file, id)));
  return fine(new Map([...table.value].map(([id, cells]) => [id, cells[0] ?? ''])));
}

function problem(file: string, id: string): Problem {
  return {
    code: 'password',
    place: { file, row: null, field: id },
    cannot: 'cannot use this password',
    found: null,
    expected: '8 to 64 printable ASCII characters without spaces',
    remedy: null,
  };
}
