// Arrives: needs.json. Leaves: the iron people are advised to eat in a day, by age, sex and state.
import { z } from 'zod';
import rows from './needs.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  body: z.enum(['iom', 'uk', 'efsa']),
  group: z.string(),
  sex: z.enum(['female', 'male']).nullable(),
  /** Whole months, from included, to excluded; null is open. */
  fromMonths: z.number().nullable(),
  toMonths: z.number().nullable(),
  state: z.enum(['usual', 'pregnant', 'breastfeeding']),
  /** True or false where the row depends on periods, null where it does not. */
  periods: z.boolean().nullable(),
  /** mg/d. */
  milligrams: z.number().positive(),
  upperLevel: z.number().positive().nullable(),
});

export type Need = z.infer<typeof row>;

/** Reference intakes in mg a day; for healthy people, not for people treated with iron. */
export const needs: readonly Need[] = readRows<Need>('needs', row, rows);
