// The header of a table arrives, with a map if there is one; what each column holds leaves, or why it cannot be told.
import { type Checked, faulty, fine, type Place, type Problem } from '../../problem.js';
import type { Analyte } from '../../terms.js';
import { fault } from '../fault.js';
import { type ColumnMeaning, meaningOfColumn } from '../names.js';
import { whichAnalyte } from '../which-analyte.js';
import type { AnalytePart, ColumnMap } from './column-map.js';
import type { Table } from './table.js';
import { testHeader } from './test-header.js';

export type Column = { readonly index: number; readonly header: string } & (
  | { readonly holds: 'fact'; readonly meaning: ColumnMeaning }
  | {
      readonly holds: 'result';
      readonly analyte: Analyte;
      readonly name: string;
      readonly unit: string | null;
    }
  | { readonly holds: 'part'; readonly analyte: Analyte; readonly part: AnalytePart }
  | { readonly holds: 'nothing'; readonly why: string | null }
);

export type ResultColumn = Extract<Column, { readonly holds: 'result' }>;

export type Plan = {
  readonly form: 'long' | 'wide';
  readonly columns: readonly Column[];
  /** Columns again, to be asked for by every row. */
  readonly facts: ReadonlyMap<ColumnMeaning, Column>;
  readonly results: readonly ResultColumn[];
  readonly parts: ReadonlyMap<`${Analyte} ${AnalytePart}`, Column>;
  readonly map: ColumnMap;
};

/** No laboratory's table is wider; every row asks every column. */
const mostColumns = 1000;

/**
 * What each column holds. Long: one row a result; wide: one row a person and day.
 * Problems: a header or a meaning twice, no results to be found, a unit that contradicts its test.
 */
export function planColumns(table: Pick<Table, 'file' | 'header'>, map: ColumnMap): Checked<Plan> {
  const place = (field: string | null): Place => ({
    file: table.file,
    row: table.header.row,
    field,
  });
  if (table.header.cells.length > mostColumns) {
    const found = `${table.header.cells.length} columns`;
    const more = { found, expected: `at most ${mostColumns}` };
    return faulty([fault('too-many-columns', place(null), 'cannot read a table this wide', more)]);
  }
  const problems: Problem[] = [];
  const columns = table.header.cells.map((header, index) => {
    const read = columnOf(header.trim(), index, map);
    if ('question' in read) {
      problems.push(fault('doubtful-column', place(header), read.question, { found: read.found }));
      return { index, header, holds: 'nothing', why: null } as const;
    }
    return read;
  });
  problems.push(...twice(columns, place));
  const has = (meaning: ColumnMeaning) =>
    columns.some((column) => column.holds === 'fact' && column.meaning === meaning);
  const long = (has('test') || has('code')) && has('value');
  const wide = columns.some(({ holds }) => holds === 'result');
  if (long && wide) {
    problems.push(
      fault('two-forms', place(null), 'cannot tell whether a row is a result or a person', {
        expected: "either the columns 'test' and 'value' or one column for each test",
      }),
    );
  }
  if (!long && !wide) {
    problems.push(
      fault('no-results', place(null), 'cannot find results in these columns', {
        expected: "the columns 'test', 'value' and 'unit', or a column such as 'Ferritin (ug/L)'",
        remedy: 'A column map can say what the columns mean.',
      }),
    );
  }
  if (problems.length > 0) return faulty(problems);
  const notes = columns.flatMap((column) =>
    column.holds === 'nothing' && column.why !== null
      ? [fault('column-ignored', place(column.header), column.why)]
      : [],
  );
  return fine({ form: long ? 'long' : 'wide', columns, map, ...lookedUp(columns) }, notes);
}

function lookedUp(columns: readonly Column[]): Pick<Plan, 'facts' | 'results' | 'parts'> {
  return {
    facts: new Map(
      columns.flatMap((column) => (column.holds === 'fact' ? [[column.meaning, column]] : [])),
    ),
    results: columns.filter((column) => column.holds === 'result'),
    parts: new Map(
      columns.flatMap((column) =>
        column.holds === 'part' ? [[`${column.analyte} ${column.part}` as const, column]] : [],
      ),
    ),
  };
}

type Doubt = { readonly question: string; readonly found: string | null };

function columnOf(header: string, index: number, map: ColumnMap): Column | Doubt {
  const mapped =
    map.columns !== null && map.columns !== undefined && Object.hasOwn(map.columns, header)
      ? map.columns[header]
      : undefined;
  if (mapped !== undefined) {
    if (mapped === 'ignore') return { index, header, holds: 'nothing', why: null };
    if (typeof mapped === 'string') return { index, header, holds: 'fact', meaning: mapped };
    const { analyte, unit = null, part = null } = mapped;
    return part === null
      ? { index, header, holds: 'result', analyte, name: header, unit }
      : { index, header, holds: 'part', analyte, part };
  }
  if (header === '') return { index, header, holds: 'nothing', why: null };
  const meaning = meaningOfColumn(header);
  if (meaning !== null) return { index, header, holds: 'fact', meaning };
  return partOf(header, index) ?? testOf(header, index);
}

const partShapes: readonly (readonly [RegExp, AnalytePart])[] = [
  [/^(.+?)[\s_.-]+(?:units?|uom)$/i, 'unit'],
  [/^(.+?)[\s_.-]+(?:ref(?:erence)?[\s_.-]*)?(?:low(?:er)?|min)$/i, 'low'],
  [/^(.+?)[\s_.-]+(?:ref(?:erence)?[\s_.-]*)?(?:high|upper|max)$/i, 'high'],
  [
    /^(.+?)[\s_.-]+(?:ref(?:erence)?|range|interval|reference[\s_.-]*(?:range|interval)|ref[\s_.-]*range)$/i,
    'range',
  ],
  [/^(.+?)[\s_.-]+flag$/i, 'flag'],
];

function partOf(header: string, index: number): Column | null {
  for (const [shape, part] of partShapes) {
    const name = shape.exec(header)?.[1];
    if (name === undefined) continue;
    const which = whichAnalyte({ name, code: null, unit: null, specimen: null });
    if (which.is === 'analyte')
      return { index, header, holds: 'part', analyte: which.analyte, part };
  }
  return null;
}

function testOf(header: string, index: number): Column | Doubt {
  const { name, unit } = testHeader(header);
  const which = whichAnalyte({ name, code: null, unit, specimen: null });
  if (which.is === 'analyte')
    return { index, header, holds: 'result', analyte: which.analyte, name, unit };
  if (which.is === 'question') return { question: which.cannot, found: which.found };
  const why =
    which.is === 'unknown'
      ? 'cannot tell what this column holds; it was passed over'
      : `cannot read ${which.what ?? 'this test'}; the column was passed over`;
  return { index, header, holds: 'nothing', why };
}

function twice(columns: readonly Column[], place: (field: string) => Place): Problem[] {
  const keyOf = (column: Column): string | null => {
    if (column.holds === 'fact') return column.meaning;
    if (column.holds === 'result') return column.analyte;
    if (column.holds === 'part') return `${column.analyte} ${column.part}`;
    return column.header === '' ? null : `passed over ${column.header}`;
  };
  const seen = new Map<string, Column>();
  return columns.flatMap((column) => {
    const key = keyOf(column);
    if (key === null) return [];
    const before = seen.get(key);
    if (before === undefined) {
      seen.set(key, column);
      return [];
    }
    return [
      fault('column-twice', place(column.header), 'cannot tell which of two columns holds', {
        found: `'${before.header}' and '${column.header}'`,
        expected: 'one column for each fact',
        remedy: "A column map can mark one of them 'ignore'.",
      }),
    ];
  });
}
