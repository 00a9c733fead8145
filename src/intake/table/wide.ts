// A row of the wide form (one row a person and day, one column a test) arrives; its facts leave.
import type { Problem } from '../../problem.js';
import { at } from '../fault.js';
import { saysNoResult } from '../no-result.js';
import { whichAnalyte } from '../which-analyte.js';
import { cellOf, filled, type Proved } from './cells.js';
import type { AnalytePart } from './column-map.js';
import { personOf } from './person.js';
import type { Plan, ResultColumn } from './plan.js';
import { resultOf } from './result.js';
import type { RowFacts } from './row-facts.js';
import type { TableRow } from './table.js';
import { fault } from '../fault.js';

/** Facts of one row. An empty cell is a test not made; it is not a fault. */
export function wideRow(
  file: string,
  plan: Plan,
  proved: Proved,
  row: TableRow,
): { readonly facts: RowFacts; readonly ignored: readonly Problem[] } {
  const person = personOf(file, plan, proved, row);
  const reads = plan.results
    .filter((column) => filled(row, column) !== null)
    .map((column) => readCell(file, plan, proved, row, column));
  const results = reads.flatMap(({ result }) =>
    result === null ? [] : [{ collected: person.collected, result }],
  );
  return {
    facts: {
      ...person,
      results,
      problems: [...person.problems, ...reads.flatMap(({ problems }) => problems)],
    },
    ignored: reads.flatMap(({ ignored }) => ignored),
  };
}

function readCell(file: string, plan: Plan, proved: Proved, row: TableRow, column: ResultColumn) {
  const part = (wanted: AnalytePart) =>
    filled(row, plan.parts.get(`${column.analyte} ${wanted}`) ?? null);
  const value = filled(row, column);
  const unit = column.unit ?? part('unit');
  const place = at(file, row.row, column.analyte);
  if (unit !== null && column.unit === null && !saysNoResult(value ?? '')) {
    const which = whichAnalyte({ name: column.name, code: null, unit, specimen: null });
    if (which.is === 'question') {
      const { cannot, found, expected } = which;
      return {
        result: null,
        problems: [fault('which-test', place, cannot, { found, expected })],
        ignored: [],
      };
    }
  }
  const specimen = cellOf(plan, row, 'specimen');
  const measured = whichAnalyte({ name: column.analyte, code: null, unit: null, specimen });
  if (specimen !== null && measured.is === 'other') {
    const why = `passed over: ${measured.what ?? column.analyte}`;
    return { result: null, problems: [], ignored: [fault('other-test', place, why)] };
  }
  const cells = {
    value,
    comparator: null,
    unit,
    low: part('low'),
    high: part('high'),
    range: part('range'),
    flag: part('flag'),
    status: null,
  };
  return resultOf(column, cells, place, plan, proved);
}
