// Arrives: swaps.json. Leaves: what each change to a meal did to the plant iron taken up, as measured.
import { z } from 'zod';
import rows from './swaps.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  kind: z.enum(['swap', 'answer']),
  size: z.string(),
  /** Per cent change of the iron taken up from one meal; both ends over the studies. Null where the source gives no figure. */
  changePercent: z.strictObject({ low: z.number(), high: z.number() }).nullable(),
});

export type SwapRow = z.infer<typeof row>;

/** Single-meal measurements; a whole day changes far less. */
export const swapRows: readonly SwapRow[] = readRows<SwapRow>('swaps', row, rows);
