// A row of the long form (one row a result) arrives; its facts leave.
import type { Problem } from '../../problem.js';
import type { Analyte } from '../../terms.js';
import { at, fault } from '../fault.js';
import { whichAnalyte } from '../which-analyte.js';
import { cellOf, type Proved } from './cells.js';
import { personOf } from './person.js';
import type { Plan } from './plan.js';
import { resultOf } from './result.js';
import type { RowFacts } from './row-facts.js';
import type { TableRow } from './table.js';

type Named =
  | { readonly analyte: Analyte }
  | { readonly problem: Problem }
  | { readonly ignored: Problem };

/** Facts of one row. Problems: an unknown test, a contradiction between name, code and unit, a bad value. */
export function longRow(
  file: string,
  plan: Plan,
  proved: Proved,
  row: TableRow,
): { readonly facts: RowFacts; readonly ignored: readonly Problem[] } {
  const person = personOf(file, plan, proved, row);
  const name = cellOf(plan, row, 'test') ?? '';
  const named = testOf(file, plan, row, name);
  if ('ignored' in named) return { facts: person, ignored: [named.ignored] };
  if ('problem' in named)
    return { facts: { ...person, problems: [...person.problems, named.problem] }, ignored: [] };
  const cells = {
    value: cellOf(plan, row, 'value'),
    comparator: cellOf(plan, row, 'comparator'),
    unit: cellOf(plan, row, 'unit'),
    low: cellOf(plan, row, 'low'),
    high: cellOf(plan, row, 'high'),
    range: cellOf(plan, row, 'range'),
    flag: cellOf(plan, row, 'flag'),
    status: cellOf(plan, row, 'status'),
  };
  const test = { analyte: named.analyte, name: name === '' ? named.analyte : name };
  const read = resultOf(test, cells, at(file, row.row, named.analyte), plan, proved);
  const results =
    read.result === null ? [] : [{ collected: person.collected, result: read.result }];
  return {
    facts: { ...person, results, problems: [...person.problems, ...read.problems] },
    ignored: read.ignored,
  };
}

function testOf(file: string, plan: Plan, row: TableRow, name: string): Named {
  const place = at(file, row.row, 'test');
  const tests = plan.map.tests ?? {};
  const mapped = Object.hasOwn(tests, name) ? tests[name] : undefined;
  if (mapped === 'ignore')
    return {
      ignored: fault('test-ignored', place, 'passed over as the column map says', { found: name }),
    };
  if (mapped !== undefined) return { analyte: mapped };
  const code = cellOf(plan, row, 'code');
  if (name === '' && code === null) {
    return {
      problem: fault('no-test', place, 'cannot tell which test this row is', {
        expected: "a test's name",
      }),
    };
  }
  const which = whichAnalyte({
    name,
    code,
    unit: cellOf(plan, row, 'unit'),
    specimen: cellOf(plan, row, 'specimen'),
  });
  if (which.is === 'analyte') return which;
  if (which.is === 'question') {
    const { cannot, found, expected } = which;
    return { problem: fault('which-test', place, cannot, { found, expected }) };
  }
  if (which.is === 'other') {
    const what = which.what ?? 'a test this program does not explain';
    return { ignored: fault('other-test', place, `passed over: ${what}`, { found: name }) };
  }
  return {
    problem: fault('unknown-test', place, 'cannot tell which test this is', {
      found: name,
      expected: 'a name this program knows, such as Ferritin',
      remedy:
        which.near === null
          ? "A column map can name it under 'tests', or say 'ignore'."
          : `Did you mean '${which.near}'?`,
    }),
  };
}
