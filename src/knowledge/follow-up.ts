// In: nothing. Out: rows for holds, disease rules, change between two tests and clinicians' pathways.
import { z } from 'zod';
import { analytes, bleedings, conditions, holdTiers, symptoms } from '../terms.js';
import diseaseRows from './disease-rules.json' with { type: 'json' };
import { groupKinds } from './groups.js';
import signRows from './hold-signs.json' with { type: 'json' };
import holdRows from './hold-rules.json' with { type: 'json' };
import pathwayRows from './pathways.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';
import variationRows from './variation.json' with { type: 'json' };

const holdRow = z.object({
  ...rowFields,
  code: z.string().min(1),
  tier: z.enum(holdTiers),
  analyte: z.enum(analytes),
  side: z.enum(['below', 'above']),
  value: z.number(),
  unit: z.string().min(1),
  sex: z.enum(['any', 'female', 'male']),
  kinds: z.array(z.enum(groupKinds)).min(1),
  needs: z.enum(['nothing', 'danger-symptom', 'clot-symptom', 'fever']),
});
export type HoldRow = z.infer<typeof holdRow>;
/** A single value that raises the hold to a tier. */
export const holdRules: readonly HoldRow[] = readRows('hold-rules', holdRow, holdRows);

const signRow = z.object({
  ...rowFields,
  symptoms: z.array(z.enum(symptoms)),
  bleedings: z.array(z.enum(bleedings)),
  /** Marks of HL7 table 0078. */
  marks: z.array(z.enum(['N', 'L', 'H', 'LU', 'HU', 'LL', 'HH', 'A', 'AA'])),
});
export type SignRow = z.infer<typeof signRow>;
/** Signs of the body, and marks of the laboratory, that matter whatever the values are. */
export const holdSigns: readonly SignRow[] = readRows('hold-signs', signRow, signRows);

/** The signs of that id; an unknown id is our bug, so it throws. */
export function signs(id: string): SignRow {
  const row = holdSigns.find((one) => one.id === id);
  if (row === undefined) throw new Error(`knowledge: no signs called ${id}`);
  return row;
}

const diseaseRow = z.object({
  ...rowFields,
  condition: z.enum(conditions),
  role: z.enum([
    'ferritin-at-most',
    'saturation-at-most',
    'ferritin-below',
    'ferritin-below-with-saturation',
    'saturation-below',
    'ferritin-below-inflamed',
  ]),
  value: z.number(),
  unit: z.string().min(1),
});
export type DiseaseRow = z.infer<typeof diseaseRow>;
/** Iron deficiency as published for one disease. */
export const diseaseRules: readonly DiseaseRow[] = readRows(
  'disease-rules',
  diseaseRow,
  diseaseRows,
);

const variationRow = z.object({
  ...rowFields,
  analyte: z.enum(analytes),
  method: z.enum(['symmetric', 'log-normal']),
  /** Coefficient of variation within a person and of the assay, per cent. */
  within: z.number().positive(),
  analytical: z.number().positive(),
  unit: z.literal('%'),
});
export type VariationRow = z.infer<typeof variationRow>;
export const variations: readonly VariationRow[] = readRows(
  'variation',
  variationRow,
  variationRows,
);

const pathwayRow = z.object({
  ...rowFields,
  code: z.string().min(1),
  value: z.number().nullable(),
  unit: z.string().nullable(),
});
export type PathwayRow = z.infer<typeof pathwayRow>;
const pathways: readonly PathwayRow[] = readRows('pathways', pathwayRow, pathwayRows);
const pathwaysById: ReadonlyMap<string, PathwayRow> = new Map(pathways.map((row) => [row.id, row]));
export const allPathways = pathways;

/** The pathway of that id; an unknown id is our bug, so it throws. */
export function pathway(id: string): PathwayRow {
  const row = pathwaysById.get(id);
  if (row === undefined) throw new Error(`knowledge: no pathway called ${id}`);
  return row;
}
