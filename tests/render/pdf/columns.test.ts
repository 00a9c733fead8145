// Columns of known height go in; where a page divides them and where they move on whole (own rule, no source).
import { describe, expect, it } from 'vitest';
import { type Element, fill } from '../../../src/render/pdf/flow.js';

const page = 700;
const line: Element = {
  kind: 'strip',
  height: 10,
  baseline: null,
  ink: [],
  grounds: [],
  repeat: null,
  before: 0,
  after: 0,
  glue: 0,
};

function columns(heights: readonly [number, number], parallel: boolean): Element {
  const lines = (height: number) => new Array<Element>(height / 10).fill(line);
  return {
    kind: 'columns',
    columns: heights.map(lines),
    parallel,
    before: 0,
    after: 0,
    glue: 0,
  };
}

describe('two columns at the foot of a page', () => {
  it.each([
    ['both go on: divided', [300, 300], false, 200, 200],
    ['one would go on beside an empty one: moved whole', [300, 100], false, 200, 0],
    ['one language ends sooner than the other: divided', [300, 100], true, 200, 200],
    ['a stump would be left: moved whole', [300, 300], false, 80, 0],
    ['just more than a stump: divided', [300, 300], false, 90, 90],
    ['half a page: moved whole', [350, 100], false, 200, 0],
    ['more than half a page: divided', [360, 100], false, 200, 200],
    ['short: moved whole', [200, 200], true, 190, 0],
  ] as const)('%s', (_, heights, parallel, room, placed) => {
    const one = columns(heights, parallel);
    const { height, rest } = fill([one], room, page, false);
    expect(height).toBe(placed);
    if (placed === 0) expect(rest).toEqual([one]);
    else expect(fill(rest, page, page, true).height).toBe(Math.max(...heights) - placed);
  });

  it('are divided at the top of an empty page, where nothing is won by moving', () => {
    expect(fill([columns([300, 100], false)], 200, page, true).height).toBe(200);
  });
});
