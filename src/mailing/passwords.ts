// A table of passwords arrives; the password of each patient's letter by id leaves.
import { type Checked, faulty, fine, type Problem } from '../problem.js';
import { readIdTable } from './id-table.js';

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
  const table = readIdTable(file, text);
  if (!table.ok) return table;
  const rows = [...table.value];
  const unfit = rows.filter(([, { cells }]) => cells.length !== 1 || !fit.test(cells[0] ?? ''));
  if (unfit.length > 0) return faulty(unfit.map(([, { row }]) => problem(file, row)));
  return fine(new Map(rows.map(([id, { cells }]) => [id, cells[0] ?? ''])));
}

/** Not even the id: where a comma is missing, it holds the password. */
function problem(file: string, row: number): Problem {
  return {
    code: 'password',
    place: { file, row, field: 'password' },
    cannot: 'cannot use this password',
    found: null,
    expected: '8 to 64 printable ASCII characters without spaces',
    remedy: null,
  };
}
