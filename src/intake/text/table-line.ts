// A line below the header of a pasted table arrives; its results join what was read so far, or a question does.
import { readDate } from '../date-as-written.js';
import { at, fault } from '../fault.js';
import { readInterval } from '../interval-as-written.js';
import { testHeader } from '../table/test-header.js';
import { whichAnalyte } from '../which-analyte.js';
import { cellsOf, type TextColumn } from './columns.js';
import type { Reading } from './reading.js';
import { filledUp, isPlainResult, valueCell } from './table-cells.js';
import { takeResult } from './take-result.js';

/** Reads a line of the table headed above; false when it is no line of it. */
export function readTableLine(
  reading: Reading,
  line: string,
  row: number,
  columns: readonly TextColumn[],
): boolean {
  const cells = filledUp(cellsOf(line), columns, line.includes('\t'));
  if (cells.every((cell) => /^[-:=]+$/.test(cell))) return true;
  if (cells.length !== columns.length) return askAboutCells(reading, cells, row, columns);
  takeCells(reading, cells, row, columns);
  return true;
}

/** A short or long line with one of our tests in it is asked about; any other may end the table. */
function askAboutCells(
  reading: Reading,
  cells: readonly string[],
  row: number,
  columns: readonly TextColumn[],
): boolean {
  if (isPlainResult(cells, columns)) return false;
  const test = { name: cells[0] ?? '', code: null, unit: null, specimen: null };
  if (cells.length < 2 || whichAnalyte(test).is !== 'analyte') {
    if (cells.length > 2) reading.columns = null;
    return false;
  }
  reading.problems.push(
    fault('ragged-row', at(reading.file, row), 'cannot tell which cell belongs to which column', {
      found: `${cells.length} cells`,
      expected: `${columns.length}, as in the header above`,
    }),
  );
  return true;
}

function takeCells(
  reading: Reading,
  cells: readonly string[],
  row: number,
  columns: readonly TextColumn[],
): void {
  const cell = (wanted: TextColumn['holds']) => {
    const text = cells[columns.findIndex(({ holds }) => holds === wanted)] ?? '';
    return text === '' ? null : text;
  };
  const day = cell('collected');
  const own = day === null ? null : readDate(day, reading.order);
  if (day !== null && own === null) {
    reading.askOrder(row);
    return;
  }
  const header = testHeader(cell('test') ?? '');
  const [low, high] = [cell('low'), cell('high')];
  columns.forEach((column, i) => {
    if (column.holds !== 'value') return;
    const inside = valueCell(cells[i] ?? '');
    if (inside.value === '') return;
    const unit = cell('unit') ?? inside.unit ?? header.unit;
    const printed = readInterval(cell('range'), unit);
    const said = {
      name: header.name,
      value: inside.value,
      unit,
      interval: printed ?? (low === null && high === null ? null : { low, high, text: null }),
      flag: inside.flag ?? cell('flag'),
      status: cell('status'),
      specimen: cell('specimen'),
    };
    takeResult(reading, said, column.collected ?? own?.date ?? reading.collected, row);
  });
}
