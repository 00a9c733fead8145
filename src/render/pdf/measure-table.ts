// A table arrives; one strip for each row leaves: columns as wide as their words ask, rows never divided.
import type { Block, Cell } from '../block.js';
import { look, pictureScale } from '../look.js';
import { stack, type Element, type Strip } from './flow.js';
import { addTag, inset, type Bench, type Place } from './frame.js';
import { composeAt, measureText } from './measure-text.js';
import { narrowest, unbroken } from './lines.js';
import { moved, stackHeight } from './flow.js';
import type { Ground, Ink } from './placed.js';

type Table = Extract<Block, { kind: 'table' }>;
type MeasureAll = (blocks: readonly Block[], place: Place, bench: Bench) => readonly Element[];

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
  const widths = columnWidths([...table.head, ...table.rows], place, bench, table.look);
  const rowOf = (cells: readonly Cell[], head: boolean) =>
    measureRow(cells, head, table, widths, { ...place, tag }, bench, measureAll);
  const head = table.head.map((cells) => ({ ...rowOf(cells, true), glue: 2 as const }));
  const repeat = head.length === 0 ? null : stack(head);
  const rows = table.rows.map((cells) => ({ ...rowOf(cells, false), repeat }));
  const all = [...head, ...rows];
  return [
    ...caption,
    ...all.map((row, nth) => ({
      ...row,
      before: nth === 0 ? (caption.length === 0 ? space : 0) : 0,
      after: nth === all.length - 1 ? space : 0,
    })),
  ];
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

function cellTag(cell: Cell, head: boolean, row: number, bench: Bench): number {
  if (!cell.header) return addTag(bench, row, 'TD', { span: cell.span });
  const column = cell.scope === 'col' || (cell.scope === null && head);
  return addTag(bench, row, 'TH', { span: cell.span, scope: column ? 'Column' : 'Row' });
}

function firstBaseline(elements: readonly Element[]): number | null {
  const [first] = elements;
  return first?.kind === 'strip' ? first.baseline : null;
}

/** Every column gets what its longest word needs, then shares what is left by how much text it holds. */
function columnWidths(
  rows: readonly (readonly Cell[])[],
  place: Place,
  bench: Bench,
  tableLook: Table['look'],
): readonly number[] {
  const pad = 2 * look.table[tableLook].padding * bench.base;
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
  return shareOut(least, most, place.width);
}

function shareOut(least: readonly number[], most: readonly number[], width: number) {
  const low = sum(least);
  const high = sum(most);
  if (high <= width) return most.map((own) => own + ((width - high) * own) / high);
  if (low >= width) return least.map((own) => (own * width) / low);
  return least.map((own, at) => own + ((width - low) * ((most[at] ?? own) - own)) / (high - low));
}

/** Narrowest and widest a cell can use, points without padding. */
function cellNeeds(blocks: readonly Block[], place: Place, bench: Bench) {
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
      const em = (bench.base * look.scale[at]) / 1000;
      return { least: narrowest(paragraph) * em, most: unbroken(paragraph) * em };
    }
    case 'figure': {
      const width = block.scene.width * pictureScale(block.scene.width, place.width, bench.base);
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

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
