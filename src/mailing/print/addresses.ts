// A table of postal addresses arrives; the lines to print by patient's id leave.
import { parse } from 'csv-parse/sync';
import { type Checked, faulty, fine, type Problem } from '../../problem.js';

export type Addresses = ReadonlyMap<string, readonly string[]>;

/**
 * Reads `id,line,line,…`: the first column is the id as in the reports, every other column one line in its order,
 * the name included. The header is passed over; comma or semicolon.
 * Problems: no table; an id twice. Names and addresses stay out of them.
 * @example readAddresses('post.csv', 'id,a,b\nSB-1,Ida Tern,1 Quay\n') // { ok: true, value: Map { 'SB-1' => ['Ida Tern', '1 Quay'] } }
 */
export function readAddresses(file: string, text: string): Checked<Addresses> {
  const problem = (row: number | null, cannot: string, expected: string): Problem => ({
    code: 'table-of-ids',
    place: { file, row, field: null },
    cannot,
    found: null,
    expected,
    remedy: null,
  });
  const rows = rowsOf(text);
  if (rows === null)
    return faulty([
      problem(null, 'cannot read the table', 'a header, then rows that begin with an id'),
    ]);
  const found = new Map<string, readonly string[]>();
  const problems: Problem[] = [];
  for (const [at, [id, ...cells]] of rows.slice(1).entries()) {
    const lines = cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
    if (id === undefined || id.trim() === '' || lines.length === 0) continue;
    if (found.has(id.trim()))
      problems.push(problem(at + 2, 'cannot use a second row of one id', 'one row an id'));
    found.set(id.trim(), lines);
  }
  return problems.length > 0 ? faulty(problems) : fine(found);
}

function rowsOf(text: string): readonly (readonly string[])[] | null {
  const header = text.split(/\r?\n/, 1)[0] ?? '';
  const delimiter = header.split(';').length > header.split(',').length ? ';' : ',';
  try {
    return parse(text, { bom: true, delimiter, relax_column_count: true, skip_empty_lines: true });
  } catch {
    return null;
  }
}
