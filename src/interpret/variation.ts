// In: the row of an analyte's variation. Out: the change chance alone could make, in per cent.
import { type VariationRow, variations } from '../knowledge/follow-up.js';
import { limit } from '../knowledge/limit.js';
import type { Analyte } from '../terms.js';

export type ChangeLimit = {
  readonly up: number;
  readonly down: number;
  readonly rules: readonly string[];
};

/**
 * Reference change value, 95 % two-sided, in per cent: z * sqrt(2) * sqrt(CVa^2 + CVi^2), or its log-normal form.
 * @example changeLimitOf(row('ferritin')) // up 53, down 34
 */
export function changeLimitOf(row: VariationRow): ChangeLimit {
  const z = limit('rcv-z');
  const cv = Math.hypot(row.within, row.analytical);
  const rules = [row.id, z.id];
  if (row.method === 'symmetric') {
    const both = z.value * Math.SQRT2 * cv;
    return { up: both, down: both, rules };
  }
  const sigma = Math.sqrt(Math.log(1 + (cv / 100) ** 2));
  const step = z.value * Math.SQRT2 * sigma;
  return { up: 100 * (Math.exp(step) - 1), down: 100 * (1 - Math.exp(-step)), rules };
}

/** The change limit of an analyte, or null where no variation is published here. */
export function changeLimit(analyte: Analyte): ChangeLimit | null {
  const row = variations.find((one) => one.analyte === analyte);
  return row === undefined ? null : changeLimitOf(row);
}
