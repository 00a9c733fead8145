// Arrives: food-policy.json. Leaves: ages, spreads and counts that food choosing keeps to.
import { z } from 'zod';
import rows from './food-policy.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  value: z.number().positive(),
  unit: z.string(),
});

type FoodPolicyRow = z.infer<typeof row>;

/** Limits by id; most are proposals for a clinician to review. */
const foodPolicyRows: readonly FoodPolicyRow[] = readRows<FoodPolicyRow>('food-policy', row, rows);

const byId = new Map(foodPolicyRows.map(({ id, value }) => [id, value]));

/**
 * One limit by its id, in the row's own unit.
 * @throws when no row has that id: our bug.
 * @example foodLimit('no-food-under') // 12 (months)
 */
export function foodLimit(id: string): number {
  const found = byId.get(id);
  if (found === undefined) throw new Error(`food-policy: no row ${id}`);
  return found;
}
