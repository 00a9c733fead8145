// A rectangle arrives; slanted lines that fill it leave: an area that can be told apart without colour.
import type { Shape } from '../block.js';
import { short } from './write-svg.js';

/**
 * One path of lines at 45 degrees, rising to the right, cut at the edges of the rectangle.
 * @example hatching(0, 0, 20, 10, 6) // one path, lines 6 units apart
 */
export function hatching(
  left: number,
  top: number,
  right: number,
  bottom: number,
  step: number,
): readonly Shape[] {
  const height = bottom - top;
  const strokes: string[] = [];
  for (let foot = left - height + step; foot < right; foot += step) {
    const start = Math.max(foot, left);
    const end = Math.min(foot + height, right);
    if (end - start < 0.5) continue;
    strokes.push(
      `M${short(start)} ${short(bottom - (start - foot))} L${short(end)} ${short(bottom - (end - foot))}`,
    );
  }
  return strokes.length === 0 ? [] : [{ kind: 'path', look: 'hatch', d: strokes.join(' ') }];
}
