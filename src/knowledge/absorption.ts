// Arrives: absorption.json. Leaves: coefficients and domains of two published absorption equations.
import { z } from 'zod';
import rows from './absorption.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  value: z.number(),
  unit: z.string(),
});

export type AbsorptionRow = z.infer<typeof row>;

/** Coefficients by id. */
export const absorptionRows: readonly AbsorptionRow[] = readRows<AbsorptionRow>(
  'absorption',
  row,
  rows,
);

const byId = new Map(absorptionRows.map(({ id, value }) => [id, value]));

/**
 * One coefficient by its id.
 * @throws when no row has that id: our bug.
 * @example coefficient('collings-constant') // 1.82, Collings 2013
 */
export function coefficient(id: string): number {
  const found = byId.get(id);
  if (found === undefined) throw new Error(`absorption: no row ${id}`);
  return found;
}
