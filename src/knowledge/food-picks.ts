// Arrives: food-picks.json. Leaves: foods thought of first for each way of eating.
import { z } from 'zod';
import { diets } from '../terms.js';
import rows from './food-picks.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  diet: z.enum([...diets, 'not-known', 'partners', 'seldom']),
  foods: z.array(z.string()).min(1),
});

export type FoodPick = z.infer<typeof row>;

/** First picks by diet, best first; `seldom` holds foods few people eat outside their own kitchen's custom. */
export const foodPicks: readonly FoodPick[] = readRows<FoodPick>('food-picks', row, rows);
