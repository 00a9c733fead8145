// Cells of a pasted table arrive; what a cell of values holds leaves, and whether a short row can be told.
import { readUnit } from '../../knowledge/units.js';
import { saysNoResult } from '../no-result.js';
import { readNumberAsWritten } from '../number-as-written.js';
import type { TextColumn } from './columns.js';

export type ValueCell = {
  readonly value: string;
  readonly unit: string | null;
  readonly flag: string | null;
};

/**
 * A value with its mark and, where the table has no column for it, its unit.
 * @example valueCell('10.8 g/dL L') // { value: '10.8', unit: 'g/dL', flag: 'L' }
 */
export function valueCell(cell: string): ValueCell {
  const [, whole = '', mark] =
    /^(.*?)(?:\s*(\*+|!{1,2}|\(?\b[HL]{1,2}\)?|\u2191+|\u2193+)|\s+(\+{1,2}|-{1,2}))?$/u.exec(
      cell,
    ) ?? [];
  const sign = /\s(\+{1,2}|-{1,2})$/.exec(cell)?.[1];
  const flag = mark?.replace(/[()]/g, '') ?? sign ?? null;
  const [, value, unit] = /^([<>\u2264\u2265]?=?\s*[\d.,]*\d)\s*([^\s\d.,]\S*)$/u.exec(whole) ?? [];
  return value !== undefined && unit !== undefined && readUnit(unit) !== null
    ? { value, unit, flag }
    : { value: whole, unit: null, flag };
}

/** Empty cells at the end of a row of tabs are lost on the way; put back where every other cell fits its column. */
export function filledUp(
  cells: readonly string[],
  columns: readonly TextColumn[],
  byTabs: boolean,
): readonly string[] {
  const missing = columns.slice(cells.length);
  const idle = missing.every(({ holds }) =>
    ['unit', 'range', 'flag', 'status', 'nothing'].includes(holds),
  );
  const sided = columns.some(({ holds }) => holds === 'low' || holds === 'high');
  const fits = cells.every((cell, i) => cell === '' || fitsColumn(cell, columns[i]));
  return byTabs && idle && !sided && fits && cells.length > 1
    ? [...cells, ...missing.map(() => '')]
    : cells;
}

function fitsColumn(cell: string, column: TextColumn | undefined): boolean {
  if (column?.holds === 'value') return isValue(cell);
  return column?.holds !== 'unit' || readUnit(cell) !== null;
}

function isValue(cell: string): boolean {
  const { value } = valueCell(cell);
  return saysNoResult(value) || readNumberAsWritten(value, ',').ok;
}

/** A row whose value stands right behind its test can be read without its header, if only one value is in it. */
export function isPlainResult(cells: readonly string[], columns: readonly TextColumn[]): boolean {
  const values = columns.filter(({ holds }) => holds === 'value').length;
  return (
    values === 1 &&
    columns[0]?.holds === 'test' &&
    columns[1]?.holds === 'value' &&
    !saysNoResult(cells[1] ?? '') &&
    isValue(cells[1] ?? '')
  );
}
