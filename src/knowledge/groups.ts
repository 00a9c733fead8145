// In: nothing. Out: whom a result may be compared with, and the haemoglobin limits and adjustments of each.
import { z } from 'zod';
import altitudeRows from './altitude.json' with { type: 'json' };
import groupRows from './groups.json' with { type: 'json' };
import haemoglobinRows from './haemoglobin-limits.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';
import smokingRows from './smoking.json' with { type: 'json' };

export const groupKinds = ['child', 'adult', 'pregnant', 'after-birth'] as const;
export type GroupKind = (typeof groupKinds)[number];
const kind = z.enum(groupKinds);
const sex = z.enum(['any', 'female', 'male']);

const groupRow = z.object({
  ...rowFields,
  group: z.string().min(1),
  sex,
  kind,
  fromMonths: z.number(),
  belowMonths: z.number().nullable(),
});
export type GroupRow = z.infer<typeof groupRow>;
/** Groups by age and sex; pregnancy and the weeks after birth stand apart. */
export const groupsByAge: readonly GroupRow[] = readRows('groups', groupRow, groupRows);

const haemoglobinRow = z.object({
  ...rowFields,
  group: z.string().min(1),
  guideline: z.enum(['who', 'bsh', 'adult-limits']),
  band: z.enum(['anaemia', 'moderate', 'severe']),
  value: z.number(),
  unit: z.literal('g/L'),
});
export type HaemoglobinRow = z.infer<typeof haemoglobinRow>;
/** Haemoglobin below which a group has anaemia, moderate or severe anaemia, g/L. */
export const haemoglobinLimits: readonly HaemoglobinRow[] = readRows(
  'haemoglobin-limits',
  haemoglobinRow,
  haemoglobinRows,
);

const altitudeRow = z.object({
  ...rowFields,
  fromMetres: z.number(),
  belowMetres: z.number(),
  value: z.number(),
  unit: z.literal('g/L'),
});
/** What to add to a WHO limit by metres above the sea, g/L. */
export const altitudes: readonly z.infer<typeof altitudeRow>[] = readRows(
  'altitude',
  altitudeRow,
  altitudeRows,
);

const smokingRow = z.object({
  ...rowFields,
  fromCigarettes: z.number().nullable(),
  belowCigarettes: z.number().nullable(),
  value: z.number(),
  unit: z.literal('g/L'),
});
/** What to add to a WHO limit by cigarettes a day, g/L; the row without a start is for an amount not told. */
export const smokings: readonly z.infer<typeof smokingRow>[] = readRows(
  'smoking',
  smokingRow,
  smokingRows,
);
