// Rows of cells and a column of the page arrive; the widths of the table's columns leave, or none that would do.
import type { Block, Cell } from '../block.js';
import { look, pictureScale, scaleOf } from '../look.js';
import type { Bench, Place } from './frame.js';
import { narrowest, unbroken } from './lines.js';
import { composeAt } from './measure-text.js';

/**
 * Every column gets what its longest word needs, then shares what is left by how much text it holds.
 * @param padding on either side of a cell, points.
 * @returns widths in points, or null when words would not fit or would make a thin, tall column.
 */
export function columnWidths(
  rows: readonly (readonly Cell[])[],
  place: Place,
  bench: Bench,
  padding: number,
): readonly number[] | null {
  const pad = 2 * padding;
  const count = Math.max(1, ...rows.map((cells) => sum(cells.map((cell) => cell.span))));
  const least = new Array<number>(count).fill(pad);
  const most = new Array<number>(count).fill(pad);
  for (const cells of rows) {
    let column = 0;
    for (const cell of cells) {
      const need = cellNeeds(cell.blocks, place, bench);
      for (let at = column; at < column + cell.span; at += 1) {
        least[at] = Math.max(least[at] ?? 0, need.least / cell.span + pad);
        most[at] = Math.max(most[at] ?? 0, need.most / cell.span + pad);
      }
      column += cell.span;
    }
  }
  const widths = shareOut(least, most, place.width);
  const thin = widths.some(
    (width, at) => width < thinEms * bench.base && (most[at] ?? 0) > tallLines * width,
  );
  return sum(least) > place.width || thin ? null : widths;
}

/** A column narrower than this that needs more lines than that is hard to read. */
const thinEms = 7;
const tallLines = 3;

function shareOut(least: readonly number[], most: readonly number[], width: number) {
  const low = sum(least);
  const high = sum(most);
  if (high <= width) return most.map((own) => own + ((width - high) * own) / high);
  if (low >= width) return least;
  return least.map((own, at) => own + ((width - low) * ((most[at] ?? own) - own)) / (high - low));
}

/** Narrowest and widest a cell can use, points without padding. */
export function cellNeeds(blocks: readonly Block[], place: Place, bench: Bench) {
  let least = 0;
  let most = 0;
  for (const block of blocks) {
    const need = blockNeeds(block, place, bench);
    least = Math.max(least, need.least);
    most = Math.max(most, need.most);
  }
  return { least, most };
}

function blockNeeds(
  block: Block,
  place: Place,
  bench: Bench,
): { readonly least: number; readonly most: number } {
  switch (block.kind) {
    case 'heading':
    case 'paragraph': {
      const at = block.kind === 'heading' ? (`h${block.level}` as const) : block.look;
      const paragraph = composeAt(block.runs, at, place, bench);
      const em = (bench.base * scaleOf(at, bench.base)) / 1000;
      return { least: narrowest(paragraph) * em, most: unbroken(paragraph) * em };
    }
    case 'figure': {
      const width = block.scene.width * pictureScale(block.scene, place.width, bench.base);
      return { least: width * leastPicture, most: width };
    }
    case 'list': {
      const need = cellNeeds(block.items.flat(), place, bench);
      const indent = look.space.indent * bench.base;
      return { least: need.least + indent, most: need.most + indent };
    }
    case 'section':
    case 'notice':
      return cellNeeds(block.blocks, place, bench);
    default:
      return { least: 0, most: place.width };
  }
}

/** A picture in a cell may shrink to this share of its size before its words shrink too far. */
const leastPicture = 0.8;

export function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
