// A table with its plan arrives; ways to ask a row for a cell, and what whole columns prove, leave.
import { type DateOrder, needsOrder, orderProvedBy } from '../date-as-written.js';
import { fault } from '../fault.js';
import type { ColumnMeaning } from '../names.js';
import { provesDecimalComma } from '../number-as-written.js';
import type { Place, Problem } from '../../problem.js';
import type { Column, Plan } from './plan.js';
import type { Table, TableRow } from './table.js';

/** What columns prove as a whole, so that no single cell is guessed. */
export type Proved = {
  readonly collected: DateOrder | null;
  readonly birthDate: DateOrder | null;
  readonly decimalComma: boolean;
  readonly sexWords: readonly string[];
};

export function columnOf(plan: Plan, meaning: ColumnMeaning): Column | null {
  return (
    plan.columns.find((column) => column.holds === 'fact' && column.meaning === meaning) ?? null
  );
}

/** Cell of a meaning, trimmed; null when there is no such column or nothing in it. */
export function cellOf(plan: Plan, row: TableRow, meaning: ColumnMeaning): string | null {
  return filled(row, columnOf(plan, meaning));
}

export function filled(row: TableRow, column: Column | null): string | null {
  const text = column === null ? '' : (row.cells[column.index] ?? '').trim();
  return text === '' ? null : text;
}

/** What the columns prove. Problems: a column of dates that leaves day and month open. */
export function provedBy(
  table: Table,
  plan: Plan,
): { readonly proved: Proved; readonly problems: readonly Problem[] } {
  const down = (meaning: ColumnMeaning) =>
    table.rows.flatMap((row) => cellOf(plan, row, meaning) ?? []);
  const values = plan.columns.filter(
    (column) =>
      column.holds === 'result' || (column.holds === 'fact' && column.meaning === 'value'),
  );
  const order = (meaning: ColumnMeaning) => plan.map.dates ?? orderProvedBy(down(meaning));
  const proved: Proved = {
    collected: order('collected'),
    birthDate: order('birthDate'),
    decimalComma:
      plan.map.decimal === ',' ||
      table.rows.some((row) =>
        values.some(({ index }) => provesDecimalComma((row.cells[index] ?? '').trim())),
      ),
    sexWords: [...new Set(down('sex'))],
  };
  const problems = (['collected', 'birthDate'] as const).flatMap((meaning) => {
    const open = proved[meaning] === null ? down(meaning).find(needsOrder) : undefined;
    if (open === undefined) return [];
    const place: Place = {
      file: table.file,
      row: table.header.row,
      field: columnOf(plan, meaning)?.header ?? meaning,
    };
    return [
      fault('day-or-month', place, 'cannot tell the day from the month in this column', {
        found: meaning === 'collected' ? open : null,
        expected: 'dates such as 2026-11-25',
        remedy: 'A column map can say "dates": "day-first" or "month-first".',
      }),
    ];
  });
  return { proved, problems };
}
