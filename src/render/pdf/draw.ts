// Placed letters arrive; they are painted and tagged into one open document, whose bytes leave at the end.
import { look, shapeLook } from '../look.js';
import { openCanvas, type Canvas, type DocumentFacts, type Element } from './canvas.js';
import { logoOperators } from './draw-logo.js';
import type { Fonts } from './fonts.js';
import { colourOf, edgePath, outlinePath, shapePaint } from './paint.js';
import type {
  Ground,
  Ink,
  PictureInk,
  PlacedLetter,
  PlacedPage,
  SignGround,
  Tag,
  TextInk,
} from './placed.js';
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
  const elements = new Map<number, Element>();
  for (const page of letter.pages) {
    canvas.addPage({ size: [letter.width, letter.height], margin: 0 });
    artifact(
      canvas,
      'Layout',
      page.grounds.map((ground) => groundOperators(sheets.typecase, ground)),
    );
    for (const group of grouped(page.ink)) {
      drawGroup(sheets, letter.tags, elements, group);
    }
    drawRunning(sheets, page);
  }
  elements.get(0)?.end();
}

/** Writes the fonts and gives the file. */
export async function closeSheets(sheets: Sheets): Promise<Uint8Array> {
  sheets.typecase.close();
  sheets.canvas.end();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of sheets.canvas) {
    chunks.push(chunk);
    length += chunk.length;
  }
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
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

function drawGroup(
  sheets: Sheets,
  tags: readonly Tag[],
  elements: Map<number, Element>,
  group: readonly [Ink, ...Ink[]],
): void {
  const [first] = group;
  const tag = tags[first.tag];
  if (tag?.role === 'Link' && tag.href !== null) {
    drawLink(
      sheets,
      tag,
      tag.href,
      tags,
      elements,
      group.filter((one) => one.kind === 'text'),
    );
    return;
  }
  const element = elementOf(sheets.canvas, first.tag, tags, elements, first);
  if (first.kind === 'empty') return;
  element.add(() => {
    const drawn =
      first.kind === 'logo' ? logoOperators(sheets.canvas, first) : inkOperators(sheets, group);
    sheets.canvas.addContent(drawn);
  });
}

/** Elements are made when first needed, parents first, so that the tree is in the order of the ink. */
function elementOf(
  canvas: Canvas,
  name: number,
  tags: readonly Tag[],
  elements: Map<number, Element>,
  ink: Ink | null,
): Element {
  const known = elements.get(name);
  if (known !== undefined) return known;
  const tag = tags[name];
  if (tag === undefined) throw new Error('Ink belongs to a tag that does not exist');
  const element = canvas.struct(tag.role, {
    ...(tag.lang === null ? {} : { lang: tag.lang }),
    ...(tag.alt === null ? {} : { alt: tag.alt }),
    ...(ink?.kind === 'picture' || ink?.kind === 'logo'
      ? { bbox: [ink.x, ink.y, ink.x + ink.width, ink.y + ink.height] }
      : {}),
  });
  const attributes = attributesOf(tag);
  if (attributes !== null) element.dictionary.data.A = attributes;
  elements.set(name, element);
  if (tag.parent === null) canvas.addStructure(element);
  else elementOf(canvas, tag.parent, tags, elements, null).add(element);
  return element;
}

/** ISO 32000-1, 14.8.5.5 and 14.8.5.7. */
function attributesOf(tag: Tag): Readonly<Record<string, unknown>> | null {
  if (tag.numbering !== null) return { O: 'List', ListNumbering: tag.numbering };
  if (tag.role !== 'TH' && tag.role !== 'TD') return null;
  if (tag.scope === null && tag.span === 1) return null;
  return {
    O: 'Table',
    ...(tag.scope === null ? {} : { Scope: tag.scope }),
    ...(tag.span === 1 ? {} : { ColSpan: tag.span }),
  };
}

/** A link that runs on to another page is two elements, for an annotation belongs to the page it stands on. */
function drawLink(
  sheets: Sheets,
  tag: Tag,
  href: string,
  tags: readonly Tag[],
  elements: Map<number, Element>,
  group: readonly TextInk[],
): void {
  const { canvas } = sheets;
  const parent = elementOf(canvas, tag.parent ?? 0, tags, elements, null);
  const link = canvas.struct('Link', tag.lang === null ? {} : { lang: tag.lang });
  parent.add(link);
  link.add(() => {
    canvas.addContent(inkOperators(sheets, group));
    canvas.addContent(group.map(underline).join('\n'));
  });
  const words = group.flatMap((ink) => ink.glyphs.map((glyph) => glyph.text)).join('');
  // pdfkit turns a plain string into a name; only a String object becomes text.
  const Contents = new String(words.trim()) as string;
  for (const { x, y, width, size } of group) {
    canvas.link(x, y - size, width, size * 1.3, href, { structParent: link, Contents });
  }
  link.end();
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

function pictureOperators(typecase: Typecase, picture: PictureInk | SignGround): string {
  const { x, y, scale, shapes } = picture;
  const drawn = shapes.map((shape) => {
    const paint = shapeLook(shape.look);
    if (shape.kind === 'outline') return `${shapePaint(paint)}\n${outlinePath(shape.path, paint)}`;
    const colour = paint.fill ?? look.colour.ink;
    return textOperators(typecase, [{ ...shape, kind: 'text', tag: 0, width: 0, colour }]);
  });
  return `q ${short(scale)} 0 0 ${short(scale)} ${short(x)} ${short(y)} cm\n${drawn.join('\n')}\nQ`;
}

function groundOperators(typecase: Typecase, ground: Ground): string {
  if (ground.kind === 'sign') return pictureOperators(typecase, ground);
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

function drawRunning(sheets: Sheets, page: PlacedPage): void {
  const drawn = page.running.map((ink) => textOperators(sheets.typecase, [ink]));
  artifact(sheets.canvas, 'Pagination', drawn);
}

function artifact(
  canvas: Canvas,
  type: 'Layout' | 'Pagination',
  operators: readonly string[],
): void {
  if (operators.length === 0) return;
  canvas.markContent('Artifact', { type });
  canvas.addContent(operators.join('\n'));
  canvas.endMarkedContent();
}
