// Nothing arrives; the one table of look leaves: the style sheet is printed from it, the PDF is laid out by it.
import type { NoticeLook, PageForm, ParagraphLook, Scene, TableLook } from './block.js';

/** Points: 72 to the inch. The margin is the same on all four sides; running lines stand inside it. */
type PageLook = {
  readonly width: number;
  readonly height: number;
  readonly margin: number;
};

/** `fill` and `edge` are colours, `edgeWidth` points, `padding` em of the base size. */
export type BoxLook = {
  readonly fill: string | null;
  readonly edge: string | null;
  readonly edgeWidth: number;
  /** `start` draws the edge only where reading starts: left, or right in a right-to-left letter. */
  readonly sides: 'all' | 'start' | 'none';
  readonly padding: number;
};

/** Widths and dashes in units of the picture, one point at the standard size. */
export type ShapeLook = {
  readonly fill: string | null;
  readonly stroke: string | null;
  readonly width: number;
  readonly dash: readonly number[] | null;
};

type RuledLook = {
  readonly rule: string;
  readonly ruleWidth: number;
  readonly headFill: string | null;
  /** em of the base size. */
  readonly padding: number;
};

export type Scale = Readonly<Record<'h1' | 'h2' | 'h3' | ParagraphLook | 'running', number>>;

/**
 * Ink on paper, one accent. Contrast with paper: ink 16:1, quiet 8:1, accent 8:1, line 3.9:1 (WCAG 2.2,
 * 1.4.3 and 1.4.11); tests compute them. Grey printing keeps the same order of darkness.
 */
const colour = {
  paper: '#ffffff',
  ink: '#1b2420',
  quiet: '#45524b',
  accent: '#1d5a3c',
  /** Edges of pictures and boxes that carry meaning. */
  line: '#76857c',
  /** Hairlines that carry none. */
  hair: '#c3ccc6',
  /** Ground of the summary. */
  wash: '#eff4ef',
  /** Ground of what is less pressing. */
  sand: '#f6f5f0',
} as const;

/** The same roles on a dark screen; contrast with its paper: ink 15:1, quiet 9.9:1, accent 10:1, line 5:1. */
const dark: Readonly<Record<keyof typeof colour, string>> = {
  paper: '#141917',
  ink: '#e9eeea',
  quiet: '#b9c4bd',
  accent: '#8fd0ac',
  line: '#7d8b83',
  hair: '#3a4540',
  wash: '#1d2622',
  sand: '#22241f',
};

const pages: Readonly<Record<PageForm['paper'], PageLook>> = {
  A4: { width: 595.28, height: 841.89, margin: 30 },
  Letter: { width: 612, height: 792, margin: 30 },
};

/** Body size in points; pictures scale with it from the standard one. */
const sizes: Readonly<Record<PageForm['size'], number>> = {
  dense: 9.5,
  compact: 12,
  smaller: 12,
  standard: 14,
  ample: 16,
  large: 18,
  'extra-large': 24,
};

const scale: Scale = {
  h1: 1.4,
  h2: 1.15,
  h3: 1.05,
  body: 1,
  lead: 1,
  small: 0.85,
  caption: 0.85,
  label: 0.9,
  value: 1.15,
  address: 0.86,
  /** The lines above and below every page. */
  running: 0.8,
};

const notice: Readonly<Record<NoticeLook, BoxLook>> = {
  summary: { fill: colour.wash, edge: colour.accent, edgeWidth: 3, sides: 'start', padding: 0.5 },
  urgent: { fill: colour.paper, edge: colour.ink, edgeWidth: 2.25, sides: 'all', padding: 0.45 },
  caution: { fill: colour.sand, edge: colour.quiet, edgeWidth: 3, sides: 'start', padding: 0.6 },
  band: { fill: colour.paper, edge: colour.ink, edgeWidth: 1, sides: 'all', padding: 0.35 },
  plain: { fill: null, edge: colour.line, edgeWidth: 0.75, sides: 'all', padding: 0.6 },
};

const table: Readonly<Record<TableLook, RuledLook>> = {
  results: { rule: colour.line, ruleWidth: 0.75, headFill: colour.wash, padding: 0.3 },
  plain: { rule: colour.hair, ruleWidth: 0.5, headFill: null, padding: 0.25 },
};

/** Line art at 1.5 points; areas differ by hatch or fill and by a word beside them, never by hue alone. */
const shapes = {
  axis: { fill: null, stroke: colour.ink, width: 1.5, dash: null },
  tick: { fill: null, stroke: colour.quiet, width: 1, dash: null },
  band: { fill: colour.wash, stroke: colour.accent, width: 1, dash: null },
  hatch: { fill: null, stroke: colour.accent, width: 0.75, dash: null },
  marker: { fill: colour.ink, stroke: colour.paper, width: 1, dash: null },
  stem: { fill: null, stroke: colour.ink, width: 1.5, dash: null },
  trend: { fill: null, stroke: colour.ink, width: 1.5, dash: null },
  outline: { fill: colour.paper, stroke: colour.ink, width: 1.5, dash: null },
  open: { fill: null, stroke: colour.ink, width: 1.5, dash: null },
  detail: { fill: null, stroke: colour.quiet, width: 1, dash: null },
  missing: { fill: null, stroke: colour.line, width: 1, dash: [3, 2] },
  filled: { fill: colour.accent, stroke: colour.ink, width: 1, dash: null },
  ground: { fill: colour.wash, stroke: null, width: 0, dash: null },
  arrow: { fill: null, stroke: colour.accent, width: 1.5, dash: [4, 3] },
  'arrow-head': { fill: colour.accent, stroke: null, width: 0, dash: null },
  hole: { fill: null, stroke: colour.paper, width: 1.2, dash: null },
  lock: { fill: colour.ink, stroke: colour.paper, width: 1, dash: null },
  text: { fill: colour.ink, stroke: null, width: 0, dash: null },
  'text-quiet': { fill: colour.quiet, stroke: null, width: 0, dash: null },
  'text-accent': { fill: colour.accent, stroke: null, width: 0, dash: null },
} as const satisfies Readonly<Record<string, ShapeLook>>;

/** Names a picture may give to its shapes; anything else is refused when the picture is read. */
export type ShapeName = keyof typeof shapes;

/** True when the table of look knows the name. */
export function isShapeName(name: string): name is ShapeName {
  return Object.hasOwn(shapes, name);
}

/**
 * The row of the table for a shape.
 * @throws when the name is unknown: scenes come from our own pictures or through the reader, which refuses it.
 * @example shapeLook('axis').width // 1.5
 */
export function shapeLook(name: string): ShapeLook {
  if (!isShapeName(name)) throw new Error(`No look for the shape ${JSON.stringify(name)}`);
  return shapes[name];
}

/**
 * Times the base size in points. Large print has no small print: nothing in it is set smaller than its base.
 * @example scaleOf('small', 14) // 0.85; at 18 it is 1
 */
export function scaleOf(name: keyof Scale, base: number): number {
  return base < sizes.large ? scale[name] : Math.max(1, scale[name]);
}

/** Everything both outputs need to know about how a letter looks. Spaces are in em of the base size. */
export const look = {
  page: pages,
  sizes,
  /** Times the base size. */
  scale,
  /** Times the size of the text. Screens take more air than paper; scripts with tall marks take more still. */
  leading: { body: 1.3, heading: 1.2, screen: 1.5, middle: 1.5, tall: 1.7, nastaliq: 2.2 },
  space: {
    paragraph: 0.3,
    block: 0.6,
    heading: 0.5,
    afterHeading: 0.2,
    item: 0.15,
    indent: 1.5,
    /** Half the height of a capital letter: where a box or a sign beside a line has its middle. */
    middle: 0.36,
    gutter: 1.5,
    /** Most em of its own size that a line of running text takes in a letter: 80 characters of Latin type (WCAG 2.2, 1.4.8). */
    measure: 37,
    /** Shares of the spaces kept where that saves a sheet of paper, the airiest that does first. */
    snug: [0.7, 0.5, 0.3, 0.15],
    /** Of the width, what the first of two columns takes when it is the wider one. */
    wideShare: 0.66,
  },
  colour,
  dark,
  /** Which headings and paragraphs are bold, and in which colour. */
  text: {
    h1: { strong: true, colour: colour.accent },
    h2: { strong: true, colour: colour.accent },
    h3: { strong: true, colour: colour.ink },
    body: { strong: false, colour: colour.ink },
    lead: { strong: false, colour: colour.ink },
    small: { strong: false, colour: colour.ink },
    caption: { strong: false, colour: colour.quiet },
    label: { strong: true, colour: colour.ink },
    value: { strong: true, colour: colour.ink },
    address: { strong: false, colour: colour.ink },
    running: { strong: false, colour: colour.quiet },
  } satisfies Readonly<Record<keyof Scale, { readonly strong: boolean; readonly colour: string }>>,
  notice,
  table,
  shapes: shapes as Readonly<Record<ShapeName, ShapeLook>>,
  /** em of the base size: a quiet height, at most this share of its column, and the gap to the name. */
  logo: { height: 2.4, share: 0.3, gap: 0.6 },
  /** em of the base size: a box to tick, `edgeWidth` in points, and a sign beside words with the gap to them. */
  tick: { side: 0.9, edge: colour.ink, edgeWidth: 1.25, fill: colour.paper },
  sign: { height: 1.3, gap: 0.45 },
  rule: { colour: colour.hair, width: 0.75 },
} as const;

/**
 * How many points one unit of a picture is drawn with: as drawn at the standard size, larger in larger print, where
 * its smallest word is as large as the text, and never wider than the column.
 * @example pictureScale({ width: 360, shapes: [] }, 493, 14) // 1
 */
export function pictureScale(
  { width, shapes: drawn }: Pick<Scene, 'width' | 'shapes'>,
  column: number,
  base: number,
): number {
  const usual = base / sizes.standard;
  const smallest = smallestWord(drawn);
  const wanted = base < sizes.large ? usual : Math.max(usual, base / smallest);
  return Math.min(wanted, column / width);
}

/** In units of the picture; infinite where it has no words. */
export function smallestWord(drawn: Scene['shapes']): number {
  return Math.min(...drawn.flatMap((shape) => (shape.kind === 'text' ? [shape.size] : [])));
}
