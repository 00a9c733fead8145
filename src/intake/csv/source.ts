// A table file of any length arrives; its reports leave one at a time, without the table ever being held whole.
import { faulty } from '../../problem.js';
import type { Encoded } from '../encoding.js';
import { Groups, mostReports, mostReportsIn, tooManyPieces } from '../groups.js';
import { type ReportRead, type ReportSource, refusedSource } from '../report-source.js';
import type { Span } from '../spans.js';
import { cellOf } from '../table/cells.js';
import type { ColumnMap } from '../table/column-map.js';
import { keyOf, mostRows, reportOf, tooManyRows } from '../table/gather.js';
import { readRow, type Settled, settle } from '../table/index.js';
import { personOf } from '../table/person.js';
import { planColumns } from '../table/plan.js';
import type { TableRow } from '../table/table.js';
import { Witness } from '../table/witness.js';
import { cutCells, Uncut } from './read-rows.js';
import { openRows } from './split-rows.js';

/** A sex, a day and a value. */
const leastBytes = 15;
/** A row costs a few bytes of memory. */
const mostRowsInAll = 10 * mostReports;

/**
 * Reads the file twice: once to hear what whole columns prove, once to note whose each row is.
 * The same reports in the same order as `readCsv` gives.
 */
export function csvSource(encoded: Encoded, map: ColumnMap): ReportSource {
  try {
    return open(encoded, map);
  } catch (error) {
    if (error instanceof Uncut) return refusedSource('csv', [error.problem]);
    throw error;
  }
}

function open(encoded: Encoded, map: ColumnMap): ReportSource {
  const { file, textOf } = encoded;
  const { header, rows, delimiter } = openRows(encoded);
  const head = { file: file.name, header };
  const planned = planColumns(head, map);
  if (!planned.ok) return refusedSource('csv', planned.problems);
  const witness = new Witness(file.name, header.row, planned.value);
  let count = 0;
  for (const row of rows) {
    witness.hear(row);
    count += 1;
    if (count > mostRowsInAll)
      throw new Uncut(tooManyPieces(file.name, row.row, `${mostRowsInAll} rows`));
  }
  const settled = settle(head, planned.value, witness.told(), count);
  if (!settled.ok) return refusedSource('csv', settled.problems, planned.notes);
  const people = whose(encoded, settled.value);
  const read = (index: number): ReportRead => {
    const spans = people.spansOf(index);
    if (spans.length > mostRows)
      return { report: faulty([tooManyRows(file.name, spans[0]?.row ?? null)]), ignored: [] };
    const text = (span: Span) => textOf(file.read(span.start, span.end));
    const facts = cutCells(file.name, spans, text, delimiter).map((row) =>
      readRow(head, settled.value, row),
    );
    const [report] = reportOf(
      file.name,
      facts.map((row) => row.facts),
    );
    if (report === undefined) throw new Error('a person without rows');
    return { report, ignored: facts.flatMap(({ ignored }) => ignored) };
  };
  return { format: 'csv', count: people.size, ignored: planned.notes, read };
}

/** Whose each row is, as places in the file. */
function whose(encoded: Encoded, settled: Settled) {
  const { file } = encoded;
  const groups = new Groups();
  const [starts, ends, lines]: number[][] = [[], [], []];
  const most = mostReportsIn(file.size, leastBytes);
  for (const row of openRows(encoded).rows) {
    groups.add(keyOfRow(file.name, settled, row));
    if (groups.size > most) throw new Uncut(tooManyPieces(file.name, row.row, `${most} reports`));
    starts?.push(row.span.start);
    ends?.push(row.span.end);
    lines?.push(row.row);
  }
  groups.close();
  const spansOf = (index: number): readonly Span[] =>
    [...groups.piecesOf(index)].map((piece) => ({
      start: starts?.[piece] ?? 0,
      end: ends?.[piece] ?? 0,
      row: lines?.[piece] ?? 0,
    }));
  return { size: groups.size, spansOf };
}

/** An id needs no more than its own cell. */
function keyOfRow(name: string, { plan, proved, apart }: Settled, row: TableRow): string | null {
  if (apart === 'each-row') return null;
  if (apart === 'one-person') return 'one';
  if (apart === 'id') {
    const id = cellOf(plan, row, 'id');
    return id === null ? null : `id ${id}`;
  }
  return keyOf(personOf(name, plan, proved, row), apart);
}
