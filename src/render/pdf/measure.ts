// Blocks of a letter arrive; strips, frames and columns of known height leave, tagged in reading order.
import type { Block, Scene } from '../block.js';
import { look, pictureScale, smallestWord } from '../look.js';
import { onOneBaseline, strongest, withEnds, withLastGlue } from './ends.js';
import { addTag, inset, leftOf, plainRun, type Bench, type Place } from './frame.js';
import type { Element, Frame, Glue, Strip } from './flow.js';
import { measureOnce } from './measure-once.js';
import { measureLetterhead } from './measure-letterhead.js';
import { measureScene } from './measure-scene.js';
import { roomOfSign, withSign, withTick } from './measure-sign.js';
import { measureTable } from './measure-table.js';
import { composeAt, measureText } from './measure-text.js';
import { unbroken } from './lines.js';

/** Blocks one after another. A paragraph stays with the list it introduces. */
export function measureAll(
  blocks: readonly Block[],
  place: Place,
  bench: Bench,
): readonly Element[] {
  const [only] = blocks;
  if (blocks.length === 1 && only?.kind === 'paragraph' && holdsText(place, bench)) {
    return paragraph(only, place, bench, place.tag);
  }
  return blocks.flatMap((block, at) => {
    const elements = measureOnce(block, place, bench, measure);
    if (block.kind === 'pair' && introduces(blocks, at)) return withLastGlue(elements, 2);
    if (block.kind !== 'paragraph') return elements;
    const next = blocks[at + 1];
    if (next?.kind === 'list' || introduces(blocks, at)) return withLastGlue(elements, 2);
    // A label holds on to what it labels, not to what comes after its own part.
    return next === undefined ? withLastGlue(elements, 0) : elements;
  });
}

/** A paragraph alone between a heading and what is no paragraph: were it last on a page, it would stand there without its matter. */
function introduces(blocks: readonly Block[], at: number): boolean {
  const [before, own, after] = [at - 1, at, at + 1].map((nth) => kindOf(blocks[nth]));
  return before === 'heading' && own === 'paragraph' && after !== 'paragraph' && after !== null;
}

/** Of two languages side by side, the first's. */
function kindOf(block: Block | undefined): Block['kind'] | null {
  if (block === undefined) return null;
  return block.kind === 'pair' ? kindOf(block.first) : block.kind;
}

/** A list item or a cell with one paragraph needs no element for it. */
function holdsText(place: Place, bench: Bench): boolean {
  const role = bench.tags[place.tag]?.role;
  return role === 'LBody' || role === 'TD' || role === 'TH' || role === 'P';
}

function measure(block: Block, place: Place, bench: Bench): readonly Element[] {
  const { base } = bench;
  switch (block.kind) {
    case 'heading':
      return measureText(
        block.runs,
        {
          look: `h${block.level}`,
          tag: addTag(bench, place.tag, `H${block.level}`),
          before: look.space.heading * base,
          after: look.space.afterHeading * base,
          lead: true,
        },
        place,
        bench,
      );
    case 'paragraph':
      return paragraph(block, place, bench, addTag(bench, place.tag, 'P'));
    case 'list':
      return list(block, place, bench);
    case 'table':
      return measureTable(block, place, bench, measureAll);
    case 'notice':
      return [notice(block, place, bench)];
    case 'figure':
      return figure(block, place, bench);
    case 'section':
      return section(block, place, bench);
    case 'pair':
      return pair(block, place, bench);
    case 'logo':
      return measureLetterhead(block, [], place, bench, measureAll);
    case 'page-break':
      return [{ kind: 'break', before: 0, after: 0, glue: 0 }];
    case 'rule':
      return [rule(place, base)];
  }
}

function paragraph(
  block: Extract<Block, { kind: 'paragraph' }>,
  place: Place,
  bench: Bench,
  tag: number,
): readonly Strip[] {
  const address = block.look === 'address' || block.look === 'label';
  const space = address ? 0 : look.space.paragraph * bench.base;
  const style = { look: block.look, tag, before: 0, after: space, lead: block.look === 'label' };
  return measureText(block.runs, style, place, bench);
}

const bullets = ['\u2022', '\u2013'] as const;

function list(
  block: Extract<Block, { kind: 'list' }>,
  place: Place,
  bench: Bench,
): readonly Element[] {
  const { base } = bench;
  const numbering = block.ticks ? null : block.ordered ? 'Decimal' : 'Disc';
  const tag = addTag(bench, place.tag, 'L', { numbering });
  const bullet = bullets[Math.min(place.depth, bullets.length - 1)] ?? bullets[0];
  const markers = block.items.map((_, nth) => (block.ordered ? `${nth + 1}.` : bullet));
  const widths = markers.map(
    (text) => (unbroken(composeAt([plainRun(text)], 'body', place, bench)) * base) / 1000,
  );
  const indent = Math.max(look.space.indent * base, Math.max(0, ...widths) + base / 2);
  return block.items.flatMap((blocks, nth) => {
    const item = addTag(bench, tag, 'LI');
    const label = block.ticks ? null : { ...place, tag: addTag(bench, item, 'Lbl') };
    const body = addTag(bench, item, 'LBody');
    const inner = { ...inset(place, indent, 0), tag: body, depth: place.depth + 1 };
    const elements = measureAll(blocks, inner, bench);
    const marked =
      label === null
        ? withTick(elements, place, bench)
        : withMarker(elements, markers[nth] ?? bullet, label, bench);
    const last = nth === block.items.length - 1;
    const space = (last ? look.space.paragraph : look.space.item) * base;
    return withEnds(marked, nth === 0 ? 0 : look.space.item * base, space);
  });
}

/** The marker stands on the first line's base line, where reading begins. */
function withMarker(
  elements: readonly Element[],
  text: string,
  label: Place,
  bench: Bench,
): readonly Element[] {
  const style = { look: 'body', tag: label.tag, before: 0, after: 0, lead: true } as const;
  const [marker] = measureText([plainRun(text)], style, label, bench);
  const [first, ...others] = elements;
  if (marker === undefined) return elements;
  if (first?.kind !== 'strip') return [{ ...marker, height: 0 }, ...elements];
  const baseline = first.baseline ?? marker.baseline ?? 0;
  const ink = marker.ink.map((one) => ({ ...one, y: baseline }));
  return [{ ...first, ink: [...ink, ...first.ink] }, ...others];
}

function notice(block: Extract<Block, { kind: 'notice' }>, place: Place, bench: Bench): Frame {
  const { fill, edge, edgeWidth, sides, padding } = look.notice[block.look];
  const pad = padding * bench.base;
  const space = look.space.block * bench.base;
  const tag = addTag(bench, place.tag, 'Div');
  const start = pad + (sides === 'none' ? 0 : edgeWidth);
  const inner = { ...inset(place, start, pad + (sides === 'all' ? edgeWidth : 0)), tag };
  const children = measureAll(block.blocks, inner, bench);
  const { left: x, width } = place;
  const side = sides === 'start' && place.dir === 'rtl' ? 'end' : sides;
  return {
    kind: 'frame',
    before: space,
    after: space,
    glue: 0,
    padding: pad + (sides === 'all' ? edgeWidth / 2 : 0),
    children,
    ground: { kind: 'box', x, y: 0, width, height: 0, fill, edge, edgeWidth, sides: side },
  };
}

function figure(
  block: Extract<Block, { kind: 'figure' }>,
  place: Place,
  bench: Bench,
): readonly Element[] {
  const picture = measureScene(block.scene, place, bench);
  if (block.caption === null) return [picture];
  const tag = addTag(bench, place.tag, 'P');
  const style = { look: 'caption', tag, before: 0, after: picture.after, lead: false } as const;
  const caption = measureText(block.caption, style, place, bench);
  return [{ ...picture, after: look.space.item * bench.base, glue: 2 }, ...caption];
}

function section(
  block: Extract<Block, { kind: 'section' }>,
  place: Place,
  bench: Bench,
): readonly Element[] {
  const lang = block.lang ?? place.lang;
  const other = lang === place.lang ? null : lang;
  const titled = block.blocks[0]?.kind === 'heading';
  const plain = other === null && !titled;
  const tag = plain
    ? place.tag
    : addTag(bench, place.tag, titled ? 'Sect' : 'Div', { lang: other });
  const whole = { ...place, lang, dir: block.dir ?? place.dir, tag };
  const within =
    block.sign === undefined ? whole : inset(whole, roomOfSign(block.sign, bench.base), 0);
  const [logo, ...others] = block.blocks;
  const held =
    logo?.kind === 'logo'
      ? measureLetterhead(logo, others, within, bench, measureAll)
      : measureAll(block.blocks, within, bench);
  const elements = block.sign === undefined ? held : withSign(held, block.sign, whole, bench);
  if (!block.keep) return elements;
  return elements.map((element, at) =>
    at === elements.length - 1 ? element : { ...element, glue: strongest(element.glue, 1) },
  );
}

function pair(
  block: Extract<Block, { kind: 'pair' }>,
  place: Place,
  bench: Bench,
): readonly Element[] {
  const gutter = look.space.gutter * bench.base;
  const share = block.wide ? look.space.wideShare : 0.5;
  const widths = [share, 1 - share].map((part) => part * (place.width - gutter));
  if (Math.min(...widths) < narrowestColumn * bench.base || shrinks(block, widths, bench.base))
    return oneUnderAnother(block, place, bench);
  const parallel = block.second.kind === 'section' && block.second.lang !== null;
  const measured = [block.first, block.second].map((one, nth) => {
    const width = widths[nth] ?? 0;
    const start = nth === 0 ? 0 : place.width - width;
    const left = leftOf(place, start, width);
    return measureAll([one], { ...place, left, width }, bench);
  });
  const columns = parallel ? measured : onOneBaseline(measured);
  const ends = (pick: (column: readonly Element[]) => number) => Math.max(0, ...columns.map(pick));
  return [
    {
      kind: 'columns',
      columns,
      parallel,
      before: ends((column) => column[0]?.before ?? 0),
      after: ends((column) => column.at(-1)?.after ?? 0),
      glue: columns.reduce((glue, column) => strongest(glue, column.at(-1)?.glue ?? 0), 0 as Glue),
    },
  ];
}

/** em of the base size: in a narrower column lines hold four or five words, and pictures shrink too far. */
const narrowestColumn = 11;

/** In a part of the width the labels of a picture may become too small to read beside the text. */
function shrinks(
  { first, second }: Extract<Block, { kind: 'pair' }>,
  widths: readonly number[],
  base: number,
): boolean {
  return [first, second].some((block, nth) => {
    const scene = sceneIn(block);
    if (scene === null) return false;
    const least = smallestWord(scene.shapes) * pictureScale(scene, widths[nth] ?? 0, base);
    return least < leastLabel(base);
  });
}

/** Points that a label in a picture beside something keeps at least; large print has no small print. */
const leastLabel = (base: number) => (base < look.sizes.large ? 0.65 : 1) * base;

function sceneIn(block: Block): Scene | null {
  if (block.kind === 'figure') return block.scene;
  const [only, ...others] = block.kind === 'section' ? block.blocks : [];
  return only === undefined || others.length > 0 ? null : sceneIn(only);
}

/** Large print takes the whole width, as a narrow screen does. */
function oneUnderAnother(
  { first, second }: Extract<Block, { kind: 'pair' }>,
  place: Place,
  bench: Bench,
): readonly Element[] {
  const above = measureAll([first], place, bench);
  const glue = strongest(above.at(-1)?.glue ?? 0, 1);
  return [...withLastGlue(above, glue), ...measureAll([second], place, bench)];
}

function rule(place: Place, base: number): Strip {
  const { colour, width: thick } = look.rule;
  const space = look.space.block * base;
  const { left: x, width } = place;
  return {
    kind: 'strip',
    before: space,
    after: space,
    glue: 0,
    height: thick,
    baseline: null,
    ink: [],
    grounds: [{ kind: 'rule', x, y: thick / 2, width, thick, colour }],
    repeat: null,
  };
}
