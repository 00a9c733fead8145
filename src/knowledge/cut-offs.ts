// In: nothing. Out: cut-offs of ferritin and saturation, usual intervals, and where "well" outside begins.
import { z } from 'zod';
import { analytes } from '../terms.js';
import ferritinRows from './ferritin-limits.json' with { type: 'json' };
import { groupKinds } from './groups.js';
import bandRows from './position-bands.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';
import saturationRows from './saturation-limits.json' with { type: 'json' };
import intervalRows from './usual-intervals.json' with { type: 'json' };

const ferritinRow = z.object({
  ...rowFields,
  groups: z.array(z.string()).min(1),
  role: z.enum([
    'low',
    'stores-likely-low',
    'may-be-low-with-anaemia',
    'low-inflamed',
    'may-be-low-inflamed',
    'cannot-tell-without-crp',
    'high',
    'high-not-menstruating',
    'high-inflamed',
  ]),
  value: z.number(),
  unit: z.literal('ug/L'),
});
export type FerritinRow = z.infer<typeof ferritinRow>;
/** Ferritin cut-offs by group and by what they decide, ug/L. */
export const ferritinLimits: readonly FerritinRow[] = readRows(
  'ferritin-limits',
  ferritinRow,
  ferritinRows,
);

const saturationRow = z.object({
  ...rowFields,
  sex: z.enum(['any', 'female', 'male']),
  role: z.enum(['low', 'borderline', 'high']),
  value: z.number(),
  unit: z.literal('%'),
});
export type SaturationRow = z.infer<typeof saturationRow>;
/** Saturation cut-offs, per cent; the high row of a sex decides before the one for any. */
export const saturationLimits: readonly SaturationRow[] = readRows(
  'saturation-limits',
  saturationRow,
  saturationRows,
);

const intervalRow = z.object({
  ...rowFields,
  analyte: z.enum(analytes),
  /** A sex, 'any', or the one group it is for. */
  sex: z.string().min(1),
  kinds: z.array(z.enum(groupKinds)).min(1),
  low: z.number().nullable(),
  high: z.number().nullable(),
  unit: z.string().min(1),
});
export type UsualIntervalRow = z.infer<typeof intervalRow>;
/** Published usual intervals, used where the laboratory prints none. */
export const usualIntervals: readonly UsualIntervalRow[] = readRows(
  'usual-intervals',
  intervalRow,
  intervalRows,
);

const bandRow = z.object({
  ...rowFields,
  analyte: z.enum(analytes),
  /** Share of the lower limit below which a result is well below. */
  wellBelow: z.number().min(0).max(1),
  /** Multiple of the upper limit above which a result is well above. */
  wellAbove: z.number().min(1),
});
export type PositionBandRow = z.infer<typeof bandRow>;
/** Where 'a little' ends and 'well' begins, one row an analyte. */
export const positionBands: readonly PositionBandRow[] = readRows(
  'position-bands',
  bandRow,
  bandRows,
);
