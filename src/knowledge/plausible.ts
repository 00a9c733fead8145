// In: nothing. Out: what is possible, what is worth asking about, and what values must agree with each other.
import { z } from 'zod';
import { analytes } from '../terms.js';
import crossRows from './cross-checks.json' with { type: 'json' };
import windowRows from './interval-windows.json' with { type: 'json' };
import limitRows from './plausible.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';
import spanRows from './spans.json' with { type: 'json' };
import slipRows from './unit-slips.json' with { type: 'json' };

const limitRow = z.object({
  ...rowFields,
  analyte: z.enum(analytes),
  unit: z.string(),
  rejectBelow: z.number(),
  rejectAbove: z.number(),
  askBelow: z.number(),
  askAbove: z.number(),
});
export type LimitRow = z.infer<typeof limitRow>;

/** One row an analyte, in our unit: outside the reject limits impossible, outside the ask limits a question. */
export const plausibleLimits: readonly LimitRow[] = readRows('plausible', limitRow, limitRows);

const slipRow = z.object({
  ...rowFields,
  analyte: z.enum(analytes),
  codes: z.array(z.string()),
  fromValue: z.number().nullable(),
  toValue: z.number().nullable(),
  likely: z.string(),
  verdict: z.enum(['ask', 'reject']),
});
export type SlipRow = z.infer<typeof slipRow>;

/** Units that are almost always a slip for the analyte, with the unit to ask about; values in the written unit. */
export const unitSlips: readonly SlipRow[] = readRows('unit-slips', slipRow, slipRows);

const windowRow = z.object({
  ...rowFields,
  analyte: z.enum(analytes),
  unit: z.string(),
  lowFrom: z.number(),
  lowTo: z.number(),
  highFrom: z.number(),
  highTo: z.number(),
});
export type WindowRow = z.infer<typeof windowRow>;

/** Where the ends of a laboratory's printed interval lie, in our unit; outside, the printed unit is in doubt. */
export const intervalWindows: readonly WindowRow[] = readRows(
  'interval-windows',
  windowRow,
  windowRows,
);

const crossRow = z.object({
  ...rowFields,
  id: z.enum(['haematocrit-from-mcv', 'mch-from-haemoglobin', 'mchc', 'tibc-over-transferrin']),
  analytes: z.array(z.enum(analytes)),
  low: z.number(),
  high: z.number(),
});
export type CrossRow = z.infer<typeof crossRow>;

/** Ratios that must lie between `low` and `high` when the values belong together. */
export const crossChecks: readonly CrossRow[] = readRows('cross-checks', crossRow, crossRows);

const spanNames = [
  'age-months',
  'pregnancy-age-months',
  'pregnancy-weeks',
  'trimester-1-weeks',
  'trimester-2-weeks',
  'trimester-3-weeks',
  'after-birth-weeks',
  'menstruating-age-months',
  'altitude-metres',
  'cigarettes-per-day',
  'hours-before-sample',
  'days-before-sample',
] as const;
export type SpanName = (typeof spanNames)[number];

const spanRow = z.object({
  ...rowFields,
  id: z.enum(spanNames),
  low: z.number(),
  high: z.number(),
  unit: z.string(),
});
export type SpanRow = z.infer<typeof spanRow>;

/** Facts about a person that the program takes at their word, both ends included. */
const spans: readonly SpanRow[] = readRows('spans', spanRow, spanRows);

/**
 * Row of one span; a missing row is our bug.
 * @example spanOf('trimester-2-weeks').low // 14
 */
export function spanOf(name: SpanName): SpanRow {
  const row = spans.find(({ id }) => id === name);
  if (row === undefined) throw new Error(`knowledge table spans: no row '${name}'`);
  return row;
}
