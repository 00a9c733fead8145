// A laboratory's table file arrives (CSV or a spreadsheet); a column map to look over leaves.
import { type Checked, faulty } from '../problem.js';
import { splitRows } from './csv/split-rows.js';
import { sniff } from './sniff.js';
import type { ColumnMap } from './table/column-map.js';
import { proposeFor } from './table/propose.js';
import type { InputFile } from './written.js';

/** See `proposeColumns` of the room. */
export async function propose(file: InputFile): Promise<Checked<ColumnMap>> {
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
