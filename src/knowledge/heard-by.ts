// Arrives: heard-by.json. Leaves: how long silence may last before the patient is asked to call.
import { z } from 'zod';
import { holdTiers } from '../terms.js';
import rows from './heard-by.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  tier: z.enum(holdTiers),
  days: z.number().int().positive(),
});

export type HeardByRow = z.infer<typeof row>;

/** Days from the letter, for each tier. */
export const heardByRows: readonly HeardByRow[] = readRows<HeardByRow>('heard-by', row, rows);
