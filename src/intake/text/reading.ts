// What has been read of a pasted text so far, line by line.
import type { Problem } from '../../problem.js';
import { blankPatient } from '../blank.js';
import type { DateOrder } from '../date-as-written.js';
import { at, fault } from '../fault.js';
import type { DatedResult } from '../order-panels.js';
import type { WrittenPatient } from '../written.js';
import type { TextColumn } from './columns.js';

export class Reading {
  readonly dated: DatedResult[] = [];
  readonly problems: Problem[] = [];
  readonly ignored: Problem[] = [];
  patient: WrittenPatient = blankPatient;
  /** Day of the results below. */
  collected: string | null = null;
  /** Time of day of each day's sample. */
  readonly times = new Map<string | null, string>();
  fasting: boolean | null = null;
  /** Of the table that the lines below belong to. */
  columns: readonly TextColumn[] | null = null;

  /**
   * @param order of day and month, as the whole text proves it.
   * @param decimalComma some number of the text can only have one.
   */
  constructor(
    readonly file: string,
    readonly order: DateOrder | null,
    readonly decimalComma: boolean,
  ) {}

  /** Notes why a line was passed over. */
  pass(row: number, cannot: string): void {
    this.ignored.push(fault('line-ignored', at(this.file, row), cannot));
  }

  /** Asks for the order of day and month. */
  askOrder(row: number): void {
    const cannot = 'cannot tell the day from the month in these dates';
    this.problems.push(
      fault('day-or-month', at(this.file, row), cannot, { expected: 'dates such as 2026-11-25' }),
    );
  }
}
