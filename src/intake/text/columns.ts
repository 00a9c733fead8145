// A pasted line arrives; if it heads a table (dates, units, ranges side by side), what its columns hold leaves.
import { type DateOrder, needsOrder, readDate } from '../date-as-written.js';
import { meaningOfColumn } from '../names.js';

export type TextColumn =
  | { readonly holds: 'test' | 'unit' | 'range' | 'flag' | 'low' | 'high' | 'nothing' }
  | { readonly holds: 'value'; readonly collected: string | null };

/** Cells of a line: by tabs or bars where it has them, else by runs of blanks. */
export function cellsOf(line: string): readonly string[] {
  const between = line.includes('\t') ? /\t/ : line.includes('|') ? /\|/ : /\s{2,}/;
  return line
    .trim()
    .split(between)
    .map((cell) => cell.trim());
}

/**
 * Columns of a table's header; null when the line is none. The first column holds the test.
 * @example columnsOf('Test\t2026-11-20\t2026-05-02\tUnit', null)
 */
export function columnsOf(line: string, order: DateOrder | null): readonly TextColumn[] | null {
  const cells = cellsOf(line.startsWith('\t') ? `test${line}` : line);
  if (cells.length < 2) return null;
  const columns = cells.map((cell, i): TextColumn => {
    const date = readDate(cell, order);
    if (date !== null || needsOrder(cell)) return { holds: 'value', collected: date?.date ?? null };
    const meaning = meaningOfColumn(cell);
    if (meaning === 'value') return { holds: 'value', collected: null };
    if (meaning === 'test' || meaning === 'unit' || meaning === 'range') return { holds: meaning };
    if (meaning === 'flag' || meaning === 'low' || meaning === 'high') return { holds: meaning };
    return { holds: i === 0 && /^(?:|name|tests?)$/i.test(cell) ? 'test' : 'nothing' };
  });
  const tests = columns.filter(({ holds }) => holds === 'test').length;
  const values = columns.filter(({ holds }) => holds === 'value').length;
  return tests === 1 && values > 0 ? columns : null;
}
