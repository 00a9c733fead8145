// Places arrive; buttons, a labelled drawer, trays and shirts leave as shapes.
import type { Shape } from '../block.js';
import { outlinePath } from './outline-path.js';
import type { Trade } from './trade.js';
import { short } from './write-svg.js';

export const shirtShop: Trade = {
  unit: ({ x, y }) => ({ kind: 'circle', look: 'filled', x, y, r: 4.5 }),
  overUnits: (centres) => {
    const holes = centres.map(
      ({ x, y }) =>
        `M${short(x - 1.5)} ${short(y - 0.8)} L${short(x - 1.5)} ${short(y + 0.8)} M${short(x + 1.5)} ${short(y - 0.8)} L${short(x + 1.5)} ${short(y + 0.8)}`,
    );
    return holes.length === 0 ? [] : [{ kind: 'path', look: 'hole', d: holes.join(' ') }];
  },
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
    { kind: 'rect', look, x: x - 4, y: y + 52, width: 104, height: 18, radius: 2 },
    {
      kind: 'rect',
      look: look === 'missing' ? 'missing' : 'detail',
      x: x + 33,
      y: y + 56,
      width: 30,
      height: 10,
      radius: 1,
    },
    { kind: 'line', look: 'detail', x1: x + 38, y1: y + 61, x2: x + 58, y2: y + 61 },
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
          [0, 8],
          [4, 18],
          [46, 18],
          [50, 8],
        ],
        false,
      ),
    },
    ...[11, 25, 39].map(
      (place): Shape => ({
        kind: 'circle',
        look: look === 'missing' ? 'missing' : 'detail',
        x: x + place,
        y: y + 8,
        r: 4.5,
      }),
    ),
  ],
  good: ({ x, y }, size, look) => [
    {
      kind: 'path',
      look,
      d: outlinePath(x, y, size, [
        [-6, -36],
        [-17, -29],
        [-13, -20],
        [-10, -22],
        [-10, 0],
        [10, 0],
        [10, -22],
        [13, -20],
        [17, -29],
        [6, -36],
        [0, -31],
      ]),
    },
    ...(look === 'missing'
      ? []
      : [-25, -17, -9].map(
          (height): Shape => ({
            kind: 'circle',
            look: 'filled',
            x,
            y: y + height * size,
            r: 2.2 * size,
          }),
        )),
  ],
};
