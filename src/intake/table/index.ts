// A table of cells arrives (from CSV or a spreadsheet); written reports leave.
import { type Checked, faulty, fine, type Problem } from '../../problem.js';
import { at, fault } from '../fault.js';
import type { WrittenReport, WrittenResult } from '../written.js';
import { cellOf, columnOf, type Proved } from './cells.js';
import type { ColumnMap } from './column-map.js';
import { type Apart, gather } from './gather.js';
import { longRow } from './long.js';
import { type Plan, planColumns } from './plan.js';
import type { RowFacts } from './row-facts.js';
import type { Table, TableRow } from './table.js';
import { wideRow } from './wide.js';
import { type Testimony, Witness } from './witness.js';

export type TableRead = {
  readonly reports: readonly Checked<WrittenReport>[];
  readonly ignored: readonly Problem[];
  /** Results of reports that as a whole could not be read. */
  readonly partly?: readonly WrittenResult[];
};

/** Rows of a table that is read as a whole, for one patient or to be looked over. */
const mostAtOnce = 100_000;

/**
 * Reads a table in either form. A fault of the header or of a whole column stops the file;
 * a fault of a row stops only the person of that row.
 */
export function readTable(table: Table, map: ColumnMap = {}): TableRead {
  const planned = planColumns(table, map);
  if (!planned.ok) return { reports: [faulty(planned.problems)], ignored: [] };
  if (table.rows.length > mostAtOnce) {
    const more = {
      expected: `at most ${mostAtOnce}`,
      remedy: 'ironleaf mailing reads as many as there are.',
    };
    const many = fault('too-many', at(table.file, null), 'cannot read so many rows at once', more);
    return { reports: [faulty([many])], ignored: planned.notes };
  }
  const witness = new Witness(table.file, table.header.row, planned.value);
  for (const row of table.rows) witness.hear(row);
  const settled = settle(table, planned.value, witness.told(), table.rows.length);
  if (!settled.ok) return { reports: [faulty(settled.problems)], ignored: planned.notes };
  const read = table.rows.map((row) => readRow(table, settled.value, row));
  const facts = read.map((row) => row.facts);
  const reports = gather(table.file, facts, settled.value.apart);
  return {
    reports,
    ignored: [...planned.notes, ...read.flatMap(({ ignored }) => ignored)],
    partly: partlyRead(facts, reports),
  };
}

/** How the rows of one table are to be read, once all of them were heard. */
export type Settled = { readonly plan: Plan; readonly proved: Proved; readonly apart: Apart };
type Head = Pick<Table, 'file' | 'header'>;

/** Problems: what the columns leave open as a whole; a table without rows. */
export function settle(table: Head, plan: Plan, told: Testimony, rows: number): Checked<Settled> {
  const whole = [
    ...told.problems,
    ...columnsWithoutUnit(table, plan, told.used),
    ...peopleAlike(table, plan, told.severalNames),
  ];
  if (whole.length > 0) return faulty(whole);
  if (rows === 0) {
    const none = fault(
      'no-rows',
      at(table.file, table.header.row),
      'cannot find rows below the header',
      {
        expected: 'at least one',
      },
    );
    return faulty([none]);
  }
  return fine({ plan, proved: told.proved, apart: apartBy(plan, told.severalNames) });
}

export function readRow(table: Head, { plan, proved }: Settled, row: TableRow) {
  const read = (plan.form === 'long' ? longRow : wideRow)(table.file, plan, proved, row);
  const wrong = shapeOf(table, plan, row);
  return wrong.length === 0
    ? read
    : { facts: { ...read.facts, results: [], problems: wrong }, ignored: [] };
}

function partlyRead(
  facts: readonly RowFacts[],
  reports: readonly Checked<WrittenReport>[],
): readonly WrittenResult[] {
  if (reports.every(({ ok }) => ok)) return [];
  const whole = new Set(
    reports.flatMap((read) =>
      read.ok ? [read.value.panel, ...read.value.previous].flatMap(({ results }) => results) : [],
    ),
  );
  return facts.flatMap(({ results }) =>
    results.flatMap(({ result }) => (whole.has(result) ? [] : [result])),
  );
}

/** A ragged row is not read at all, for its cells may have slipped; nor is a row without its id. */
function shapeOf(table: Head, plan: Plan, row: TableRow): readonly Problem[] {
  const [wanted, found] = [table.header.cells.length, row.cells.length];
  if (wanted !== found) {
    return [
      fault(
        'ragged-row',
        at(table.file, row.row),
        'cannot tell which cell belongs to which column',
        {
          found: `${found} cells`,
          expected: `${wanted}, as in the header`,
        },
      ),
    ];
  }
  const id = columnOf(plan, 'id');
  if (id === null || cellOf(plan, row, 'id') !== null) return [];
  return [
    fault('no-id', at(table.file, row.row, id.header), 'cannot tell whose row this is', {
      expected: "the person's id",
    }),
  ];
}

function apartBy(plan: Plan, severalNames: boolean): Apart {
  if (columnOf(plan, 'id') !== null) return 'id';
  if (plan.form === 'wide') return 'each-row';
  if (named(plan) && columnOf(plan, 'birthDate') !== null && severalNames)
    return 'name-and-birth-date';
  return 'one-person';
}

function named(plan: Plan): boolean {
  return columnOf(plan, 'name') !== null || columnOf(plan, 'surname') !== null;
}

/** Two people may have one name: without id or birth date the long form cannot keep them apart. */
function peopleAlike(table: Head, plan: Plan, severalNames: boolean): readonly Problem[] {
  if (plan.form === 'wide' || columnOf(plan, 'id') !== null || !named(plan)) return [];
  if (columnOf(plan, 'birthDate') !== null || !severalNames) return [];
  return [
    fault(
      'people-alike',
      at(table.file, table.header.row),
      'cannot keep people apart by name alone',
      {
        expected: 'a column with an id or a birth date',
      },
    ),
  ];
}

function columnsWithoutUnit(
  table: Head,
  plan: Plan,
  used: ReadonlySet<number>,
): readonly Problem[] {
  return plan.columns.flatMap((column) => {
    if (column.holds !== 'result' || column.unit !== null) return [];
    if (plan.parts.has(`${column.analyte} unit`) || !used.has(column.index)) return [];
    return [
      fault(
        'no-unit',
        at(table.file, table.header.row, column.header),
        'cannot tell the unit of this column',
        {
          expected: `a header such as '${column.header} (…)' with the unit, or a column '${column.header} unit'`,
          remedy: 'A column map can name the unit.',
        },
      ),
    ];
  });
}
