// Places arrive; sacks, a storeroom, handcarts and loaves leave as shapes.
import type { Shape } from '../block.js';
import { outlinePath } from './outline-path.js';
import type { Trade } from './trade.js';
import { short } from './write-svg.js';

export const bakery: Trade = {
  unit: ({ x, y }) => ({
    kind: 'rect',
    look: 'filled',
    x: x - 4.5,
    y: y - 4.5,
    width: 9,
    height: 9.5,
    radius: 3,
  }),
  overUnits: (centres) =>
    centres.length === 0
      ? []
      : [
          {
            kind: 'path',
            look: 'hole',
            d: centres
              .map(
                ({ x, y }) =>
                  `M${short(x - 2)} ${short(y - 1.6)} L${short(x + 2)} ${short(y - 1.6)}`,
              )
              .join(' '),
          },
        ],
  store: ({ x, y }, look) => [
    {
      kind: 'rect',
      look: look === 'missing' ? 'missing' : 'open',
      x,
      y: y - 8,
      width: 96,
      height: 60,
      radius: 1,
    },
    { kind: 'rect', look, x: x - 4, y: y + 52, width: 104, height: 16, radius: 2 },
  ],
  carrier: ({ x, y }, look) => [
    {
      kind: 'path',
      look: look === 'missing' ? 'missing' : 'open',
      d: outlinePath(
        x,
        y,
        1,
        [
          [2, 6],
          [2, 16],
          [44, 16],
          [44, 6],
          [50, 2],
        ],
        false,
      ),
    },
    ...[12, 34].map((wheel): Shape => ({ kind: 'circle', look, x: x + wheel, y: y + 19, r: 3.5 })),
  ],
  good: ({ x, y }, size, look) => [
    {
      kind: 'path',
      look,
      d: `M${short(x - 16 * size)} ${short(y)} L${short(x - 16 * size)} ${short(y - 12 * size)} C${short(x - 16 * size)} ${short(y - 28 * size)} ${short(x + 16 * size)} ${short(y - 28 * size)} ${short(x + 16 * size)} ${short(y - 12 * size)} L${short(x + 16 * size)} ${short(y)} Z`,
    },
    ...(look === 'missing'
      ? []
      : [-7, 0, 7].map(
          (cut): Shape => ({
            kind: 'line',
            look: 'detail',
            x1: x + (cut - 2) * size,
            y1: y - 10 * size,
            x2: x + (cut + 2) * size,
            y2: y - 18 * size,
          }),
        )),
  ],
};
