// In: a quantity and an interval. Out: the position told to a patient, on exact values.
import { type PositionBandRow, positionBands } from '../knowledge/cut-offs.js';
import type { Quantity } from '../report/report.js';
import type { Analyte, Level, Position } from '../terms.js';
import { above, below } from './measure.js';

export type Span = { readonly low: number | null; readonly high: number | null };

/** The row that says where 'well below' and 'well above' begin for an analyte. */
export function bandOf(analyte: Analyte): PositionBandRow {
  const row = positionBands.find((one) => one.analyte === analyte);
  // Stryker disable next-line all: every analyte has a row, so only a broken table comes here.
  if (row === undefined) throw new Error(`knowledge: no position band for ${analyte}`);
  return row;
}

/**
 * Where a quantity lies: a limit itself is in range. Null when the comparator leaves it open or no limit is given.
 * `wellLow` moves the line of 'well below' where a guideline has one (WHO's moderate anaemia).
 * @example positionIn(quantity(4), { low: 20, high: 500 }, bandOf('ferritin'), null) // 'well-below'
 */
export function positionIn(
  quantity: Quantity,
  { low, high }: Span,
  band: PositionBandRow,
  wellLow: number | null,
): Position | null {
  if (low === null && high === null) return null;
  // Nothing lies under zero, so an interval without a lower end begins there.
  const bottom = low ?? 0;
  const under = below(quantity, bottom);
  const over = high === null ? null : above(quantity, high);
  if (under === 'yes') {
    const line = wellLow === null ? bottom * band.wellBelow : Math.min(bottom, wellLow);
    return below(quantity, line) === 'yes' ? 'well-below' : 'a-little-below';
  }
  if (over === 'yes')
    return above(quantity, (high ?? 0) * band.wellAbove) === 'yes'
      ? 'well-above'
      : 'a-little-above';
  return under === 'undecided' || over === 'undecided' ? null : 'in-range';
}

/** The level a position stands for; no position is no level. */
export function levelOf(position: Position | null): Level {
  switch (position) {
    case null:
      return 'not-measured';
    case 'well-below':
    case 'a-little-below':
      return 'low';
    case 'in-range':
      return 'usual';
    case 'a-little-above':
    case 'well-above':
      return 'high';
  }
}
