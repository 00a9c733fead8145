// Nothing arrives; the LOINC codes whose names were seen in an opened source leave.
// This material contains content from LOINC (http://loinc.org). LOINC is copyright Regenstrief Institute, Inc.
import { z } from 'zod';
import { readRows, rowFields } from '../knowledge/row.js';
import { analytes } from '../terms.js';
import rows from './loinc.json' with { type: 'json' };

const loincRow = z.object({
  ...rowFields,
  id: z.string().regex(/^\d+-\d$/),
  analyte: z.enum(analytes).nullable(),
  family: z.enum([
    'mass in a volume',
    'amount in a volume',
    'percent or fraction',
    'volume',
    'mass of one cell',
    'count in a volume',
  ]),
});

export type LoincRow = z.infer<typeof loincRow>;

const loinc: readonly LoincRow[] = readRows('loinc', loincRow, rows);

/**
 * Row of a LOINC code; null for a code that is not in the table. A row without an analyte is another test.
 * @example loincRowOf('2276-4')?.analyte // 'ferritin'
 */
export function loincRowOf(code: string): LoincRow | null {
  return loinc.find(({ id }) => id === code.trim()) ?? null;
}
