// Arrives: medicine-gaps.json. Leaves: hours to keep between iron tablets and other medicines.
import { z } from 'zod';
import { medicines } from '../terms.js';
import rows from './medicine-gaps.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  medicine: z.enum(medicines),
  /** Null where the source gives none: ask a pharmacist. */
  hours: z.number().positive().nullable(),
});

export type MedicineGap = z.infer<typeof row>;

/** Hours between iron tablets and each medicine. */
export const medicineGaps: readonly MedicineGap[] = readRows<MedicineGap>(
  'medicine-gaps',
  row,
  rows,
);
