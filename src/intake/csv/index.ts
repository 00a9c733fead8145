// The text of a CSV or TSV file arrives; written reports leave.
import { faulty } from '../../problem.js';
import type { ColumnMap } from '../table/column-map.js';
import { readTable } from '../table/index.js';
import type { Intake } from '../written.js';
import { splitRows } from './split-rows.js';

/**
 * Reads results in rows: one row a result, or one row a person with a column a test.
 * @example readCsv('lab.csv', 'patient id;sex;collected;Ferritin (ug/L)\n7;female;2026-11-20;12,5\n')
 */
export function readCsv(name: string, text: string, map: ColumnMap = {}): Intake {
  const table = splitRows(name, text);
  if (!table.ok) return { format: 'csv', reports: [faulty(table.problems)], ignored: [] };
  return { format: 'csv', ...readTable(table.value, map) };
}
