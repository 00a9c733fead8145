// Arrives: need-factors.json. Leaves: what multiplies or adds to the daily iron need.
import { z } from 'zod';
import rows from './need-factors.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  low: z.number(),
  high: z.number(),
  unit: z.string(),
});

export type NeedFactor = z.infer<typeof row>;

/** Factors by id. */
export const needFactors: readonly NeedFactor[] = readRows<NeedFactor>('need-factors', row, rows);
