// A laboratory's table arrives; a column map to look over leaves, with what is doubtful in it.
import { type Checked, fine, type Problem } from '../../problem.js';
import { at, fault } from '../fault.js';
import { orderProvedBy, needsOrder } from '../date-as-written.js';
import { type ColumnMeaning, meaningOfColumn } from '../names.js';
import { provesDecimalComma } from '../number-as-written.js';
import { unitFamily } from '../unit-family.js';
import { whichAnalyte } from '../which-analyte.js';
import type { ColumnMap, MappedColumn } from './column-map.js';
import type { Table } from './table.js';
import { testHeader } from './test-header.js';
import { unitsThatFit, type ValuesSay, valuesSay } from './values-say.js';

/**
 * Proposes what the columns of a table mean, by their names, units and what stands below them.
 * It is a proposal for a person to confirm: the notes say what could not be told.
 * @example proposeFor(table) // { columns: { 'Pat-Nr': 'id', 'FERR (ug/L)': { analyte: 'ferritin', unit: 'ug/L' } }, … }
 */
export function proposeFor(table: Table): Checked<ColumnMap> {
  const notes: Problem[] = [];
  const headers = table.header.cells.map((header) => header.trim());
  const byName = new Set(headers.map(meaningOfColumn));
  const columns = Object.fromEntries(
    headers.flatMap((name, i): [string, MappedColumn][] =>
      name === '' ? [] : [[name, proposed(table, name, i, byName, notes)]],
    ),
  );
  const cells = table.rows.flatMap((row) => row.cells.map((cell) => cell.trim()));
  const datesOpen = cells.some(needsOrder);
  const map: ColumnMap = {
    columns,
    tests: testsOf(table, columns, notes),
    dates: datesOpen ? orderProvedBy(cells) : 'iso',
    decimal: cells.some(provesDecimalComma) ? ',' : null,
  };
  if (datesOpen && map.dates === null) {
    notes.push(
      fault('day-or-month', at(table.file, null, 'dates'), 'cannot tell the day from the month', {
        expected: "'day-first' or 'month-first'",
      }),
    );
  }
  return fine(map, notes);
}

/** @param byName what other columns already mean by their names: values propose nothing twice. */
function proposed(
  table: Table,
  name: string,
  index: number,
  byName: ReadonlySet<ColumnMeaning | null>,
  notes: Problem[],
): MappedColumn {
  const place = at(table.file, table.header.row, name);
  const meaning = meaningOfColumn(name);
  if (meaning !== null) return meaning;
  const { name: test, unit } = testHeader(name);
  const which = whichAnalyte({ name: test, code: null, unit, specimen: null });
  const below = table.rows.map((row) => (row.cells[index] ?? '').trim());
  if (which.is === 'analyte') {
    if (unit === null) {
      const fitting = unitsThatFit(which.analyte, below);
      const hint = `By their size the values may be in ${fitting.join(' or ')}; ask the laboratory.`;
      notes.push(
        fault('no-unit', place, 'cannot tell the unit of this column', {
          expected: "a unit in the map, such as 'ug/L'",
          remedy: fitting.length === 0 ? null : hint,
        }),
      );
    }
    return { analyte: which.analyte, unit };
  }
  if (which.is === 'question')
    notes.push(fault('which-test', place, which.cannot, { found: which.found }));
  if (which.is === 'unknown') {
    const filled = below.filter((cell) => cell !== '');
    if (filled.length > 0 && filled.every((cell) => unitFamily(cell) !== null)) return 'unit';
    const say = valuesSay(below);
    const guess = meaningByValues(say, byName);
    if (guess !== null) {
      const words = `proposed '${guess}' by the ${say} below it, not by its name`;
      notes.push(fault('by-values', place, words));
      return guess;
    }
    const near = which.near === null ? null : `Did you mean '${which.near}'?`;
    notes.push(
      fault(
        'unknown-column',
        place,
        'cannot tell what this column holds; it would be passed over',
        { remedy: near },
      ),
    );
  }
  return 'ignore';
}

/** Dates beside a named birth date can only be the sample's; a second column of them is left open. */
function meaningByValues(
  say: ValuesSay,
  byName: ReadonlySet<ColumnMeaning | null>,
): 'collected' | 'sex' | null {
  if (say === 'dates' && byName.has('birthDate') && !byName.has('collected')) return 'collected';
  return say === 'sexes' && !byName.has('sex') ? 'sex' : null;
}

/** Names of tests that no table has, each for a person to decide; only names that stand in a column of tests. */
function testsOf(
  table: Table,
  columns: Readonly<Record<string, MappedColumn>>,
  notes: Problem[],
): ColumnMap['tests'] {
  const index = table.header.cells.findIndex((header) => columns[header.trim()] === 'test');
  if (index < 0) return null;
  const names = new Set(table.rows.map((row) => (row.cells[index] ?? '').trim()));
  const unknown = [...names].filter(
    (name) =>
      name !== '' &&
      whichAnalyte({ name, code: null, unit: null, specimen: null }).is === 'unknown',
  );
  for (const name of unknown) {
    notes.push(
      fault(
        'unknown-test',
        at(table.file, null, 'tests'),
        'cannot tell which test this is; it would be passed over',
        { found: name },
      ),
    );
  }
  return Object.fromEntries(unknown.map((name) => [name, 'ignore' as const]));
}
