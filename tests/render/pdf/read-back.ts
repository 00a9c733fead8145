// Bytes of a PDF arrive; what was painted under which mark, the tag tree and the fonts leave.
import { type Dict, type Objects, readerAt, readObjects, type Value } from './objects.js';

type Drawn = {
  readonly font: Dict;
  readonly code: number;
  readonly text: string;
  readonly glyph: number;
};
export type Stretch = {
  readonly page: number;
  readonly mark: 'Artifact' | number | null;
  readonly drawn: readonly Drawn[];
  readonly x: number;
  readonly y: number;
};
export type TagNode = {
  readonly role: string;
  readonly dict: Dict;
  readonly children: readonly (
    | TagNode
    | { readonly page: number; readonly mcid: number }
    | { readonly annotation: Dict }
  )[];
};
export type ReadPdf = {
  readonly objects: Objects;
  readonly catalog: Dict;
  readonly pages: readonly Dict[];
  readonly stretches: readonly Stretch[];
  readonly tree: readonly TagNode[];
  /** Marks that stand inside other marks. */
  readonly nested: number;
};

export function readPdf(bytes: Uint8Array): ReadPdf {
  const objects = readObjects(bytes);
  const catalog = objects.dict(objects.trailer.Root);
  const pageRefs = objects.list(objects.dict(catalog.Pages).Kids);
  const pages = pageRefs.map(objects.dict);
  const fonts = new Map<Dict, FontReader>();
  let nested = 0;
  const stretches = pages.flatMap((page, nth) => {
    const read = readContent(page, nth, objects, fonts);
    nested += read.nested;
    return read.stretches;
  });
  const pageOf = (ref: Value | undefined) =>
    pageRefs.findIndex((one) => JSON.stringify(one) === JSON.stringify(ref));
  const nodeOf = (value: Value): TagNode => {
    const dict = objects.dict(value);
    const children = objects.list(dict.K).map((kid) => {
      if (typeof kid === 'number') return { page: pageOf(dict.Pg), mcid: kid };
      const inner = objects.dict(kid);
      if (inner.Type === '/MCR') return { page: pageOf(inner.Pg), mcid: Number(inner.MCID) };
      if (inner.Type === '/OBJR') return { annotation: objects.dict(inner.Obj) };
      return nodeOf(kid);
    });
    return { role: String(dict.S).slice(1), dict, children };
  };
  const tree = objects.list(objects.dict(catalog.StructTreeRoot).K).map(nodeOf);
  return { objects, catalog, pages, stretches, tree, nested };
}

type FontReader = { readonly texts: ReadonlyMap<number, string>; readonly map: Uint8Array };

function fontReader(font: Dict, objects: Objects): FontReader {
  const cmap = Buffer.from(objects.stream(font.ToUnicode)).toString('latin1');
  const rows = [...cmap.matchAll(/^<([0-9a-f]{4})> <([0-9a-f]*)>$/gm)];
  const texts = new Map(
    rows.map(([, code = '', text = '']) => [
      Number.parseInt(code, 16),
      Buffer.from(text, 'hex').swap16().toString('utf16le'),
    ]),
  );
  const descendant = objects.dict(objects.list(font.DescendantFonts)[0]);
  return { texts, map: objects.stream(descendant.CIDToGIDMap) };
}

const painting = new Set([
  'f',
  'F',
  'f*',
  'B',
  'B*',
  'b',
  'b*',
  'S',
  's',
  'sh',
  'Do',
  'Tj',
  'TJ',
  "'",
  '"',
]);

function readContent(page: Dict, nth: number, objects: Objects, fonts: Map<Dict, FontReader>) {
  const content = Buffer.from(objects.stream(page.Contents)).toString('latin1');
  const named = objects.dict(objects.dict(page.Resources).Font);
  const reader = readerAt(content, 0);
  const stretches: Stretch[] = [];
  const marks: ('Artifact' | number)[] = [];
  let nested = 0;
  let operands: Value[] = [];
  let font: Dict = {};
  let x = 0;
  let y = 0;
  for (let word = reader.value(); word !== null; word = reader.value()) {
    if (typeof word !== 'string' || !/^[A-Za-z'"*]+$/.test(word)) {
      operands.push(word);
      continue;
    }
    const mark = marks.at(-1) ?? null;
    if (word === 'BDC' || word === 'BMC') {
      if (marks.length > 0) nested += 1;
      const [tag, facts] = operands;
      marks.push(tag === '/Artifact' ? 'Artifact' : Number(objects.dict(facts).MCID));
    } else if (word === 'EMC') marks.pop();
    else if (word === 'Tf') font = objects.dict(named[String(operands[0]).slice(1)]);
    else if (word === 'Tm') [x, y] = [Number(operands[4]), Number(operands[5])];
    // The text matrix turns letters back, so steps up are negative on the page.
    else if (word === 'Td') [x, y] = [x + Number(operands[0]), y - Number(operands[1])];
    else if (painting.has(word)) {
      const drawn = word === 'TJ' ? showing(operands[0], font, objects, fonts) : [];
      stretches.push({ page: nth, mark, drawn, x, y });
    }
    operands = [];
  }
  return { stretches, nested };
}

function showing(
  row: Value | undefined,
  font: Dict,
  objects: Objects,
  fonts: Map<Dict, FontReader>,
) {
  const reader = fonts.get(font) ?? fontReader(font, objects);
  fonts.set(font, reader);
  return objects.list(row).flatMap((part): readonly Drawn[] => {
    return codesOf(part).map((code) => {
      const glyph = ((reader.map[2 * code] ?? 0) << 8) | (reader.map[2 * code + 1] ?? 0);
      return { font, code, text: reader.texts.get(code) ?? '', glyph };
    });
  });
}

/** Two bytes a code, as digits or as characters (ISO 32000-1, 7.3.4). */
function codesOf(part: Value): readonly number[] {
  if (typeof part !== 'string') return [];
  const bytes = part.startsWith('<')
    ? Buffer.from(part.replace(/[<>\s]/g, ''), 'hex')
    : Buffer.from(part, 'latin1');
  return Array.from({ length: bytes.length / 2 }, (_, at) => bytes.readUInt16BE(2 * at));
}

/** Text of a node and everything in it, in the order of the tags: what a screen reader says. */
export function textOf(node: TagNode, pdf: ReadPdf): string {
  return node.children
    .map((child) => {
      if ('role' in child) return textOf(child, pdf);
      return 'mcid' in child
        ? drawnAt(child.page, child.mcid, pdf)
            .map((one) => one.text)
            .join('')
        : '';
    })
    .join('')
    .replaceAll('\u200B', '');
}

function drawnAt(page: number, mcid: number, pdf: ReadPdf): readonly Drawn[] {
  return pdf.stretches
    .filter((one) => one.page === page && one.mark === mcid)
    .flatMap((one) => one.drawn);
}

/** Every node, parents before children. */
export function nodesOf(nodes: readonly TagNode[]): readonly TagNode[] {
  return nodes.flatMap((node) => [
    node,
    ...nodesOf(node.children.filter((child) => 'role' in child)),
  ]);
}

/** Running text and grounds of one page, as one string. */
export function artifactText(page: number, pdf: ReadPdf): string {
  return pdf.stretches
    .filter((one) => one.page === page && one.mark === 'Artifact')
    .map((one) => one.drawn.map(({ text }) => text).join(''))
    .join('\n');
}
