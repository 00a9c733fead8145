// The parts of one result as cells arrive; a written result leaves, or its problems, or nothing where none was measured.
import type { Place, Problem } from '../../problem.js';
import type { Analyte } from '../../terms.js';
import { fault } from '../fault.js';
import { readInterval } from '../interval-as-written.js';
import { saysNoResult } from '../no-result.js';
import { readBesideCommas, readNumberAsWritten } from '../number-as-written.js';
import type { WrittenResult } from '../written.js';
import type { Proved } from './cells.js';
import type { Plan } from './plan.js';

export type ResultCells = {
  readonly value: string | null;
  readonly comparator: string | null;
  readonly unit: string | null;
  readonly low: string | null;
  readonly high: string | null;
  readonly range: string | null;
  readonly flag: string | null;
  readonly status: string | null;
};

export type ResultRead = {
  readonly result: WrittenResult | null;
  readonly problems: readonly Problem[];
  readonly ignored: readonly Problem[];
};

/**
 * One result from its cells. Problems: a value that is no number, a number with two readings, no unit.
 * A cell that says there is no result, such as 'pending', is passed over with a note.
 */
export function resultOf(
  test: { readonly analyte: Analyte; readonly name: string },
  cells: ResultCells,
  place: Place,
  plan: Plan,
  proved: Proved,
): ResultRead {
  const text = cells.value ?? '';
  if (saysNoResult(text)) {
    const note = fault('no-value', place, 'cannot find a value; the test was passed over', {
      found: cells.value,
    });
    return { result: null, problems: [], ignored: [note] };
  }
  const problems: Problem[] = [];
  const readNumber = proved.decimalComma ? readBesideCommas : readNumberAsWritten;
  const number = readNumber(text, plan.map.decimal ?? null);
  if (!number.ok) {
    problems.push(
      fault(number.code, place, number.cannot, { found: text, expected: number.expected }),
    );
  }
  if (cells.unit === null) {
    problems.push(
      fault('no-unit', place, 'cannot use a value without its unit', {
        found: text,
        expected: 'a unit as the laboratory printed it, such as ug/L',
      }),
    );
  }
  const inValue = number.ok ? number.comparator : null;
  if (cells.comparator !== null && inValue !== null && cells.comparator !== inValue) {
    problems.push(
      fault('two-comparators', place, 'cannot tell which comparator holds', {
        found: `${cells.comparator} and ${inValue}`,
      }),
    );
  }
  if (!number.ok || problems.length > 0) return { result: null, problems, ignored: [] };
  const printed = readInterval(cells.range, cells.unit);
  const interval =
    printed === null && cells.low === null && cells.high === null
      ? null
      : {
          low: cells.low ?? printed?.low ?? null,
          high: cells.high ?? printed?.high ?? null,
          text: printed?.text ?? null,
        };
  const result: WrittenResult = {
    place,
    analyte: test.analyte,
    name: test.name,
    value: number.value,
    comparator: inValue ?? cells.comparator,
    unit: cells.unit,
    interval,
    labFlag: cells.flag,
    status: cells.status,
    confirmed: false,
  };
  return { result, problems: [], ignored: [] };
}
