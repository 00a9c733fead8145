// A table arrives; one strip for each row leaves: columns as wide as their words ask, rows never divided.
import type { Cell } from '../block.js';
import { look } from '../look.js';
import { columnWidths, sum } from './column-widths.js';
import { moved, stack, stackHeight, type Element, type Strip } from './flow.js';
import { addTag, inset, type Bench, type Place } from './frame.js';
import { measureText } from './measure-text.js';
import { stackedRows } from './stacked-table.js';
import { cellTag, firstBaseline, type MeasureAll, type Table } from './table-cell.js';
import type { Ground, Ink } from './placed.js';

/**
 * Rows of a table, the first of them held together with its head and its caption.
 * @param measureAll lays out what stands in a cell.
 */
export function measureTable(
  table: Table,
  place: Place,
  bench: Bench,
  measureAll: MeasureAll,
): readonly Element[] {
  const space = look.space.block * bench.base;
  const tag = addTag(bench, place.tag, 'Table');
  const caption =
    table.caption === null
      ? []
      : measureText(
          table.caption,
          {
            look: 'caption',
            tag: addTag(bench, tag, 'Caption'),
            before: space,
            after: look.space.item * bench.base,
            lead: true,
          },
          place,
          bench,
        );
  const widths = columnWidths(
    [...table.head, ...table.rows],
    place,
    bench,
    look.table[table.look].padding * bench.base,
  );
  const within = { ...place, tag };
  const all =
    widths === null
      ? stackedRows(table, within, bench, measureAll)
      : sideBySide(table, widths, within, bench, measureAll);
  return [
    ...caption,
    ...all.map((row, nth) => ({
      ...row,
      before: nth === 0 ? (caption.length === 0 ? space : 0) : 0,
      after: nth === all.length - 1 ? space : 0,
    })),
  ];
}

function sideBySide(
  table: Table,
  widths: readonly number[],
  place: Place,
  bench: Bench,
  measureAll: MeasureAll,
): readonly Strip[] {
  const rowOf = (cells: readonly Cell[], head: boolean) =>
    measureRow(cells, head, table, widths, place, bench, measureAll);
  const head = table.head.map((cells) => ({ ...rowOf(cells, true), glue: 2 as const }));
  const repeat = head.length === 0 ? null : stack(head);
  return [...head, ...table.rows.map((cells) => ({ ...rowOf(cells, false), repeat }))];
}

function measureRow(
  cells: readonly Cell[],
  head: boolean,
  table: Table,
  widths: readonly number[],
  place: Place,
  bench: Bench,
  measureAll: MeasureAll,
): Strip {
  const { rule, ruleWidth, headFill, padding } = look.table[table.look];
  const pad = padding * bench.base;
  const row = addTag(bench, place.tag, 'TR');
  let column = 0;
  let start = 0;
  const laid = cells.map((cell) => {
    const width = sum(widths.slice(column, column + cell.span));
    const within = inset(place, start, place.width - start - width);
    column += cell.span;
    start += width;
    const tag = cellTag(cell, head, row, bench);
    const elements = measureAll(cell.blocks, { ...inset(within, pad, pad), tag }, bench);
    return { tag, elements, height: stackHeight(elements), baseline: firstBaseline(elements) };
  });
  // The first lines of all cells share one base line.
  const baseline = Math.max(0, ...laid.map((cell) => cell.baseline ?? 0));
  const drops = laid.map((cell) => (cell.baseline === null ? 0 : baseline - cell.baseline));
  const inner = Math.max(0, ...laid.map((cell, nth) => cell.height + (drops[nth] ?? 0)));
  const height = inner + 2 * pad;
  const ink = laid.flatMap((cell, nth): readonly Ink[] => {
    const filled = stack(cell.elements);
    const down = pad + (drops[nth] ?? 0);
    if (filled.ink.length === 0) return [{ kind: 'empty', tag: cell.tag, y: 0 }];
    return filled.ink.map((one) => moved(one, down));
  });
  const { left, width } = place;
  const fill = head ? headFill : null;
  const grounds: Ground[] = [
    ...(fill === null ? [] : [groundBox(left, width, height, fill)]),
    { kind: 'rule', x: left, y: height, width, thick: ruleWidth, colour: rule },
  ];
  return {
    kind: 'strip',
    before: 0,
    after: 0,
    glue: 0,
    height,
    baseline: pad + baseline,
    ink,
    grounds,
    repeat: null,
  };
}

function groundBox(x: number, width: number, height: number, fill: string): Ground {
  return { kind: 'box', x, y: 0, width, height, fill, edge: null, edgeWidth: 0, sides: 'none' };
}
