// Bytes of a PDF arrive; every clause of PDF/UA-1 that a program can check cheaply and that fails leaves, by number.
// Clauses: ISO 14289-1:2014 as numbered in veraPDF's published PDF/UA-1 profile.
import { Blob, Face, Font } from 'harfbuzzjs';
import type { Dict, Objects, Value } from './objects.js';
import { nodesOf, type ReadPdf, readPdf, type TagNode, textOf } from './read-back.js';

/**
 * Faults as 'clause-test: what is wrong'; empty when all checked clauses hold.
 * @example expect(uaFaults(bytes)).toEqual([])
 */
export function uaFaults(bytes: Uint8Array): readonly string[] {
  const pdf = readPdf(bytes);
  const nodes = nodesOf(pdf.tree);
  return [
    ...documentFaults(pdf),
    ...contentFaults(pdf, nodes),
    ...nodes.flatMap((node) => containmentFaults(node)),
    ...headingFaults(nodes),
    ...nodes.flatMap((node) => nodeFaults(node, pdf)),
    ...fontFaults(pdf),
  ];
}

function when(fault: boolean, words: string): readonly string[] {
  return fault ? [words] : [];
}

function documentFaults({ catalog, objects, pages }: ReadPdf): readonly string[] {
  const xmp = Buffer.from(objects.stream(catalog.Metadata)).toString('utf8');
  const marks = objects.dict(catalog.MarkInfo);
  return [
    ...when(!/<pdfuaid:part>1<\/pdfuaid:part>/.test(xmp), '5-1: no PDF/UA identifier'),
    ...when(marks.Marked !== true, '6.2-1: not marked as tagged'),
    ...when(marks.Suspects === true, '7.1-4: suspects'),
    ...when(catalog.Metadata === undefined, '7.1-8: no metadata'),
    ...when(!/<dc:title>[\s\S]*<rdf:li[^>]*>[^<&]+<\/rdf:li>/.test(xmp), '7.1-9: no dc:title'),
    ...when(
      objects.dict(catalog.ViewerPreferences).DisplayDocTitle !== true,
      '7.1-10: title not shown',
    ),
    ...when(catalog.StructTreeRoot === undefined, '7.1-11: no tag tree'),
    ...when(!language.test(String(catalog.Lang)), '7.2-34: no language'),
    ...pages.flatMap((page, nth) =>
      when(page.Tabs !== '/S', `7.18.3-1: page ${nth + 1} does not tab in tag order`),
    ),
  ];
}

/** BCP 47, as far as letters use it. */
const language = /^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/;

function contentFaults(pdf: ReadPdf, nodes: readonly TagNode[]): readonly string[] {
  const owners = new Map<string, number>();
  for (const node of nodes) {
    for (const child of node.children) {
      if (!('mcid' in child)) continue;
      const key = `${child.page}/${child.mcid}`;
      owners.set(key, (owners.get(key) ?? 0) + 1);
    }
  }
  const owned = (page: number, mark: number) => owners.get(`${page}/${mark}`) === 1;
  return [
    ...when(pdf.nested > 0, '7.1-1: a mark stands inside another'),
    ...pdf.stretches.flatMap(({ page, mark }) => [
      ...when(mark === null, `7.1-3: untagged paint on page ${page + 1}`),
      ...when(typeof mark === 'number' && !owned(page, mark), `7.1-3: mark ${mark} not owned once`),
    ]),
  ];
}

/** Which parents a role may have, and which children (7.2-3 to 7.2-20, 7.2-36 to 7.2-43). */
const children: Readonly<Record<string, readonly string[]>> = {
  Table: ['Caption', 'TR', 'THead', 'TBody', 'TFoot'],
  TR: ['TH', 'TD'],
  L: ['L', 'LI', 'Caption'],
  LI: ['Lbl', 'LBody'],
};
const parents: Readonly<Record<string, readonly string[]>> = {
  TR: ['Table', 'THead', 'TBody', 'TFoot'],
  TH: ['TR'],
  TD: ['TR'],
  LI: ['L'],
  LBody: ['LI'],
  Lbl: ['LI'],
};

function containmentFaults(node: TagNode): readonly string[] {
  const kids = node.children.filter((child) => 'role' in child);
  const allowed = children[node.role];
  return [
    ...kids.flatMap((kid) => [
      ...when(
        allowed !== undefined && !allowed.includes(kid.role),
        `7.2: ${kid.role} in ${node.role}`,
      ),
      ...when(parents[kid.role]?.includes(node.role) === false, `7.2: ${kid.role} in ${node.role}`),
    ]),
    ...when(
      kids.slice(1).some((kid) => kid.role === 'Caption'),
      '7.2-19: caption not first',
    ),
    ...when(
      node.role === 'Table' &&
        new Set(kids.filter((kid) => kid.role === 'TR').map(columns)).size > 1,
      '7.2-43: rows of unequal length',
    ),
  ];
}

function columns(row: TagNode): number {
  const cells = row.children.filter((child) => 'role' in child);
  return cells.reduce((total, cell) => total + Number(attribute(cell.dict, 'ColSpan') ?? 1), 0);
}

function attribute(dict: Dict, name: string) {
  const own = dict.A;
  return typeof own === 'object' && own !== null && !Array.isArray(own)
    ? (own as Dict)[name]
    : undefined;
}

function headingFaults(nodes: readonly TagNode[]): readonly string[] {
  let level = 0;
  const faults: string[] = [];
  for (const { role } of nodes) {
    if (role === 'H') faults.push('7.4.4-1: H beside H1 to H6');
    const own = /^H([1-6])$/.exec(role)?.[1];
    if (own === undefined) continue;
    if (Number(own) > level + 1) faults.push(`7.4.2-1: ${role} after level ${level}`);
    level = Number(own);
  }
  return faults;
}

function nodeFaults(node: TagNode, pdf: ReadPdf): readonly string[] {
  const { role, dict } = node;
  const lang = dict.Lang;
  return [
    ...when(
      lang !== undefined && !language.test(String(lang)),
      '7.2-29: a language that is no tag',
    ),
    ...when(role === 'Figure' && !dict.Alt, '7.3-1: figure without words'),
    ...when(role === 'Figure' && attribute(dict, 'BBox') === undefined, 'figure without BBox'),
    ...when(
      role === 'TH' && attribute(dict, 'Scope') === undefined,
      '7.5-1: heading cell without scope',
    ),
    ...node.children.flatMap((child) => {
      if (!('annotation' in child)) return [];
      return [
        ...when(role !== 'Link', '7.18.5-1: link outside a Link'),
        ...when(!child.annotation.Contents, '7.18.5-2: link without contents'),
        ...when(
          child.annotation.StructParent === undefined,
          '7.18.5-1: link not in the parent tree',
        ),
      ];
    }),
    ...when(role === 'Link' && textOf(node, pdf).trim() === '', 'link without text'),
  ];
}

/** ISO 32000-1, 9.7.4.3: a code, then the widths from that code on. */
function widthsOf(row: readonly Value[], objects: Objects): ReadonlyMap<number, number> {
  const widths = new Map<number, number>();
  for (let at = 0; at < row.length; at += 2) {
    objects.list(row[at + 1]).forEach((width, nth) => {
      widths.set(Number(row[at]) + nth, Number(width));
    });
  }
  return widths;
}

function fontFaults({ objects, stretches }: ReadPdf): readonly string[] {
  const used = new Map<Dict, Map<number, { readonly text: string; readonly glyph: number }>>();
  for (const { font, code, text, glyph } of stretches.flatMap((one) => one.drawn)) {
    const codes = used.get(font) ?? new Map();
    used.set(font, codes.set(code, { text, glyph }));
  }
  return [...used].flatMap(([font, codes]) => {
    const descendant = objects.dict(objects.list(font.DescendantFonts)[0]);
    const descriptor = objects.dict(descendant.FontDescriptor);
    const file = objects.stream(descriptor.FontFile2);
    const face = new Face(new Blob(new Uint8Array(file)));
    const shaped = new Font(face);
    const listed = widthsOf(objects.list(descendant.W), objects);
    return [
      ...when(objects.stream(descendant.CIDToGIDMap).length === 0, '7.21.3.2-1: no CIDToGIDMap'),
      ...when(file.length === 0, '7.21.4.1-1: font not embedded'),
      ...[...codes].flatMap(([code, { text, glyph }]) => {
        const width = listed.get(code) ?? Number.NaN;
        const own = (shaped.glyphHAdvance(glyph) * 1000) / face.upem;
        return [
          ...when(!(Math.abs(width - own) <= 1), `7.21.5-1: width of code ${code}`),
          ...when(text === '', `7.21.7-1: code ${code} without text`),
          ...when(
            ['\0', '\uFEFF', '\uFFFE'].some((bad) => text.includes(bad)),
            `7.21.7-2: code ${code} stands for no character`,
          ),
          ...when(glyph === 0, `7.21.8-1: code ${code} is .notdef`),
        ];
      }),
    ];
  });
}
