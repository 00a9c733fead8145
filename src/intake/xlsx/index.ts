// The bytes of an .xlsx file arrive; its first sheet, read as a table, leaves as written reports.
import { type Checked, faulty, fine, type Problem } from '../../problem.js';
import { at, fault } from '../fault.js';
import type { ColumnMap } from '../table/column-map.js';
import { readTable } from '../table/index.js';
import type { Table, TableRow } from '../table/table.js';
import type { InputFile, Intake } from '../written.js';
import { sheetExtent } from './sheet-extent.js';
import { unpackedSize } from './unpacked-size.js';

/**
 * The reader has no limits of its own: a small file can unpack to a million rows. Held to this many rows and elements
 * it ends within a second, so that no clock is asked and the same file is always read the same.
 */
const largestUnpacked = 24 * 1024 * 1024;
const mostRows = 15_000;
const mostColumns = 200;

/** Written reports of a spreadsheet. Problems: those of `xlsxTable`, and those of any table. */
export async function readXlsx(file: InputFile, map: ColumnMap = {}): Promise<Intake> {
  const table = await xlsxTable(file);
  if (!table.ok) return { format: 'xlsx', reports: [faulty(table.problems)], ignored: [] };
  const read = readTable(table.value, map);
  return { format: 'xlsx', ...read, ignored: [...table.notes, ...read.ignored] };
}

/**
 * Reads the first sheet that has cells; others are passed over with a note. Numbers come as the sheet stores them.
 * Problems: no spreadsheet, unpacks beyond 24 MB, more than 15,000 rows, and those of any table.
 */
export async function xlsxTable({ name, bytes }: InputFile): Promise<Checked<Table>> {
  const size = unpackedSize(bytes);
  if (size === null)
    return refused(
      fault('not-a-spreadsheet', at(name, null), 'cannot read this as a spreadsheet', {
        expected: 'an .xlsx file',
      }),
    );
  if (size > largestUnpacked) {
    return refused(
      fault('too-large', at(name, null), 'cannot read a spreadsheet of this size', {
        expected: `at most ${mostRows} rows`,
        remedy: 'Save it as CSV, or split it.',
      }),
    );
  }
  const extent = sheetExtent(bytes, largestUnpacked);
  if (extent === null || extent.rows > mostRows + 1 || extent.columns > mostColumns) {
    const found = extent === null ? null : `${extent.rows} rows, ${extent.columns} columns`;
    return refused(
      fault('too-large', at(name, null), 'cannot read a spreadsheet that reaches this far', {
        found,
        expected: `at most ${mostRows} rows and ${mostColumns} columns`,
        remedy: 'Save it as CSV, or split it.',
      }),
    );
  }
  const { default: readSheets } = await import('read-excel-file/universal');
  const sheets = await readSheets(new Uint8Array(bytes).buffer).catch((error: unknown) =>
    refused(whyUnread(name, error)),
  );
  if ('ok' in sheets) return sheets;
  const [first, ...others] = sheets
    .map(({ data }) => rowsOf(data))
    .filter((rows) => rows.length > 0);
  const [header, ...rows] = first ?? [];
  if (header === undefined)
    return refused(
      fault('empty-file', at(name, null), 'cannot find a cell with text in this spreadsheet', {
        expected: 'a header and rows',
      }),
    );
  if (rows.length > mostRows) {
    return refused(
      fault('too-large', at(name, null), `cannot read a sheet of ${rows.length} rows`, {
        expected: `at most ${mostRows}`,
      }),
    );
  }
  const width = header.cells.length;
  const table = { file: name, header, rows: rows.map((row) => levelled(row, width)) };
  const passed =
    others.length === 0
      ? []
      : [fault('sheets-ignored', at(name, null), 'passed over every sheet but the first')];
  const errors =
    extent.errors === 0
      ? []
      : [
          fault('error-cells', at(name, null), 'took cells that hold an error for empty ones', {
            found: `${extent.errors} such as #N/A`,
          }),
        ];
  return fine(table, [...passed, ...errors]);
}

/** The reader stops at the first cell it cannot read, and says which in its message alone. */
function whyUnread(name: string, error: unknown): Problem {
  const [, row, column] =
    /at row (\d+), col (\d+):/.exec(error instanceof Error ? error.message : '') ?? [];
  if (row === undefined)
    return fault('not-a-spreadsheet', at(name, null), 'cannot read this as a spreadsheet', {
      expected: 'an .xlsx file',
    });
  return fault('bad-cell', at(name, Number(row), `column ${column}`), 'cannot read this cell', {
    expected: 'a number, a text or nothing',
    remedy: 'Mend the formula or empty the cell, and save the file again.',
  });
}

type Cell = string | number | boolean | Date | null;

function rowsOf(data: readonly (readonly unknown[])[]): readonly TableRow[] {
  return data
    .map((cells, i) => ({ row: i + 1, cells: cells.map((cell) => textOf(cell as Cell)) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
}

/** Empty cells at the end of a row are not stored; a cell beyond the header stays, as a ragged row. */
function levelled({ row, cells }: TableRow, width: number): TableRow {
  const filled = cells.slice(0, Math.max(width, cells.findLastIndex((cell) => cell !== '') + 1));
  return { row, cells: [...filled, ...Array<string>(Math.max(0, width - filled.length)).fill('')] };
}

/** Dates of a sheet have no zone; the reader gives them as UTC. */
function textOf(cell: Cell): string {
  if (cell === null || cell === undefined) return '';
  if (cell instanceof Date) {
    const [day = '', time = ''] = cell.toISOString().split('T');
    return time.startsWith('00:00') ? day : `${day} ${time.slice(0, 5)}`;
  }
  return String(cell).trim();
}

function refused(problem: Problem): Checked<Table> {
  return faulty([problem]);
}
