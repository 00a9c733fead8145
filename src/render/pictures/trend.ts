// Two to seven results of one test arrive, oldest first; their trend as a scene leaves.
import type { Trend } from '../../letter/content.js';
import type { Scene, Shape } from '../block.js';
import { type Speech, figures, roomFor, words } from './canvas.js';
import { hatching } from './hatching.js';
import { type Scale, scaleFor } from './scale.js';
import { short } from './write-svg.js';

/** Up to three results stand beside their text, in the width of a number line; more need the whole letter's. */
const narrow = { width: 180, most: 3 };
const wide = 360;
const top = 18;
const bottom = 84;
const inset = 42;
const size = 10;
/** Above and below its point, where a label's base line stands, and how tall its figures are. */
const label = { above: -8, below: 17, tall: 10, farthest: 26 };

/** Past this many times what is needed, the upper limit would press every point flat. */
const farAway = 2;

/**
 * Zero or the usual scale below; above, no further than the values and the limits need, so that no white is left
 * over them. An upper limit far away is left open: the band then runs out of the picture without an edge.
 */
function scaleOf(trend: Trend): { readonly scale: Scale; readonly high: number | null } {
  const values = trend.points.map(({ value }) => value);
  const need = Math.max(...values, trend.low ?? 0) * 1.25;
  const open = trend.low !== null && trend.high !== null && trend.high > farAway * need;
  if (open) return { scale: { from: 0, to: need }, high: null };
  const { from } = scaleFor(values, trend.low, trend.high);
  const most = Math.max(...values, trend.high ?? trend.low ?? 0);
  return { scale: { from, to: most + (most - from) / 20 || 1 }, high: trend.high };
}

/**
 * Points at equal steps in time's order (their dates stand below), on the same kind of scale as a number
 * line, over the hatched usual range. Time runs from left to right in every language, as a number line does: beside
 * another language one and the same line must not rise here and fall there. Only the key stands where reading starts.
 */
export function drawTrend(trend: Trend, speech: Speech): Scene {
  const { scale, high } = scaleOf(trend);
  const y = (value: number) =>
    bottom - ((value - scale.from) / (scale.to - scale.from)) * (bottom - top);
  const few = trend.points.length <= narrow.most;
  const width = few ? narrow.width : wide;
  const step = (width - 2 * inset) / Math.max(1, trend.points.length - 1);
  const points = trend.points.map((point, index) => ({
    ...point,
    x: inset + index * step,
    y: y(point.value),
  }));
  const rooms = points.map(({ date }) => roomFor(date, size));
  const staggered = rooms.some((room) => room > step);
  const datesEnd = bottom + 14 + (staggered ? 12 : 0);
  const limits = [trend.low, high].filter((limit) => limit !== null).map(y);
  const ends = few ? { left: 0, right: width } : { left: 8, right: width - 8 };
  return {
    width,
    height: datesEnd + (few ? 4 : 28),
    title: trend.title.text,
    description: trend.description.text,
    shapes: [
      ...usualBand(trend.low, high, y, ends),
      { kind: 'line', look: 'tick', x1: ends.left, y1: bottom, x2: ends.right, y2: bottom },
      ...path(points),
      ...points.map(
        (point): Shape => ({ kind: 'circle', look: 'marker', x: point.x, y: point.y, r: 4.5 }),
      ),
      ...points.map((point) =>
        figures(
          point.label,
          { x: point.x, y: point.y + labelSide(point.y, limits), side: 'middle' },
          { size: 12, strong: true },
        ),
      ),
      ...points.map((point, index) =>
        words(
          point.date,
          {
            x: inside(point.x, (rooms[index] ?? 0) / 2, width),
            y: bottom + 14 + (staggered && index % 2 === 1 ? 12 : 0),
            side: 'middle',
          },
          speech,
          { size, name: 'text-quiet' },
        ),
      ),
      // Beside its text the letter has said what the shaded part is; across the page it says it again.
      ...(few ? [] : legend(trend, speech, width, datesEnd + 22)),
    ],
  };
}

/** Under its point, but a wide date stays inside the picture. */
function inside(x: number, half: number, width: number): number {
  return Math.max(half, Math.min(x, width - half));
}

/** Over its point; where an edge of the usual range would strike the figures through, under it or over that edge. */
function labelSide(y: number, limits: readonly number[]): number {
  const clear = (base: number) =>
    base <= bottom - 2 &&
    base - label.tall >= 0 &&
    limits.every((limit) => limit > base + 2 || limit < base - label.tall - 2);
  const overEdge = limits
    .map((limit) => limit - 3 - y)
    .filter((side) => side < 0 && side > -label.farthest);
  return [label.above, label.below, ...overEdge].find((side) => clear(y + side)) ?? label.above;
}

function path(points: readonly { readonly x: number; readonly y: number }[]): Shape[] {
  const d = points
    .map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`)
    .join(' ');
  return points.length < 2 ? [] : [{ kind: 'path', look: 'trend', d }];
}

function usualBand(
  low: number | null,
  high: number | null,
  y: (value: number) => number,
  { left, right }: { readonly left: number; readonly right: number },
): Shape[] {
  if (low === null && high === null) return [];
  const from = high === null ? top - 16 : y(high);
  const to = low === null ? bottom : y(low);
  return [
    {
      kind: 'rect',
      look: 'ground',
      x: left,
      y: from,
      width: right - left,
      height: to - from,
      radius: 0,
    },
    ...hatching(left, from, right, to, 9),
    ...[high, low]
      .filter((limit) => limit !== null)
      .map(
        (limit): Shape => ({
          kind: 'line',
          look: 'tick',
          x1: left,
          y1: y(limit),
          x2: right,
          y2: y(limit),
        }),
      ),
  ];
}

function legend(trend: Trend, speech: Speech, width: number, at: number): Shape[] {
  if (trend.low === null && trend.high === null) return [];
  const box = 22;
  const fromRight = speech.dir === 'rtl';
  const left = fromRight ? width - 8 - box : 8;
  return [
    { kind: 'rect', look: 'band', x: left, y: at - 10, width: box, height: 12, radius: 0 },
    ...hatching(left, at - 10, left + box, at + 2, 6),
    words(
      trend.usual.text,
      {
        x: fromRight ? left - 8 : left + box + 8,
        y: at,
        side: fromRight ? 'right' : 'left',
      },
      speech,
      { size, name: 'text-accent' },
    ),
  ];
}
