// One result as numbers and words arrives; its number line as a scene leaves.
import type { NumberLine } from '../../letter/content.js';
import type { Scene, Shape } from '../block.js';
import { type Side, type Speech, figures, roomFor, words } from './canvas.js';
import { hatching } from './hatching.js';
import { type Scale, scaleFor } from './scale.js';
import { short } from './write-svg.js';

const width = 180;
/** Room at both ends, so that a label under the first tick stays inside. */
const inset = 22;
const size = 10;
const gap = 4;
const band = { top: 22, bottom: 36 };
const axis = 29;
const limitsAt = 48;

/**
 * Draws low on the left and high on the right in every language, as numbers are written, in one linear scale: the usual range hatched and
 * outlined, the patient's value as a mark above it, words at both. See `scaleFor` for what the scale covers.
 * Labels never share a place: the value stands above the line, the limits below, the words where room is left.
 * @example drawNumberLine({ value: 12, low: 30, high: 400, … }, { lang: 'en', dir: 'ltr' })
 */
export function drawNumberLine(line: NumberLine, speech: Speech): Scene {
  const scale = scaleFor([line.value], line.low, line.high);
  const x = (value: number) => placeOn(scale, value);
  const below = labelsBelow(line, x, speech);
  return {
    width,
    height: below.height,
    title: line.title.text,
    description: line.description.text,
    shapes: [
      ...usualBand(line, x),
      ...axisLine(scale, x),
      ...mark(x(line.value)),
      ...valueAbove(line, x(line.value), speech),
      ...below.shapes,
    ],
  };
}

/** Where a value lies on the line, in units of the picture. */
function placeOn(scale: Scale, value: number): number {
  const part = (value - scale.from) / (scale.to - scale.from);
  return inset + part * (width - 2 * inset);
}

/** The line runs on at its ends, except that nothing lies below zero. */
function axisLine(scale: Scale, x: (value: number) => number): Shape[] {
  const { start, end } = ends;
  const first = scale.from === 0 ? x(0) : start;
  return [
    {
      kind: 'line',
      look: 'axis',
      x1: Math.min(first, end),
      y1: axis,
      x2: Math.max(first, end),
      y2: axis,
    },
    ...(scale.from === 0
      ? [{ kind: 'line', look: 'axis', x1: first, y1: axis - 4, x2: first, y2: axis + 4 } as const]
      : []),
  ];
}

const ends = { start: inset - 16, end: width - inset + 16 };

function usualBand(line: NumberLine, x: (value: number) => number): Shape[] {
  if (line.low === null && line.high === null) return [];
  const { start, end } = ends;
  const edges = [line.low === null ? start : x(line.low), line.high === null ? end : x(line.high)];
  const left = Math.min(...edges);
  const right = Math.max(...edges);
  const limits = [line.low, line.high].filter((limit) => limit !== null);
  return [
    {
      kind: 'rect',
      look: 'ground',
      x: left,
      y: band.top,
      width: right - left,
      height: band.bottom - band.top,
      radius: 0,
    },
    ...hatching(left, band.top, right, band.bottom, 7),
    { kind: 'line', look: 'hatch', x1: left, y1: band.top, x2: right, y2: band.top },
    { kind: 'line', look: 'hatch', x1: left, y1: band.bottom, x2: right, y2: band.bottom },
    ...limits.map(
      (limit): Shape => ({
        kind: 'line',
        look: 'axis',
        x1: x(limit),
        y1: band.top - 1,
        x2: x(limit),
        y2: band.bottom + 2,
      }),
    ),
  ];
}

function mark(at: number): Shape[] {
  return [
    { kind: 'line', look: 'stem', x1: at, y1: 20, x2: at, y2: 38 },
    {
      kind: 'path',
      look: 'marker',
      d: `M${short(at - 6)} 15 L${short(at + 6)} 15 L${short(at)} 26 Z`,
    },
  ];
}

/** How far a value may stand from over its mark, so that its words have room. */
const aside = 40;

/**
 * The value over its mark, the words beside it on the side with more room. Words a little too wide push the value
 * aside; wider ones are left out: the letter says once, above all lines, what the mark is.
 */
function valueAbove(line: NumberLine, at: number, speech: Speech): Shape[] {
  const half = roomFor(line.labels.value, 12) / 2;
  const over = Math.min(Math.max(at, half + 1), width - half - 1);
  const onTheRight = over < width / 2;
  const room = (onTheRight ? width - over : over) - half - 3;
  const lack = Math.max(0, roomFor(line.labels.yours.text, size) - room);
  const edge = onTheRight ? over - half - 1 : width - half - 1 - over;
  const told = lack <= Math.min(aside, edge);
  const push = told ? lack : 0;
  const centre = onTheRight ? over - push : over + push;
  const beside = onTheRight ? centre + half + 3 : centre - half - 3;
  const value = figures(
    line.labels.value,
    { x: centre, y: 11, side: 'middle' },
    { size: 12, strong: true },
  );
  if (!told) return [value];
  return [
    value,
    words(
      line.labels.yours.text,
      { x: beside, y: 11, side: onTheRight ? 'left' : 'right' },
      speech,
      {
        size,
        name: 'text-quiet',
      },
    ),
  ];
}

type Label = {
  readonly left: number;
  readonly right: number;
  readonly shape: Shape;
};

type Limit = { readonly text: string; readonly at: number };

function limitsOf({ low, high, labels }: NumberLine, x: (value: number) => number) {
  return [
    low === null || labels.low === null ? null : { text: labels.low, at: x(low) },
    high === null || labels.high === null ? null : { text: labels.high, at: x(high) },
  ].filter((limit) => limit !== null);
}

function limitLabel({ text, at }: Limit): Label {
  const half = roomFor(text, size) / 2;
  const shape = figures(text, { x: at, y: limitsAt, side: 'middle' }, { size });
  return { left: at - half, right: at + half, shape };
}

/** Both limits in one label with a dash, so that two numbers never read as one. */
function joined(limits: readonly Limit[]): Limit {
  return {
    text: limits.map(({ text }) => text).join(' \u2013 '),
    at: limits.reduce((sum, { at }) => sum + at / limits.length, 0),
  };
}

/**
 * Under the line: each limit below its tick with the words between or beside them; where those would touch, the
 * words and both limits as one label below the range; where even that is too wide, the limits alone.
 */
function labelsBelow(line: NumberLine, x: (value: number) => number, speech: Speech) {
  const limits = limitsOf(line, x);
  if (limits.length === 0) return { shapes: [], height: 42 };
  return { shapes: underTicks(line, limits, speech) ?? inOne(line, limits, speech), height: 52 };
}

function underTicks(line: NumberLine, limits: readonly Limit[], speech: Speech): Shape[] | null {
  const [first, last] = limits.map(limitLabel).sort((one, other) => one.left - other.left);
  if (first === undefined) return null;
  const need = roomFor(line.labels.usual.text, size) + 2 * gap;
  const usual = (at: number, side: Side) => usualWords(line, at, side, speech);
  if (last !== undefined) {
    if (last.left - first.right < need) return null;
    return [first.shape, last.shape, usual((first.right + last.left) / 2, 'middle')];
  }
  const toTheRight = line.low !== null;
  if ((toTheRight ? width - first.right : first.left) < need) return null;
  return [
    first.shape,
    toTheRight ? usual(first.right + 2 * gap, 'left') : usual(first.left - 2 * gap, 'right'),
  ];
}

function inOne(line: NumberLine, limits: readonly Limit[], speech: Speech): Shape[] {
  const { text, at } = joined(limits);
  const numbers = roomFor(text, size);
  const all = numbers + gap + roomFor(line.labels.usual.text, size);
  const told = all <= width;
  const half = (told ? all : numbers) / 2;
  const centre = Math.min(Math.max(at, half), width - half);
  if (!told) return [limitLabel({ text, at: centre }).shape];
  // Both are drawn from where they meet, so that room estimated too wide falls outside and not between them.
  const wordsFirst = speech.dir === 'ltr';
  const meet = wordsFirst ? centre + half - numbers : centre - half + numbers;
  const beside = { x: meet, y: limitsAt, side: wordsFirst ? 'left' : 'right' } as const;
  return [
    figures(text, beside, { size }),
    wordsFirst
      ? usualWords(line, meet - gap, 'right', speech)
      : usualWords(line, meet + gap, 'left', speech),
  ];
}

function usualWords({ labels }: NumberLine, at: number, side: Side, speech: Speech): Shape {
  const place = { x: at, y: limitsAt, side };
  return words(labels.usual.text, place, speech, { size, name: 'text-accent' });
}
