// Strips, boxes and columns of known height arrive; what fits on each page leaves, with its place from the top.
import type { Ground, Ink } from './placed.js';

/** How badly a page break after something would hurt: 0 not at all, 1 against a wish, 2 a heading or a line alone. */
export type Glue = 0 | 1 | 2;

type Spaced = { readonly before: number; readonly after: number; readonly glue: Glue };

/** Never divided: a line of text, a table row, a picture. Vertical places count from its own top. */
export type Strip = Spaced & {
  readonly kind: 'strip';
  readonly height: number;
  /** Base line of its first text, for neighbours and list markers. */
  readonly baseline: number | null;
  readonly ink: readonly Ink[];
  readonly grounds: readonly Ground[];
  /** Drawn again above this strip when it opens a page: the head of a table. */
  readonly repeat: {
    readonly height: number;
    readonly grounds: readonly Ground[];
    readonly ink: readonly Ink[];
  } | null;
};

/** A frame around others: divided only when taller than a page. */
export type Frame = Spaced & {
  readonly kind: 'frame';
  readonly padding: number;
  readonly children: readonly Element[];
  readonly ground: Extract<Ground, { kind: 'box' }>;
};

/** Side by side from one common top; each column breaks by its own rules. */
type Columns = Spaced & {
  readonly kind: 'columns';
  readonly columns: readonly (readonly Element[])[];
  /** The same in two languages: one ending sooner than the other jars nobody. */
  readonly parallel: boolean;
};

type PageBreak = Spaced & { readonly kind: 'break' };

export type Element = Strip | Frame | Columns | PageBreak;

export type Filled = {
  readonly ink: readonly Ink[];
  readonly grounds: readonly Ground[];
  /** Repeated parts, drawn but not read again. */
  readonly repeated: readonly Ink[];
  readonly height: number;
  readonly rest: readonly Element[];
};

/** Something that must stay whole is taller than a page. */
export class TooTall extends Error {}

const nothing: Filled = { ink: [], grounds: [], repeated: [], height: 0, rest: [] };
const slack = 0.01;
/** Columns up to this share of a page move to the next page whole. */
const shortColumns = 0.3;
/** So do columns up to half a page that would leave a stump here, or go on beside an empty one. */
const wholeColumns = 0.5;
const stump = 0.12;

/**
 * Lays elements from the top down until the room is used.
 * @param room height left, points.
 * @param page height of an empty page, points.
 * @param fresh true at the top of a page, where something must be placed.
 * @throws TooTall when a strip is taller than an empty page.
 * @example fill(elements, 700, 700, true).rest // what goes on to the next page
 */
export function fill(
  elements: readonly Element[],
  room: number,
  page: number,
  fresh: boolean,
): Filled {
  let y = 0;
  let after = 0;
  for (const [at, element] of elements.entries()) {
    const gap = at === 0 ? 0 : Math.max(after, element.before);
    if (element.kind === 'break') {
      if (at === 0 && fresh) return fill(elements.slice(1), room, page, fresh);
      return stack(elements.slice(0, at), elements.slice(at + 1), fresh);
    }
    const repeat = at === 0 && fresh && element.kind === 'strip' ? element.repeat : null;
    const height = heightOf(element) + (repeat?.height ?? 0);
    if (y + gap + height <= room + slack) {
      y += gap + height;
      after = element.after;
      continue;
    }
    const part = divide(element, room - y - gap, page, fresh && at === 0);
    if (part !== null) {
      const above = stack(elements.slice(0, at), [], fresh);
      const rest = [...part.rest, ...elements.slice(at + 1)];
      return { ...merge(above, part, y + gap), rest };
    }
    const cut = cutBefore(elements, at, fresh);
    if (cut === 0) {
      if (fresh) throw new TooTall('Something that must stay whole is taller than a page');
      return { ...nothing, rest: elements };
    }
    return stack(elements.slice(0, cut), elements.slice(cut), fresh);
  }
  return stack(elements, [], fresh);
}

/** The last place before `at` where a break hurts least; on a fresh page any break is better than none. */
function cutBefore(elements: readonly Element[], at: number, fresh: boolean): number {
  for (const allowed of fresh ? [0, 1, 2] : [0]) {
    for (let cut = at; cut > 0; cut -= 1) {
      if ((elements[cut - 1]?.glue ?? 0) <= allowed) return cut;
    }
  }
  return 0;
}

function divide(element: Element, room: number, page: number, fresh: boolean): Filled | null {
  if (room <= 0) return null;
  if (element.kind === 'columns') return divideColumns(element, room, page, fresh);
  if (element.kind === 'frame') return divideFrame(element, room, page, fresh);
  return null;
}

function divideColumns(columns: Columns, room: number, page: number, fresh: boolean) {
  if (!fresh && heightOf(columns) < page * shortColumns) return null;
  const parts = columns.columns.map((column) => fill(column, room, page, fresh));
  if (parts.some((part) => part.height === 0 && part.rest.length > 0)) return null;
  const here = Math.max(...parts.map((part) => part.height));
  const lopsided = parts.some((part) => part.rest.length === 0);
  const jars = lopsided || here < page * stump;
  if (jars && !columns.parallel && !fresh && heightOf(columns) <= page * wholeColumns) return null;
  const rest: Columns = { ...columns, columns: parts.map((part) => part.rest) };
  const side = parts.reduce((left, right) => beside(left, right), nothing);
  return { ...side, rest: [rest] };
}

function divideFrame(frame: Frame, room: number, page: number, fresh: boolean): Filled | null {
  const inner = page - 2 * frame.padding;
  if (heightOf(frame) <= page + slack) return null;
  const part = fill(frame.children, room - 2 * frame.padding, inner, fresh);
  if (part.height === 0) return null;
  const rest: Frame = { ...frame, children: part.rest };
  return { ...framed(frame, part), rest: [rest] };
}

function framed(frame: Frame, inside: Filled): Filled {
  const height = inside.height + 2 * frame.padding;
  const box: Filled = { ...nothing, grounds: [{ ...frame.ground, height }], height };
  return { ...merge(box, inside, frame.padding), height };
}

/** Height of an element laid out whole, points. */
function heightOf(element: Element): number {
  if (element.kind === 'strip') return element.height;
  if (element.kind === 'break') return 0;
  if (element.kind === 'frame') return stackHeight(element.children) + 2 * element.padding;
  return Math.max(0, ...element.columns.map(stackHeight));
}

/** Height of elements one under another: the larger of two neighbouring spaces counts. */
export function stackHeight(elements: readonly Element[]): number {
  let y = 0;
  let after = 0;
  for (const [at, element] of elements.entries()) {
    y += (at === 0 ? 0 : Math.max(after, element.before)) + heightOf(element);
    after = element.after;
  }
  return y;
}

/** Everything one under another, whatever the room. */
export function stack(
  elements: readonly Element[],
  rest: readonly Element[] = [],
  fresh = false,
): Filled {
  const ink: Ink[] = [];
  const grounds: Ground[] = [];
  const repeated: Ink[] = [];
  let y = 0;
  let after = 0;
  for (const [at, element] of elements.entries()) {
    y += at === 0 ? 0 : Math.max(after, element.before);
    if (at === 0 && fresh && element.kind === 'strip' && element.repeat !== null) {
      grounds.push(...element.repeat.grounds.map((one) => moved(one, y)));
      repeated.push(...element.repeat.ink.map((one) => moved(one, y)));
      y += element.repeat.height;
    }
    const whole = placeWhole(element);
    ink.push(...whole.ink.map((one) => moved(one, y)));
    grounds.push(...whole.grounds.map((one) => moved(one, y)));
    repeated.push(...whole.repeated.map((one) => moved(one, y)));
    y += whole.height;
    after = element.after;
  }
  return { ink, grounds, repeated, height: y, rest };
}

function placeWhole(element: Element): Filled {
  if (element.kind === 'strip') {
    return { ...nothing, ink: element.ink, grounds: element.grounds, height: element.height };
  }
  if (element.kind === 'frame') return framed(element, stack(element.children));
  if (element.kind === 'break') return nothing;
  return element.columns.map((column) => stack(column)).reduce(beside, nothing);
}

function beside(left: Filled, right: Filled): Filled {
  return {
    ink: [...left.ink, ...right.ink],
    grounds: [...left.grounds, ...right.grounds],
    repeated: [...left.repeated, ...right.repeated],
    height: Math.max(left.height, right.height),
    rest: [],
  };
}

function merge(above: Filled, below: Filled, y: number): Filled {
  return {
    ink: [...above.ink, ...below.ink.map((one) => moved(one, y))],
    grounds: [...above.grounds, ...below.grounds.map((one) => moved(one, y))],
    repeated: [...above.repeated, ...below.repeated.map((one) => moved(one, y))],
    height: y + below.height,
    rest: below.rest,
  };
}

/** The same thing, further down. */
export function moved<T extends { readonly y: number }>(thing: T, down: number): T {
  return down === 0 ? thing : { ...thing, y: thing.y + down };
}
