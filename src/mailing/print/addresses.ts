// A table of postal addresses arrives; the lines to print by patient's id leave.
import { type Checked, fine } from '../../problem.js';
import { readIdTable } from '../id-table.js';

export type Addresses = ReadonlyMap<string, readonly string[]>;

/**
 * Reads `id,line,line,…`: every column after the id is one line in its order, the name included.
 * Problems: as `readIdTable`.
 * @example readAddresses('post.csv', 'id,a,b\nSB-1,Ida Tern,1 Quay\n') // { ok: true, value: Map { 'SB-1' => ['Ida Tern', '1 Quay'] } }
 */
export function readAddresses(file: string, text: string): Checked<Addresses> {
  const table = readIdTable(file, text);
  if (!table.ok) return table;
  return fine(new Map([...table.value].map(([id, { cells }]) => [id, cells])));
}
