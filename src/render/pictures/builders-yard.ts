// Places arrive; bricks, a shed with its tally, barrows and walls leave as shapes.
import type { Shape } from '../block.js';
import { outlinePath } from './outline-path.js';
import type { Trade } from './trade.js';

export const buildersYard: Trade = {
  unit: ({ x, y }) => ({
    kind: 'rect',
    look: 'filled',
    x: x - 6,
    y: y - 3,
    width: 12,
    height: 6,
    radius: 0,
  }),
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
          [-6, 0],
          [48, -16],
          [102, 0],
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
          [0, -2],
          [0, 52],
          [96, 52],
          [96, -2],
        ],
        false,
      ),
    },
    ...[0, 1, 2, 3].map(
      (stroke): Shape => ({
        kind: 'line',
        look: 'detail',
        x1: x + 40 + stroke * 5,
        y1: y + 57,
        x2: x + 40 + stroke * 5,
        y2: y + 67,
      }),
    ),
    { kind: 'line', look: 'detail', x1: x + 37, y1: y + 65, x2: x + 58, y2: y + 59 },
  ],
  carrier: ({ x, y }, look) => {
    const line = look === 'missing' ? 'missing' : 'open';
    return [
      {
        kind: 'path',
        look: line,
        d: outlinePath(
          x,
          y,
          1,
          [
            [2, 5],
            [10, 17],
            [40, 17],
            [46, 9],
            [50, 9],
          ],
          false,
        ),
      },
      { kind: 'circle', look, x: x + 14, y: y + 20, r: 4 },
      { kind: 'line', look: line, x1: x + 38, y1: y + 17, x2: x + 38, y2: y + 24 },
    ];
  },
  good: ({ x, y }, size, look) => [
    { kind: 'rect', look, x: x - 15, y: y - 32 * size, width: 30, height: 32 * size, radius: 0 },
    ...(look === 'missing' ? [] : courses(x, y, size)),
  ],
};

/** Bricks in four courses, every other one shifted by half a brick. */
function courses(x: number, y: number, size: number): readonly Shape[] {
  const height = 8 * size;
  return [0, 1, 2, 3].flatMap((row): Shape[] => {
    const level = y - row * height;
    const joints = row % 2 === 0 ? [0] : [-8, 8];
    return [
      ...(row === 0
        ? []
        : [
            { kind: 'line', look: 'detail', x1: x - 15, y1: level, x2: x + 15, y2: level } as const,
          ]),
      ...joints.map(
        (joint): Shape => ({
          kind: 'line',
          look: 'detail',
          x1: x + joint,
          y1: level,
          x2: x + joint,
          y2: level - height,
        }),
      ),
    ];
  });
}
