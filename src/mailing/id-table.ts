// A table whose rows begin with a patient's id arrives; the cells and the row of each id leave.
import { parse } from 'csv-parse/sync';
import { type Checked, faulty, fine, type Problem } from '../problem.js';

/** `row` counts lines of the file from one. Cells without text are left out. */
export type IdRow = { readonly row: number; readonly cells: readonly string[] };

/**
 * Reads `id,cell,cell,…`: the first column is the id as in the reports. The header is passed over; comma or semicolon.
 * Problems: no table; an id twice. They name rows only: the cells hold addresses and passwords.
 * @example readIdTable('post.csv', 'id,a,b\nSB-1,Ida Tern,1 Quay\n') // { ok: true, value: Map { 'SB-1' => { row: 2, cells: […] } } }
 */
export function readIdTable(file: string, text: string): Checked<ReadonlyMap<string, IdRow>> {
  const rows = rowsOf(text);
  if (rows === null)
    return faulty([
      problem(file, null, 'cannot read the table', 'a header, then rows that begin with an id'),
    ]);
  const found = new Map<string, IdRow>();
  const problems: Problem[] = [];
  for (const { record, info } of rows.slice(1)) {
    const [id = '', ...cells] = record.map((cell) => cell.trim());
    const told = cells.filter((cell) => cell !== '');
    if (id === '' || told.length === 0) continue;
    if (found.has(id))
      problems.push(
        problem(file, info.lines, 'cannot use a second row of one id', 'one row an id'),
      );
    found.set(id, { row: info.lines, cells: told });
  }
  return problems.length > 0 ? faulty(problems) : fine(found);
}

function problem(file: string, row: number | null, cannot: string, expected: string): Problem {
  return {
    code: 'table-of-ids',
    place: { file, row, field: null },
    cannot,
    found: null,
    expected,
    remedy: null,
  };
}

type Told = { readonly record: readonly string[]; readonly info: { readonly lines: number } };

function rowsOf(text: string): readonly Told[] | null {
  const header = text.split(/\r?\n/, 1)[0] ?? '';
  const delimiter = header.split(';').length > header.split(',').length ? ';' : ',';
  try {
    return parse(text, {
      bom: true,
      delimiter,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
    }) as unknown as readonly Told[];
  } catch {
    return null;
  }
}
