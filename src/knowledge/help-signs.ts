// Arrives: help-signs.json. Leaves: signs that need help, how soon, and for whom they are printed.
import { z } from 'zod';
import rows from './help-signs.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  urgency: z.enum(['emergency', 'today', 'soon']),
  when: z.enum([
    'always',
    'not-small-child',
    'pregnant',
    'child',
    'iron-at-home',
    'tablets',
    'ferritin',
    'high-haemoglobin',
    'periods',
    'after-periods',
    'low-iron-adult',
  ]),
  /** Ferritin in ug/L above which the sign is printed; null for the others. */
  above: z.number().positive().nullable(),
});

export type HelpSignRow = z.infer<typeof row>;

/** Signs, most pressing first. */
export const helpSignRows: readonly HelpSignRow[] = readRows<HelpSignRow>('help-signs', row, rows);
