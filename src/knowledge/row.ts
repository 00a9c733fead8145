// What every row of published numbers must carry: where it stands and how it was checked.
import { z } from 'zod';

/** How a number was checked: read in the source, seen quoted elsewhere, derived by arithmetic, our proposal, or recalled. */
export const checks = ['read', 'read-secondary', 'derived', 'proposal', 'from-memory'] as const;
export type CheckedHow = (typeof checks)[number];

/** Fields every row has: a stable id, the source by name, the place in it, how it was checked. */
export const rowFields = {
  id: z.string().regex(/^[a-z0-9-]+$/),
  source: z.string().min(1),
  at: z.string().min(1),
  checked: z.enum(checks),
} as const;

export type Row = {
  readonly id: string;
  readonly source: string;
  readonly at: string;
  readonly checked: CheckedHow;
};

/** True in the built program alone: the build has read every table with its schema, so a start need not. */
declare const tablesAreRead: boolean;

/** Reads a table of rows; a row without source, place or check is our bug, so it throws. */
export function readRows<T extends Row>(
  table: string,
  schema: z.ZodType<T>,
  rows: unknown,
): readonly T[] {
  if (typeof tablesAreRead !== 'undefined') return rows as readonly T[];
  const read = z.array(schema).safeParse(rows);
  if (!read.success) throw new Error(`knowledge table ${table}: ${z.prettifyError(read.error)}`);
  const ids = new Set(read.data.map((row) => row.id));
  if (ids.size !== read.data.length)
    throw new Error(`knowledge table ${table}: an id is used twice`);
  return read.data;
}
