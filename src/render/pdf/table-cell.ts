// A cell and its row arrive; its tag and its first base line leave.
import type { Block, Cell } from '../block.js';
import type { Element } from './flow.js';
import { addTag, type Bench, type Place } from './frame.js';

export type Table = Extract<Block, { kind: 'table' }>;
export type MeasureAll = (
  blocks: readonly Block[],
  place: Place,
  bench: Bench,
) => readonly Element[];

/** A heading cell says whether it heads its row or its column; without a word it follows where it stands. */
export function cellTag(cell: Cell, head: boolean, row: number, bench: Bench): number {
  if (!cell.header) return addTag(bench, row, 'TD', { span: cell.span });
  const column = cell.scope === 'col' || (cell.scope === null && head);
  return addTag(bench, row, 'TH', { span: cell.span, scope: column ? 'Column' : 'Row' });
}

/** Base line of what stands first, when that is a line of text. */
export function firstBaseline(elements: readonly Element[]): number | null {
  const [first] = elements;
  return first?.kind === 'strip' ? first.baseline : null;
}
