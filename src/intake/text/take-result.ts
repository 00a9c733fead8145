// One result as a line or a cell says it arrives; it joins what was read of the text so far, or the question about it does.
import { at, fault } from '../fault.js';
import { saysNoResult } from '../no-result.js';
import { readBesideCommas, readNumberAsWritten } from '../number-as-written.js';
import { whichAnalyte } from '../which-analyte.js';
import type { WrittenInterval } from '../written.js';
import type { Reading } from './reading.js';

export type Said = {
  readonly name: string;
  readonly value: string;
  readonly unit: string | null;
  readonly interval: WrittenInterval | null;
  readonly flag: string | null;
  /** Such as 'preliminary'; null where the text says nothing. */
  readonly status?: string | null;
  readonly specimen?: string | null;
};

/** Takes one result; true when the line is a test of ours, even a doubtful one. */
export function takeResult(
  reading: Reading,
  said: Said,
  collected: string | null,
  row: number,
): boolean {
  const { name, unit, interval, flag, status = null, specimen = null } = said;
  const which = whichAnalyte({ name, code: null, unit, specimen });
  const here = (field: string) => at(reading.file, row, field);
  if (which.is === 'other') {
    reading.pass(row, `passed over: ${which.what ?? 'a test this program does not explain'}`);
    return false;
  }
  if (which.is === 'unknown' && which.near === null) {
    reading.pass(row, 'passed over: no name of a test this program knows');
    return false;
  }
  if (which.is !== 'analyte') {
    const question = which.is === 'question';
    reading.problems.push(
      fault(
        'which-test',
        here('test'),
        question ? which.cannot : 'cannot tell which test this is',
        {
          found: question ? which.found : null,
          expected: question ? which.expected : 'a name this program knows',
          remedy: question ? null : `Did you mean '${which.near}'?`,
        },
      ),
    );
    return true;
  }
  if (saysNoResult(said.value)) {
    reading.pass(row, `cannot find a value of ${which.analyte} in this line`);
    return false;
  }
  const number = (reading.decimalComma ? readBesideCommas : readNumberAsWritten)(said.value);
  if (!number.ok) {
    const more = { found: said.value, expected: number.expected };
    reading.problems.push(fault(number.code, here(which.analyte), number.cannot, more));
    return true;
  }
  reading.dated.push({
    collected,
    result: {
      place: here(which.analyte),
      analyte: which.analyte,
      name,
      value: number.value,
      comparator: number.comparator,
      unit,
      interval,
      labFlag: flag,
      status,
      confirmed: false,
    },
  });
  return true;
}
