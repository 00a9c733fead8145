// Arrives: tablet-points.json. Leaves: what is said of prescribed iron tablets, and when.
import { z } from 'zod';
import rows from './tablet-points.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  when: z.enum(['always', 'other-medicines', 'fasting-month']),
});

export type TabletPointRow = z.infer<typeof row>;

/** Points in the order of the letter. */
export const tabletPointRows: readonly TabletPointRow[] = readRows<TabletPointRow>(
  'tablet-points',
  row,
  rows,
);
