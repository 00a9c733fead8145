// Arrives: foods.json. Leaves: each food with its iron over the datasets, its portion, tags and cautions.
import { z } from 'zod';
import rows from './foods.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const amount = z.number().nonnegative();
const spread = z.strictObject({ value: amount, low: amount, high: amount });
const blocking = z.enum(['none', 'low', 'medium', 'high', 'very-high']);

const food = z
  .strictObject({
    ...rowFields,
    kind: z.string(),
    /** What the food is for: a source of iron, a vitamin C partner, or a row kept only to be left out. */
    role: z.enum(['iron', 'vitamin-c', 'blocks-iron', 'comparison', 'figures-disagree', 'alcohol']),
    haem: z.boolean(),
    /** False where a number must never be shown: sources disagree or brands differ. */
    headline: z.boolean(),
    /** mg/100 g, as the primary row has it and over every row read. */
    iron: spread,
    portionGrams: z.number().positive(),
    /** mg in one portion. */
    portionIron: spread,
    /** mg in one portion; null or nought may mean not measured. */
    portionVitaminC: amount.nullable(),
    /** mg/100 g. */
    potassium: amount.nullable(),
    calcium: amount.nullable(),
    /** ug/100 g. */
    vitaminK: amount.nullable(),
    /** ug in one portion. */
    portionRetinol: amount.nullable(),
    phytate: blocking,
    polyphenol: blocking,
    tags: z.array(z.string()),
    cautions: z.array(z.string()),
    cuisines: z.array(z.string()).min(1),
    dataset: z.enum(['CoFID-2021', 'USDA-SR28', 'IFCT-2017']),
    row: z.string().nullable(),
    rowName: z.string(),
    alternates: z.array(z.strictObject({ dataset: z.string(), row: z.string(), iron: amount })),
    /** Portions, classes, tags and cautions are ours, not the dataset's. */
    portionChecked: z.literal('proposal'),
  })
  .refine((row) => row.iron.low <= row.iron.value && row.iron.value <= row.iron.high, {
    message: 'iron lies outside its own spread',
  });

export type Food = z.infer<typeof food>;

/** Every food of the table in its order; iron in mg per 100 g as eaten unless the row's name says raw or dry. */
export const foods: readonly Food[] = readRows<Food>('foods', food, rows);
