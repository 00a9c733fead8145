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

function limitLabel(text: string, at: number): Label {
  const half = roomFor(text, size) / 2;
  const shape = figures(text, { x: at, y: limitsAt, side: 'middle' }, { size });
  return { left: at - half, right: at + half, shape };
}

/** Limits under their ticks; when they would touch, one label with a dash, so that two numbers never read as one. */
function limitLabels(line: NumberLine, x: (value: number) => number): readonly Label[] {
  const { low, high, labels } = line;
  const ends = [
    low === null || labels.low === null ? null : { text: labels.low, at: x(low) },
    high === null || labels.high === null ? null : { text: labels.high, at: x(high) },
  ].filter((end) => end !== null);
  const centred = ends
    .map(({ text, at }) => limitLabel(text, at))
    .sort((one, other) => one.left - other.left);
  const [first, second] = centred;
  if (first === undefined || second === undefined || second.left - first.right >= 3 * gap) {
    return centred;
  }
  const text = ends.map((end) => end.text).join(' \u2013 ');
  const half = roomFor(text, size) / 2;
  const middle = ends.reduce((sum, { at }) => sum + at / ends.length, 0);
  return [limitLabel(text, Math.min(Math.max(middle, half), width - half))];
}

/** The words stand under the range they name, or beside its one label, wherever there is room for them. */
function labelsBelow(line: NumberLine, x: (value: number) => number, speech: Speech) {
  const limits = limitLabels(line, x);
  const shapes = limits.map(({ shape }) => shape);
  const [first] = limits;
  const last = limits.at(-1);
  if (first === undefined || last === undefined) return { shapes, height: 42 };
  const text = line.labels.usual.text;
  const need = roomFor(text, size);
  const usual = (row: string, at: number, side: Side, y = limitsAt) =>
    words(row, { x: at, y, side }, speech, { size, name: 'text-accent' });
  if (limits.length === 2 && last.left - first.right >= need + 2 * gap) {
    const middle = (first.right + last.left) / 2;
    return { shapes: [...shapes, usual(text, middle, 'middle')], height: 52 };
  }
  const open = line.low === null || line.high === null;
  const toTheRight = open ? line.low !== null : first.right < width / 2;
  const room = toTheRight ? width - last.right : first.left;
  if (limits.length === 1 && room >= need + 2 * gap) {
    const beside = toTheRight
      ? usual(text, last.right + 2 * gap, 'left')
      : usual(text, first.left - 2 * gap, 'right');
    return { shapes: [...shapes, beside], height: 52 };
  }
  // No room: the letter says once, above all lines, that the shaded part is the usual range.
  return { shapes, height: 52 };
}
