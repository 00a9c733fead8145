// The age of the person arrives; to whom the letter speaks leaves.
import { z } from 'zod';
import rows from '../knowledge/letter-ages.json' with { type: 'json' };
import { readRows, rowFields } from '../knowledge/row.js';
import type { Patient } from '../report/report.js';

const ages = readRows(
  'letter-ages',
  z.strictObject({ ...rowFields, belowMonths: z.number().int().positive() }),
  rows,
);

function below(id: string, patient: Patient): boolean {
  const row = ages.find((each) => each.id === id);
  if (row === undefined) throw new Error(`knowledge table letter-ages: no row ${id}`);
  return patient.ageMonths !== null && patient.ageMonths < row.belowMonths;
}

/** A child's letter goes to the parent or carer. */
export const needsCarer = (patient: Patient): boolean => below('letter-to-carer', patient);
export const tooYoungForAnalogy = (patient: Patient): boolean => below('no-analogy', patient);
