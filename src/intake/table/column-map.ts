// A mapping file arrives; what each column of a laboratory's table means leaves.
import { z } from 'zod';
import { type Checked, faulty, fine } from '../../problem.js';
import { analytes } from '../../terms.js';
import { decode } from '../decode.js';
import { at, fault } from '../fault.js';
import { readJsonTree } from '../json-tree.js';
import { schemaProblems } from '../json/schema-problems.js';
import { columnMeanings } from '../names.js';
import type { InputFile } from '../written.js';

const parts = ['unit', 'low', 'high', 'range', 'flag'] as const;

const column = z.union([
  z.enum([...columnMeanings, 'ignore']),
  z.strictObject({
    analyte: z.enum(analytes),
    unit: z.string().min(1).nullish(),
    part: z.enum(parts).nullish(),
  }),
]);

const columnMap = z.strictObject({
  columns: z
    .record(z.string(), column)
    .nullish()
    .describe('Header as the file has it -> what stands below it.'),
  tests: z
    .record(z.string(), z.enum([...analytes, 'ignore']))
    .nullish()
    .describe("A laboratory's own name of a test -> which test it is."),
  dates: z.enum(['iso', 'day-first', 'month-first']).nullish(),
  decimal: z.enum(['.', ',']).nullish(),
});

/** What a laboratory's columns and test names mean; anything not listed is looked up by its name. */
export type ColumnMap = z.infer<typeof columnMap>;
export type MappedColumn = z.infer<typeof column>;
export type AnalytePart = (typeof parts)[number];

/**
 * Reads a mapping file. Problems: each field that does not fit, with the nearest word.
 * @example readColumnMap(file) // { "columns": { "Pat-Nr": "id", "FERR": { "analyte": "ferritin", "unit": "ug/L" } } }
 */
export function readColumnMap(file: InputFile): Checked<ColumnMap> {
  const place = at(file.name, null);
  const tree = readJsonTree(decode(file.name, file.bytes).text);
  if (!tree.ok)
    return faulty([fault('not-json', place, tree.cannot, { expected: 'a column map' })]);
  const read = columnMap.safeParse(tree.value);
  if (read.success) return fine(read.data);
  const keys = (path: readonly PropertyKey[]) =>
    path.length === 0 ? Object.keys(columnMap.shape) : [];
  return faulty(schemaProblems(read.error, tree.value, place, keys));
}
