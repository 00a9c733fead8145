// Corner points arrive; the path through them leaves, with absolute commands only.
import { short } from './write-svg.js';

/**
 * Points are relative to (x, y) and scaled by `size`.
 * @example outlinePath(10, 0, 1, [[0, 0], [5, 5]], false) // 'M10 0 L15 5'
 */
export function outlinePath(
  x: number,
  y: number,
  size: number,
  points: readonly (readonly [number, number])[],
  closed = true,
): string {
  const steps = points.map(
    ([dx, dy], index) =>
      `${index === 0 ? 'M' : 'L'}${short(x + dx * size)} ${short(y + dy * size)}`,
  );
  return steps.join(' ') + (closed ? ' Z' : '');
}
