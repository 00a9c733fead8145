// A pasted line arrives; if it heads a table (dates, units, ranges side by side), what its columns hold leaves.
import { type DateOrder, needsOrder, readDate } from '../date-as-written.js';
import { meaningOfColumn } from '../names.js';

export type TextColumn =
  | {
      readonly holds:
        | 'test'
        | 'unit'
        | 'range'
        | 'flag'
        | 'low'
        | 'high'
        | 'status'
        | 'specimen'
        | 'collected'
        | 'nothing';
    }
  | { readonly holds: 'value'; readonly collected: string | null };

/** Cells of a line: by tabs or bars where it has them, else by runs of blanks. Outer bars are a frame. */
export function cellsOf(line: string): readonly string[] {
  if (line.includes('\t')) return trimmed(line.split('\t'));
  if (line.includes('|'))
    return trimmed(
      line
        .trim()
        .replace(/^\||\|$/g, '')
        .split('|'),
    );
  return trimmed(line.trim().split(/\s{2,}/));
}

function trimmed(cells: readonly string[]): readonly string[] {
  return cells.map((cell) => cell.trim());
}

/** No record prints a day more; every row asks every column. */
const mostColumns = 100;

/** '17.11.26': which part is the year cannot be told. */
const shortYear = /^\d{1,2}([./-])\d{1,2}\1\d{2}$/;

/**
 * Columns of a table's header; null when the line is none. The first column holds the test, even without a name.
 * @example columnsOf('Test\t2026-11-20\t2026-05-02\tUnit', null)
 */
export function columnsOf(line: string, order: DateOrder | null): readonly TextColumn[] | null {
  const cells = cellsOf(/^ {2}/.test(line) && !/[\t|]/.test(line) ? `test  ${line}` : line);
  if (cells.length < 2 || cells.length > mostColumns) return null;
  const columns = cells.map((cell, i): TextColumn => {
    const date = readDate(cell, order);
    if (date !== null || needsOrder(cell) || shortYear.test(cell))
      return { holds: 'value', collected: date?.date ?? null };
    const meaning = meaningOfColumn(cell);
    if (meaning === 'value') return { holds: 'value', collected: null };
    if (meaning === 'test' || meaning === 'unit' || meaning === 'range') return { holds: meaning };
    if (meaning === 'flag' || meaning === 'low' || meaning === 'high') return { holds: meaning };
    if (meaning === 'collected' || meaning === 'status' || meaning === 'specimen')
      return { holds: meaning };
    return { holds: i === 0 && /^(?:|name|tests?)$/i.test(cell) ? 'test' : 'nothing' };
  });
  const tests = columns.filter(({ holds }) => holds === 'test').length;
  const values = columns.filter(({ holds }) => holds === 'value').length;
  return tests === 1 && values > 0 ? columns : null;
}
