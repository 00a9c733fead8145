// Two to seven results of one test arrive, oldest first; their trend as a scene leaves.
import type { Trend } from '../../letter/content.js';
import type { Scene, Shape } from '../block.js';
import { type Speech, figures, words } from './canvas.js';
import { hatching } from './hatching.js';
import { type Scale, scaleFor } from './scale.js';
import { short } from './write-svg.js';

const width = 360;
const top = 24;
const bottom = 104;
const inset = 42;
const size = 11;

/** Past this many times what is needed, the upper limit would press every point flat. */
const farAway = 2;

/**
 * Zero or the usual scale below; above, as far as the values and the lower limit need. An upper limit far
 * away is left open: the band then runs out of the picture without an edge.
 */
function scaleOf(trend: Trend): { readonly scale: Scale; readonly high: number | null } {
  const values = trend.points.map(({ value }) => value);
  const need = Math.max(...values, trend.low ?? 0) * 1.25;
  const open = trend.low !== null && trend.high !== null && trend.high > farAway * need;
  if (!open) return { scale: scaleFor(values, trend.low, trend.high), high: trend.high };
  return { scale: { from: 0, to: need }, high: null };
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
  const step = (width - 2 * inset) / Math.max(1, trend.points.length - 1);
  const points = trend.points.map((point, index) => ({
    ...point,
    x: inset + index * step,
    y: y(point.value),
  }));
  const staggered = points.length > 4;
  const legendAt = staggered ? 152 : 138;
  return {
    width,
    height: legendAt + 6,
    title: trend.title.text,
    description: trend.description.text,
    shapes: [
      ...usualBand(trend.low, high, y),
      { kind: 'line', look: 'tick', x1: 8, y1: bottom + 2, x2: width - 8, y2: bottom + 2 },
      ...path(points),
      ...points.map(
        (point): Shape => ({ kind: 'circle', look: 'marker', x: point.x, y: point.y, r: 4.5 }),
      ),
      ...points.map((point) =>
        figures(
          point.label,
          { x: point.x, y: point.y - 9, side: 'middle' },
          { size: 12, strong: true },
        ),
      ),
      ...points.map((point, index) =>
        words(
          point.date,
          { x: point.x, y: bottom + 16 + (staggered && index % 2 === 1 ? 14 : 0), side: 'middle' },
          speech,
          { size: 10, name: 'text-quiet' },
        ),
      ),
      ...legend(trend, speech, legendAt),
    ],
  };
}

function path(points: readonly { readonly x: number; readonly y: number }[]): Shape[] {
  const d = points
    .map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`)
    .join(' ');
  return points.length < 2 ? [] : [{ kind: 'path', look: 'trend', d }];
}

function usualBand(low: number | null, high: number | null, y: (value: number) => number): Shape[] {
  if (low === null && high === null) return [];
  const from = high === null ? top - 14 : y(high);
  const to = low === null ? bottom : y(low);
  return [
    {
      kind: 'rect',
      look: 'ground',
      x: 8,
      y: from,
      width: width - 16,
      height: to - from,
      radius: 0,
    },
    ...hatching(8, from, width - 8, to, 9),
    ...[high, low]
      .filter((limit) => limit !== null)
      .map(
        (limit): Shape => ({
          kind: 'line',
          look: 'tick',
          x1: 8,
          y1: y(limit),
          x2: width - 8,
          y2: y(limit),
        }),
      ),
  ];
}

function legend(trend: Trend, speech: Speech, at: number): Shape[] {
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
