// In: tables of single numbers, each with its unit. Out: rows found by id, for every room.
import { z } from 'zod';
import flagRows from './flag-limits.json' with { type: 'json' };
import holdRows from './hold-limits.json' with { type: 'json' };
import limitRows from './limits.json' with { type: 'json' };
import responseRows from './response-to-iron.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const limitRow = z.object({ ...rowFields, value: z.number(), unit: z.string().min(1) });
export type LimitRow = z.infer<typeof limitRow>;

/** Every single number that interpretation uses by name. */
export const limits: readonly LimitRow[] = [
  ...readRows('limits', limitRow, limitRows),
  ...readRows('flag-limits', limitRow, flagRows),
  ...readRows('hold-limits', limitRow, holdRows),
  ...readRows('response-to-iron', limitRow, responseRows),
];

const byId: ReadonlyMap<string, LimitRow> = new Map(limits.map((row) => [row.id, row]));

/**
 * The row of that id; an unknown id is our bug, so it throws.
 * @example limit('crp-raised').value // 5, in mg/L
 */
export function limit(id: string): LimitRow {
  const row = byId.get(id);
  if (row === undefined) throw new Error(`knowledge: no limit called ${id}`);
  return row;
}
