// A laboratory's table file arrives (CSV or a spreadsheet); a column map to look over leaves.
import { type Checked, faulty } from '../problem.js';
import { splitRows } from './csv/split-rows.js';
import { sniff } from './sniff.js';
import type { ColumnMap } from './table/column-map.js';
import { proposeFor } from './table/propose.js';
import type { InputFile } from './written.js';

/**
 * Proposes what the columns of a file mean; the notes say what could not be told.
 * Problems: a file that is no text and no spreadsheet, or whose rows cannot be cut.
 * @example await proposeColumns(file) // { ok: true, value: { columns: { 'Pat-Nr': 'id' }, … }, … }
 */
export async function proposeColumns(file: InputFile): Promise<Checked<ColumnMap>> {
  const sniffed = sniff(file);
  if ('problem' in sniffed) return faulty([sniffed.problem]);
  if (sniffed.format !== 'xlsx') {
    const table = splitRows(file.name, sniffed.text);
    return table.ok ? proposeFor(table.value) : faulty(table.problems);
  }
  const { xlsxTable } = await import('./xlsx/index.js');
  const table = await xlsxTable(file);
  return table.ok ? proposeFor(table.value) : faulty(table.problems);
}
