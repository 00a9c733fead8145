// Elements of the markup arrive; blocks leave, and what stands where it may not gathers as problems.
import type { Problem } from '../problem.js';
import type { Block, Cell, Direction, NoticeLook, ParagraphLook, Run, TableLook } from './block.js';
import { type Element, type Node, isElement, markupProblem } from './parse-markup.js';
import { readLogo } from './logo.js';
import { isPictogram } from './pictures/pictogram.js';
import { readSvgElement } from './pictures/read-svg.js';
import { readRuns, textOf } from './read-runs.js';

/** What readers of markup share: the file's name for places, and where problems gather. */
export type Desk = { readonly file: string; readonly problems: Problem[] };

export function readBlocks(nodes: readonly Node[], desk: Desk): readonly Block[] {
  return withoutSpace(nodes).flatMap((node) => {
    if (!isElement(node)) {
      refuse(desk, node.line, 'place text outside a paragraph', 'text inside <p>, <li> or a cell');
      return [];
    }
    return readBlock(node, desk);
  });
}

function readBlock(element: Element, desk: Desk): readonly Block[] {
  const runs = () => readRuns(element.children, desk.file, desk.problems);
  const look = element.attributes.class;
  switch (element.tag) {
    case 'h1':
    case 'h2':
    case 'h3':
      return filled(runs(), (text) => ({
        kind: 'heading',
        level: element.tag === 'h1' ? 1 : element.tag === 'h2' ? 2 : 3,
        runs: text,
      }));
    case 'p':
      return filled(runs(), (text) => ({
        kind: 'paragraph',
        look: (look ?? 'body') as ParagraphLook,
        runs: text,
      }));
    case 'ul':
    case 'ol':
      return [
        {
          kind: 'list',
          ordered: element.tag === 'ol',
          items: readItems(element, desk),
          ...(look === 'ticks' ? { ticks: true } : {}),
        },
      ];
    case 'table':
      return [readTable(element, desk)];
    case 'aside': {
      const blocks = readBlocks(element.children, desk);
      return blocks.length === 0
        ? []
        : [{ kind: 'notice', look: (look ?? 'plain') as NoticeLook, blocks }];
    }
    case 'section':
      return [readSection(element, readBlocks(element.children, desk))];
    case 'figure':
      return readFigure(element, desk);
    case 'img':
      return readImage(element, desk);
    case 'hr':
      return [{ kind: look === 'page-break' ? 'page-break' : 'rule' }];
    default:
      refuse(
        desk,
        element.line,
        `place <${element.tag}> here`,
        'headings, paragraphs, lists, tables, notices, sections or figures',
      );
      return [];
  }
}

/** `beside` sets what it holds two by two, with `wide` the first of two wider; one left over stands alone. */
export function readSection(section: Element, blocks: readonly Block[]): Block {
  const names = (section.attributes.class ?? '').split(/\s+/);
  const sign = section.attributes['data-sign'] ?? '';
  return {
    kind: 'section',
    lang: section.attributes.lang ?? null,
    dir: directionOf(section),
    keep: names.includes('keep'),
    ...(isPictogram(sign) ? { sign } : {}),
    blocks: names.includes('beside') ? twoByTwo(blocks, names.includes('wide')) : blocks,
  };
}

function twoByTwo(blocks: readonly Block[], wide: boolean): readonly Block[] {
  return blocks.flatMap((first, index): readonly Block[] => {
    if (index % 2 === 1) return [];
    const second = blocks[index + 1];
    if (second === undefined) return [first];
    return [{ kind: 'pair', first, second, ...(wide ? { wide } : {}) }];
  });
}

function readItems(list: Element, desk: Desk): readonly (readonly Block[])[] {
  return childrenNamed(list, ['li'], desk).map((item) => readFlow(item, desk));
}

/** What a list item or a cell holds: blocks, or a line of text that becomes one paragraph. */
function readFlow(element: Element, desk: Desk): readonly Block[] {
  const inline = ['strong', 'bdi', 'span', 'a'];
  const children = withoutSpace(element.children);
  const isText = children.every((node) => !isElement(node) || inline.includes(node.tag));
  if (!isText) return readBlocks(children, desk);
  return filled(readRuns(element.children, desk.file, desk.problems), (runs) => ({
    kind: 'paragraph',
    look: 'body',
    runs,
  }));
}

function readTable(table: Element, desk: Desk): Block {
  const parts = childrenNamed(table, ['caption', 'thead', 'tbody'], desk);
  const caption = parts.find((part) => part.tag === 'caption');
  const rowsIn = (tag: string) =>
    parts
      .filter((part) => part.tag === tag)
      .flatMap((part) => childrenNamed(part, ['tr'], desk))
      .map((row) => childrenNamed(row, ['th', 'td'], desk).map((cell) => readCell(cell, desk)));
  const head = rowsIn('thead');
  const rows = rowsIn('tbody');
  const widths = new Set(
    [...head, ...rows].map((row) => row.reduce((sum, { span }) => sum + span, 0)),
  );
  if (widths.size > 1) refuse(desk, table.line, 'read <table>', 'as many columns in every row');
  return {
    kind: 'table',
    look: (table.attributes.class ?? 'plain') as TableLook,
    caption: caption === undefined ? null : readRuns(caption.children, desk.file, desk.problems),
    head,
    rows,
  };
}

function readCell(cell: Element, desk: Desk): Cell {
  const { scope, colspan } = cell.attributes;
  return {
    header: cell.tag === 'th',
    scope: scope === 'row' || scope === 'col' ? scope : null,
    span: colspan === undefined ? 1 : Number(colspan),
    blocks: readFlow(cell, desk),
  };
}

function readFigure(figure: Element, desk: Desk): readonly Block[] {
  const parts = childrenNamed(figure, ['svg', 'figcaption'], desk);
  const [svg, ...more] = parts.filter((part) => part.tag === 'svg');
  const [caption] = parts.filter((part) => part.tag === 'figcaption');
  if (svg === undefined || more.length > 0) {
    refuse(desk, figure.line, 'read <figure>', 'one picture in it');
    return [];
  }
  const scene = readSvgElement(svg, desk.file);
  if (!scene.ok) {
    desk.problems.push(...scene.problems);
    return [];
  }
  const runs = caption === undefined ? null : readRuns(caption.children, desk.file, desk.problems);
  return [{ kind: 'figure', scene: scene.value, caption: runs?.length === 0 ? null : runs }];
}

function readImage({ attributes, line }: Element, desk: Desk): readonly Block[] {
  const { src = '', alt = '' } = attributes;
  if (alt !== '' && readLogo(src) !== null) return [{ kind: 'logo', src, name: alt }];
  refuse(desk, line, 'draw <img>', 'src="{{sender.logo}}" and alt="{{sender.name}}"');
  return [];
}

function childrenNamed(parent: Element, tags: readonly string[], desk: Desk): readonly Element[] {
  return withoutSpace(parent.children).flatMap((node) => {
    if (isElement(node) && tags.includes(node.tag)) return [node];
    const what = isElement(node) ? `<${node.tag}>` : 'text';
    refuse(
      desk,
      node.line,
      `place ${what} directly in <${parent.tag}>`,
      tags.map((tag) => `<${tag}>`).join(' or '),
    );
    return [];
  });
}

/** A paragraph whose variables were all empty leaves nothing behind. */
function filled(runs: readonly Run[], make: (runs: readonly Run[]) => Block): readonly Block[] {
  return runs.length === 0 ? [] : [make(runs)];
}

export function withoutSpace(nodes: readonly Node[]): readonly Node[] {
  return nodes.filter((node) => isElement(node) || textOf(node).trim() !== '');
}

export function directionOf(element: Element): Direction | null {
  const { dir } = element.attributes;
  return dir === 'ltr' || dir === 'rtl' ? dir : null;
}

export function refuse(desk: Desk, line: number, cannot: string, expected: string) {
  desk.problems.push(markupProblem(desk.file, line, cannot, expected));
}
