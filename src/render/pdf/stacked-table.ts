// A table too wide for its column arrives; rows leave whose cells stand one under another, each after its heading.
import type { Block, Cell } from '../block.js';
import { look } from '../look.js';
import { cellNeeds } from './column-widths.js';
import { moved, stack, stackHeight, type Strip } from './flow.js';
import { addTag, inset, type Bench, type Place } from './frame.js';
import { cellTag, firstBaseline, type MeasureAll, type Table } from './table-cell.js';
import type { Ink } from './placed.js';

/** Headings take what they need on one line, up to this share of the width. */
const mostForHeadings = 0.45;

/** Nothing is cut and no number divided, however large the print: headings go down the side instead of across. */
export function stackedRows(
  table: Table,
  place: Place,
  bench: Bench,
  measureAll: MeasureAll,
): readonly Strip[] {
  const headings = columnHeadings(table.head.at(-1) ?? []);
  const needs = headings.map((blocks) => cellNeeds(blocks, place, bench).most);
  const side = Math.min(Math.max(0, ...needs) + bench.base, place.width * mostForHeadings);
  return table.rows.map((cells, nth) => {
    const row = stackedRow(cells, headings, side, table, place, bench, measureAll);
    const [rule] = row.grounds;
    if (nth > 0 || rule === undefined) return row;
    return { ...row, grounds: [{ ...rule, y: 0 }, rule] };
  });
}

function columnHeadings(cells: readonly Cell[]): readonly (readonly Block[])[] {
  return cells.flatMap((cell) => new Array<readonly Block[]>(cell.span).fill(cell.blocks));
}

function stackedRow(
  cells: readonly Cell[],
  headings: readonly (readonly Block[])[],
  side: number,
  table: Table,
  place: Place,
  bench: Bench,
  measureAll: MeasureAll,
): Strip {
  const { rule, ruleWidth, padding } = look.table[table.look];
  const pad = padding * bench.base;
  const row = addTag(bench, place.tag, 'TR');
  const ink: Ink[] = [];
  let y = pad;
  let column = 0;
  for (const cell of cells) {
    const tag = cellTag(cell, false, row, bench);
    const heading = cell.header ? [] : (headings[column] ?? []);
    column += cell.span;
    const part = headedCell(
      cell,
      heading,
      side,
      { ...inset(place, pad, pad), tag },
      bench,
      measureAll,
    );
    ink.push(...part.ink.map((one) => moved(one, y)));
    y += part.height + pad;
  }
  const { left: x, width } = place;
  return {
    kind: 'strip',
    before: 0,
    after: 0,
    glue: 0,
    height: y,
    baseline: null,
    ink,
    grounds: [{ kind: 'rule', x, y, width, thick: ruleWidth, colour: rule }],
    repeat: null,
  };
}

/** The name of a row stands out, for no ground or column does it here. */
function bold(block: Block): Block {
  if (block.kind !== 'paragraph') return block;
  return { ...block, runs: block.runs.map((run) => ({ ...run, strong: true })) };
}

function headedCell(
  cell: Cell,
  heading: readonly Block[],
  side: number,
  place: Place,
  bench: Bench,
  measureAll: MeasureAll,
): { readonly ink: readonly Ink[]; readonly height: number } {
  if (heading.length === 0) {
    const filled = stack(
      measureAll(cell.header ? cell.blocks.map(bold) : cell.blocks, place, bench),
    );
    const empty: Ink = { kind: 'empty', tag: place.tag, y: 0 };
    return { ink: filled.ink.length === 0 ? [empty] : filled.ink, height: filled.height };
  }
  const gap = bench.base / 2;
  const parts = [
    { blocks: heading, at: inset(place, 0, place.width - side + gap) },
    { blocks: cell.blocks, at: inset(place, side, 0) },
  ].map(({ blocks, at }) => {
    const tag = addTag(bench, place.tag, blocks.length === 1 ? 'P' : 'Div');
    return measureAll(blocks, { ...at, tag }, bench);
  });
  const baselines = parts.map((elements) => firstBaseline(elements) ?? 0);
  const lowest = Math.max(...baselines);
  const ink = parts.flatMap((elements, nth) =>
    stack(elements).ink.map((one) => moved(one, lowest - (baselines[nth] ?? 0))),
  );
  const heights = parts.map((part, nth) => stackHeight(part) + lowest - (baselines[nth] ?? 0));
  return { ink, height: Math.max(...heights) };
}
