// Placed letters arrive; they are painted and tagged into one open document, whose bytes leave at the end.
import { look } from '../look.js';
import { endWhole, openCanvas, type Canvas, type DocumentFacts } from './canvas.js';
import { logoOperators } from './draw-logo.js';
import { sceneOperators, signOperators, unitsOf } from './draw-scene.js';
import type { Fonts } from './fonts.js';
import { colourOf, edgePath } from './paint.js';
import type { Ground, Ink, PictureInk, PlacedLetter, Tag, TextInk } from './placed.js';
import { openTagTree, type TagTree } from './tag-tree.js';
import { openTypecase, short, type Typecase } from './typecase.js';

/** A document that takes one letter after another. */
export type Sheets = {
  readonly canvas: Canvas;
  readonly typecase: Typecase;
  readonly fonts: Fonts;
};

/** Opens a document; facts must name no patient. */
export function openSheets(facts: DocumentFacts, fonts: Fonts): Sheets {
  const canvas = openCanvas(facts);
  return { canvas, typecase: openTypecase(canvas, fonts), fonts };
}

/** Adds one letter's pages and its tag tree to the document. */
export function drawLetter(sheets: Sheets, letter: PlacedLetter): void {
  const { canvas } = sheets;
  const tree = openTagTree(canvas, letter.tags);
  for (const page of letter.pages) {
    canvas.addPage({ size: [letter.width, letter.height], margin: 0 });
    const drawn = [
      artifact(
        'Layout',
        page.grounds.map((ground) => groundOperators(canvas, ground)),
      ),
      ...grouped(page.ink).map((group) => groupOperators(sheets, letter.tags, tree, group)),
      artifact(
        'Pagination',
        page.running.map((ink) => textOperators(sheets.typecase, [ink])),
      ),
    ];
    canvas.addContent(drawn.filter((operators) => operators !== '').join('\n'));
  }
  tree.close();
}

/** Writes the fonts and gives the file. */
export function closeSheets(sheets: Sheets): Promise<Uint8Array> {
  sheets.typecase.close();
  return endWhole(sheets.canvas);
}

/** Neighbours of one tag are one stretch of marked content. */
function grouped(ink: readonly Ink[]): readonly (readonly [Ink, ...Ink[]])[] {
  const groups: [Ink, ...Ink[]][] = [];
  for (const one of ink) {
    const last = groups.at(-1);
    if (last !== undefined && last[0].tag === one.tag) last.push(one);
    else groups.push([one]);
  }
  return groups;
}

function groupOperators(
  sheets: Sheets,
  tags: readonly Tag[],
  tree: TagTree,
  group: readonly [Ink, ...Ink[]],
): string {
  const [first] = group;
  const tag = tags[first.tag];
  if (tag?.role === 'Link' && tag.href !== null) {
    const texts = group.filter((one) => one.kind === 'text');
    return linkOperators(sheets, tree, tag, tag.href, texts);
  }
  const element = tree.elementOf(first.tag, first);
  if (first.kind === 'empty') return '';
  const drawn =
    first.kind === 'logo' ? logoOperators(sheets.canvas, first) : inkOperators(sheets, group);
  return tree.mark(element, drawn);
}

/** A link that runs on to another page is two elements, for an annotation belongs to the page it stands on. */
function linkOperators(
  sheets: Sheets,
  tree: TagTree,
  tag: Tag,
  href: string,
  group: readonly TextInk[],
): string {
  const link = tree.elementMore(tag);
  const drawn = tree.mark(link, [inkOperators(sheets, group), ...group.map(underline)].join('\n'));
  const words = group.flatMap((ink) => ink.glyphs.map((glyph) => glyph.text)).join('');
  for (const { x, y, width, size } of group) {
    tree.link(link, { x, y: y - size, width, height: size * 1.3 }, href, words.trim());
  }
  return drawn;
}

function underline({ x, y, width, size, colour }: TextInk): string {
  return `${colourOf(colour)} rg ${short(x)} ${short(y + size * 0.12)} ${short(width)} ${short(size * 0.05)} re f`;
}

function inkOperators(sheets: Sheets, group: readonly Ink[]): string {
  const drawn: string[] = [];
  let row: TextInk[] = [];
  const endRow = () => {
    if (row.length > 0) drawn.push(textOperators(sheets.typecase, row));
    row = [];
  };
  for (const one of group) {
    const [first] = row;
    if (one.kind !== 'text' || (first !== undefined && !setAlike(first, one))) endRow();
    if (one.kind === 'text') row.push(one);
    if (one.kind === 'picture') drawn.push(pictureOperators(sheets.typecase, one));
  }
  endRow();
  return drawn.join('\n');
}

function setAlike(one: TextInk, other: TextInk): boolean {
  return one.file === other.file && one.size === other.size && one.colour === other.colour;
}

/** Hundredths of a point, so that steps add up to the place and not past it. */
function hundredths(points: number): number {
  return Math.round(points * 100);
}

/**
 * Pieces of one face, size and colour; each but the first is placed from the one before it, for steps repeat and
 * pack well. pdfkit turns the page upside down; the text matrix turns letters back.
 */
function textOperators(typecase: Typecase, row: readonly TextInk[]): string {
  let left = 0;
  let down = 0;
  const shown = row.map(({ file, size, x, y, colour, glyphs }, nth) => {
    const [dx, dy] = [hundredths(x) - left, down - hundredths(y)];
    left += dx;
    down -= dy;
    const place =
      nth === 0
        ? `${colourOf(colour)} rg /${typecase.use(file)} ${short(size)} Tf 1 0 0 -1 ${short(x)} ${short(y)} Tm`
        : `${short(dx / 100)} ${short(dy / 100)} Td`;
    return `${place}\n${typecase.show(file, glyphs, size)}`;
  });
  return `BT ${shown.join('\n')}\nET`;
}

function pictureOperators(typecase: Typecase, picture: PictureInk): string {
  const drawn = sceneOperators(picture.shapes, (letters, { fill }) => {
    const colour = fill ?? look.colour.ink;
    return textOperators(typecase, [{ ...letters, kind: 'text', tag: 0, width: 0, colour }]);
  });
  return `q ${unitsOf(picture)}\n${drawn}\nQ`;
}

function groundOperators(canvas: Canvas, ground: Ground): string {
  if (ground.kind === 'sign') return signOperators(canvas, ground);
  if (ground.kind === 'rule') {
    const { x, y, width, thick, colour } = ground;
    return `${colourOf(colour)} rg ${short(x)} ${short(y - thick / 2)} ${short(width)} ${short(thick)} re f`;
  }
  const { x, y, width, height, fill, edge, edgeWidth, sides } = ground;
  const box = `${short(x)} ${short(y)} ${short(width)} ${short(height)} re f`;
  const filled = fill === null ? '' : `${colourOf(fill)} rg ${box}`;
  return edge === null || sides === 'none'
    ? filled
    : `${filled}\n${edgePath({ x, y, width, height, edge, edgeWidth, sides })}`;
}

function artifact(type: 'Layout' | 'Pagination', operators: readonly string[]): string {
  if (operators.length === 0) return '';
  return `/Artifact <</Type /${type}>> BDC\n${operators.join('\n')}\nEMC`;
}
