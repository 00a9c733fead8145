// A table file read in pieces arrives; its rows of cells leave a few hundred at a time, each with its place.
import { CsvError, parse } from 'csv-parse/sync';
import type { Problem } from '../../problem.js';
import type { Encoded } from '../encoding.js';
import { at, fault } from '../fault.js';
import { type RecordSpan, recordsOf, type Span } from '../spans.js';
import type { TableRow } from '../table/table.js';

export type PlacedRow = TableRow & { readonly span: Span };

/** Bytes of one row: far more than any person's results need, and little to lay out. */
const longestRow = 128 * 1024;
const batched = 256;
const batchedBytes = 512 * 1024;

/** Carries why a table cannot be cut up to where its reports would have been. */
export class Uncut extends Error {
  constructor(readonly problem: Problem) {
    super(problem.code);
  }
}

/**
 * Rows with something in them, in order.
 * @throws Uncut: a quote left open, a quote inside a bare cell, a row of more than 128 kB.
 */
export function* readRows(
  { file, textOf }: Encoded,
  from: number,
  delimiter: string,
): Generator<PlacedRow> {
  let batch: RecordSpan[] = [];
  let bytes = 0;
  const cut = () => {
    const rows = cutCells(
      file.name,
      batch,
      (span) => textOf(file.read(span.start, span.end)),
      delimiter,
    );
    [batch, bytes] = [[], 0];
    return rows;
  };
  for (const span of recordsOf(file, from)) {
    const length = span.end - span.start;
    if (length > longestRow) throw new Uncut(tooLong(file.name, span));
    if (length === 0) continue;
    batch.push(span);
    bytes += length;
    if (batch.length >= batched || bytes >= batchedBytes) yield* cut();
  }
  yield* cut();
}

/** Cells of a few records. @throws Uncut, as `readRows`. */
export function cutCells<S extends Span & { readonly open?: boolean }>(
  name: string,
  spans: readonly S[],
  textOf: (span: S) => string,
  delimiter: string,
): readonly (TableRow & { readonly span: S })[] {
  const rows: (TableRow & { readonly span: S })[] = [];
  const texts = spans.map(textOf);
  // Without a quote nothing but the delimiter cuts; most laboratories write none.
  if (!texts.some((text) => text.includes('"'))) {
    spans.forEach((span, i) => {
      const cells = (texts[i] ?? '').split(delimiter);
      if (cells.some((cell) => cell.trim() !== '')) rows.push({ row: span.row, cells, span });
    });
    return rows;
  }
  let records = 0;
  try {
    parse(texts.join('\n'), {
      delimiter,
      record_delimiter: '\n',
      relax_column_count: true,
      onRecord: (cells) => {
        const span = spans[records];
        records += 1;
        if (span !== undefined && cells.some((cell) => cell.trim() !== ''))
          rows.push({ row: span.row, cells, span });
        return null;
      },
    });
    return rows;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const span = spans[Math.min(records, spans.length - 1)];
    throw new Uncut(quoteProblem(name, error, span?.row ?? null));
  }
}

function quoteProblem(name: string, error: CsvError, row: number | null): Problem {
  if (error.code === 'CSV_QUOTE_NOT_CLOSED')
    return fault('open-quote', at(name, row), 'cannot find the end of a quoted cell', {
      expected: 'a closing "',
    });
  return fault('stray-quote', at(name, row), 'cannot read a quote in the middle of a cell', {
    expected: 'the whole cell in quotes, and "" for a quote inside it',
  });
}

function tooLong(name: string, { row, open }: RecordSpan): Problem {
  if (open)
    return fault('open-quote', at(name, row), 'cannot find the end of a quoted cell', {
      expected: 'a closing "',
    });
  return fault('row-too-long', at(name, row), 'cannot read a row this long', {
    expected: `at most ${longestRow / 1024} kB in a row, and a closing " for every cell in quotes`,
  });
}
