// Tags of a letter arrive, and what is drawn of each; the elements of its tag tree leave (ISO 32000-1, 14.7 and 14.8).
import type { Canvas, Reference } from './canvas.js';
import type { Ink, Tag } from './placed.js';

/** One element; its kids are numbers of marked content, elements and annotations, in reading order. */
export type Element = { readonly reference: Reference; readonly kids: unknown[] };

/** The tree of one letter. Elements are made when first needed, parents first: the tree is in the order of the ink. */
export type TagTree = {
  /** The element of a tag by its name; `ink` says where a picture stands. */
  readonly elementOf: (name: number, ink?: Ink) => Element;
  /** One more element of a tag, for a link that goes on elsewhere. */
  readonly elementMore: (tag: Tag) => Element;
  /** Operators marked as what the element holds on the current page. */
  readonly mark: (element: Element, operators: string) => string;
  /** Makes a box of the current page a link, read as part of the element. Points from the top left corner. */
  readonly link: (element: Element, box: Box, href: string, words: string) => void;
  /** Writes the elements; nothing more can be marked. */
  readonly close: () => void;
};

type Box = Readonly<Record<'x' | 'y' | 'width' | 'height', number>>;

export function openTagTree(canvas: Canvas, tags: readonly Tag[]): TagTree {
  const byName = new Map<number, Element>();
  const elements: Element[] = [];
  const add = (tag: Tag, ink?: Ink): Element => {
    const parent = tag.parent === null ? null : elementOf(tag.parent);
    const root = canvas.getStructTreeRoot();
    const attributes = attributesOf(tag, ink, canvas);
    const reference = canvas.ref({
      S: tag.role,
      P: parent?.reference ?? root,
      // pdfkit turns a plain string into a name; only a String object becomes text.
      ...(tag.lang === null ? {} : { Lang: new String(tag.lang) }),
      ...(tag.alt === null ? {} : { Alt: new String(tag.alt) }),
      ...(attributes === null ? {} : { A: attributes }),
    });
    const element: Element = { reference, kids: [] };
    elements.push(element);
    if (parent === null) root.data.K = [...((root.data.K ?? []) as Reference[]), reference];
    else parent.kids.push(reference);
    return element;
  };
  const elementOf = (name: number, ink?: Ink): Element => {
    const known = byName.get(name);
    if (known !== undefined) return known;
    const tag = tags[name];
    if (tag === undefined) throw new Error('Ink belongs to a tag that does not exist');
    const element = add(tag, ink);
    byName.set(name, element);
    return element;
  };
  return {
    elementOf,
    elementMore: (tag) => add(tag),
    mark: ({ reference, kids }, operators) => {
      const { dictionary, structParentTreeKey } = canvas.page;
      const marked = canvas.getStructParentTree().get(structParentTreeKey);
      const MCID = marked.push(reference) - 1;
      reference.data.Pg ??= dictionary;
      kids.push(reference.data.Pg === dictionary ? MCID : { Type: 'MCR', Pg: dictionary, MCID });
      return `/${String(reference.data.S)} <</MCID ${MCID}>> BDC\n${operators}\nEMC`;
    },
    link: ({ reference, kids }, { x, y, width, height }, href, words) => {
      const { annotations, dictionary } = canvas.page;
      const foot = canvas.page.height - y - height;
      const StructParent = canvas.createStructParentTreeNextKey();
      canvas.getStructParentTree().add(StructParent, reference);
      const annotation = canvas.ref({
        Type: 'Annot',
        Subtype: 'Link',
        Rect: [x, foot, x + width, foot + height],
        Border: [0, 0, 0],
        F: printed,
        A: { S: 'URI', URI: new String(href) },
        Contents: new String(words),
        StructParent,
      });
      annotation.end();
      annotations.push(annotation);
      kids.push({ Type: 'OBJR', Obj: annotation, Pg: dictionary });
    },
    close: () => {
      for (const { reference, kids } of elements) {
        reference.data.K = kids;
        reference.end();
      }
    },
  };
}

/** ISO 32000-1, 12.5.3: the annotation goes to the printer with the page. */
const printed = 4;

/** ISO 32000-1, 14.8.5.4, 14.8.5.5 and 14.8.5.7. */
function attributesOf(
  tag: Tag,
  ink: Ink | undefined,
  canvas: Canvas,
): Readonly<Record<string, unknown>> | null {
  if (ink?.kind === 'picture' || ink?.kind === 'logo') {
    const foot = canvas.page.height - ink.y - ink.height;
    const BBox = [ink.x, foot, ink.x + ink.width, foot + ink.height];
    return { O: 'Layout', Placement: 'Block', BBox };
  }
  if (tag.numbering !== null) return { O: 'List', ListNumbering: tag.numbering };
  if (tag.role !== 'TH' && tag.role !== 'TD') return null;
  if (tag.scope === null && tag.span === 1) return null;
  return {
    O: 'Table',
    ...(tag.scope === null ? {} : { Scope: tag.scope }),
    ...(tag.span === 1 ? {} : { ColSpan: tag.span }),
  };
}
