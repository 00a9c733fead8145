// A row with its plan arrives; ways to ask it for a cell leave.
import type { DateOrder } from '../date-as-written.js';
import type { ColumnMeaning } from '../names.js';
import type { Column, Plan } from './plan.js';
import type { TableRow } from './table.js';

/** What columns prove as a whole, so that no single cell is guessed. */
export type Proved = {
  readonly collected: DateOrder | null;
  readonly birthDate: DateOrder | null;
  readonly decimalComma: boolean;
  /** Letters of the column that may mean two sexes. */
  readonly sexLetters: ReadonlySet<string>;
};

export function columnOf(plan: Plan, meaning: ColumnMeaning): Column | null {
  return plan.facts.get(meaning) ?? null;
}

/** Cell of a meaning, trimmed; null when there is no such column or nothing in it. */
export function cellOf(plan: Plan, row: TableRow, meaning: ColumnMeaning): string | null {
  return filled(row, columnOf(plan, meaning));
}

export function filled(row: TableRow, column: Column | null): string | null {
  const text = column === null ? '' : (row.cells[column.index] ?? '').trim();
  return text === '' ? null : text;
}
