// Places arrive; coins, a box at home, purses and lamps leave as shapes.
import type { Shape } from '../block.js';
import { outlinePath } from './outline-path.js';
import type { Trade } from './trade.js';

export const familyMoney: Trade = {
  unit: ({ x, y }) => ({ kind: 'circle', look: 'filled', x, y, r: 4.5 }),
  overUnits: () => [],
  store: ({ x, y }, look) => [
    {
      kind: 'path',
      look: look === 'missing' ? 'missing' : 'open',
      d: outlinePath(
        x,
        y,
        1,
        [
          [0, 0],
          [0, 52],
          [96, 52],
          [96, 0],
        ],
        false,
      ),
    },
    {
      kind: 'path',
      look: look === 'missing' ? 'missing' : 'open',
      d: outlinePath(
        x,
        y,
        1,
        [
          [96, 0],
          [102, -14],
          [8, -14],
          [0, 0],
        ],
        false,
      ),
    },
  ],
  carrier: ({ x, y }, look) => [
    {
      kind: 'rect',
      look: look === 'missing' ? 'missing' : 'open',
      x: x + 1,
      y: y + 1,
      width: 48,
      height: 20,
      radius: 7,
    },
    { kind: 'line', look: 'detail', x1: x + 4, y1: y + 16, x2: x + 46, y2: y + 16 },
  ],
  good: ({ x, y }, size, look) => [
    { kind: 'circle', look, x, y: y - 22 * size, r: 13 * size },
    {
      kind: 'rect',
      look,
      x: x - 6 * size,
      y: y - 9 * size,
      width: 12 * size,
      height: 9 * size,
      radius: 1,
    },
    ...(look === 'missing' ? [] : [glow(x, y, size)]),
  ],
};

/** More of the lamp is lit the brighter it is: an area, so that it shows in grey. */
function glow(x: number, y: number, size: number): Shape {
  return {
    kind: 'circle',
    look: 'filled',
    x,
    y: y - 22 * size,
    r: Math.max(2, 20 * (size - 0.55)),
  };
}
