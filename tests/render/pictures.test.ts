// Pictures: to scale, inside their frame, labels apart, read back as written, nothing foreign let in.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Scene, Shape } from '../../src/render/block.js';
import { isShapeName } from '../../src/render/look.js';
import { roomFor } from '../../src/render/pictures/canvas.js';
import { drawPicture } from '../../src/render/pictures/draw-picture.js';
import { readSvg } from '../../src/render/pictures/read-svg.js';
import { writeSvg } from '../../src/render/pictures/write-svg.js';
import { analogies, positions } from '../../src/terms.js';
import { analogyPicture, numberLine, said } from './fixture.js';

const english = { lang: 'en', dir: 'ltr' } as const;
const arabic = { lang: 'ar', dir: 'rtl' } as const;

type Text = Shape & { readonly kind: 'text' };
const textsOf = (scene: Scene) =>
  scene.shapes.filter((shape): shape is Text => shape.kind === 'text');

/** Where the mark of the value points: the stem is drawn at its place. */
function markOf(scene: Scene): number {
  const stem = scene.shapes.find((shape) => shape.look === 'stem');
  if (stem?.kind !== 'line') throw new Error('no mark');
  return stem.x1;
}

/** Left and right edge of the usual range. */
function bandOf(scene: Scene): readonly [number, number] {
  const band = scene.shapes.find((shape) => shape.look === 'ground');
  if (band?.kind !== 'rect') throw new Error('no band');
  return [band.x, band.x + band.width];
}

const range = fc
  .tuple(
    fc.double({ min: 0.1, max: 1000, noNaN: true }),
    fc.double({ min: 1.05, max: 50, noNaN: true }),
  )
  .map(([low, times]) => [low, low * times] as const);
const value = fc.double({ min: 0.01, max: 30000, noNaN: true });

describe('a number line', () => {
  it('puts the value inside the usual range if and only if it lies in it', () => {
    fc.assert(
      fc.property(range, value, fc.boolean(), ([low, high], at, rtl) => {
        const scene = drawPicture(numberLine(at, low, high), rtl ? arabic : english);
        const [left, right] = bandOf(scene);
        const mark = markOf(scene);
        const inside = mark >= left - 1e-6 && mark <= right + 1e-6;
        expect(inside).toBe(at >= low && at <= high);
      }),
    );
  });

  it('is linear: distances on paper are in proportion to distances in the unit', () => {
    fc.assert(
      fc.property(range, value, ([low, high], at) => {
        const scene = drawPicture(numberLine(at, low, high), english);
        const [left, right] = bandOf(scene);
        const unit = (right - left) / (high - low);
        expect(markOf(scene)).toBeCloseTo(left + (at - low) * unit, 4);
      }),
    );
  });

  it.each([
    ['a near miss just outside', 119, 120, 160, 4],
    ['the limit itself on the limit', 120, 120, 160, 0],
    ['just inside', 121, 120, 160, -4],
  ])('shows %s', (_, at, low, high, atMost) => {
    const scene = drawPicture(numberLine(at, low, high), english);
    const [left] = bandOf(scene);
    const distance = left - markOf(scene);
    if (atMost === 0) expect(distance).toBeCloseTo(0);
    else expect(distance / atMost).toBeGreaterThan(0);
    expect(Math.abs(distance)).toBeLessThanOrEqual(4);
  });

  it('keeps a very high value honest: the usual range is the sliver it is', () => {
    const [left, right] = bandOf(drawPicture(numberLine(26000, 30, 400), english));
    expect(right - left).toBeLessThan(6);
  });

  it('covers the value with a tenth to spare', () => {
    const scene = drawPicture(numberLine(500, 30, 100), english);
    const [, right] = bandOf(scene);
    const perUnit = (markOf(scene) - right) / 400;
    expect(markOf(scene) + 50 * perUnit).toBeLessThanOrEqual(scene.width - 20);
  });

  it('never lets two labels share a place, and keeps them inside', () => {
    fc.assert(
      fc.property(range, value, fc.boolean(), ([low, high], at, rtl) => {
        const round = (number: number) => Number(number.toPrecision(3));
        const speech = rtl ? arabic : english;
        const scene = drawPicture(numberLine(round(at), round(low), round(high)), speech);
        const boxes = textsOf(scene).map((text) => {
          const room = roomFor(text.text, text.size);
          const startsLeft = (text.anchor === 'start') === (text.dir !== 'rtl');
          const left =
            text.anchor === 'middle' ? text.x - room / 2 : startsLeft ? text.x : text.x - room;
          return { left, right: left + room, y: text.y };
        });
        boxes.forEach((box, index) => {
          expect(box.left).toBeGreaterThanOrEqual(-1);
          expect(box.right).toBeLessThanOrEqual(scene.width + 1);
          for (const other of boxes.slice(index + 1)) {
            const apart = box.right < other.left || other.right < box.left || box.y !== other.y;
            expect(apart).toBe(true);
          }
        });
      }),
    );
  });

  // Longest label that a translator may write: 32 characters (src/app/languages/notes.ts).
  it('keeps words of any length inside the picture, apart from the value, or leaves them out', () => {
    fc.assert(
      fc.property(range, value, fc.integer({ min: 1, max: 32 }), ([low, high], at, length) => {
        const line = numberLine(Math.round(at), low, high);
        const yours = said('x'.repeat(length));
        const scene = drawPicture({ ...line, labels: { ...line.labels, yours } }, english);
        const above = textsOf(scene)
          .filter(({ y }) => y === 11)
          .map(({ text, x, size, anchor }) => {
            const room = roomFor(text, size);
            const left = anchor === 'start' ? x : anchor === 'end' ? x - room : x - room / 2;
            return { left, right: left + room };
          })
          .sort((one, other) => one.left - other.left);
        for (const { left, right } of above) {
          expect(left).toBeGreaterThanOrEqual(-1);
          expect(right).toBeLessThanOrEqual(scene.width + 1);
        }
        const [first, second] = above;
        if (first && second) expect(first.right).toBeLessThan(second.left);
        if (length <= 11) expect(above).toHaveLength(2);
      }),
    );
  });

  it('never runs two limits together into one number', () => {
    const labels = textsOf(drawPicture(numberLine(26000, 30, 400), english)).map(
      ({ text }) => text,
    );
    expect(labels).toContain('30 \u2013 400');
  });

  it.each([
    [4, 20, 500],
    [300, 20, 500],
    [610, 20, 500],
  ])('puts the words under the range they name, for %i beside %i to %i', (at, low, high) => {
    const scene = drawPicture(numberLine(at, low, high), english);
    const [left, right] = bandOf(scene);
    const words = textsOf(scene).find(({ text }) => text === 'usual range');
    expect(words?.anchor).toBe('middle');
    expect(Math.abs((words?.x ?? 0) - (left + right) / 2)).toBeLessThan(12);
  });

  it.each([
    [112, 130, 170, english],
    [72, 16, 50, english],
    [3.7, 2, 3.5, english],
    [4, 130, 170, arabic],
    [72, 16, 50, arabic],
  ])(
    'says both limits beside the words where they have no room under their ticks, for %d beside %d to %d',
    (at, low, high, speech) => {
      const scene = drawPicture(numberLine(at, low, high), speech);
      const below = textsOf(scene).filter(({ y }) => y > 40);
      expect(below.map(({ text }) => text).sort()).toEqual([
        `${low} \u2013 ${high}`,
        'usual range',
      ]);
      const [first, second] = below
        .map(({ text, x, size, anchor, dir }) => {
          const room = roomFor(text, size);
          const fromLeft = (anchor === 'start') === (dir === 'ltr');
          return { text, left: fromLeft ? x : x - room, right: fromLeft ? x + room : x };
        })
        .sort((one, other) => one.left - other.left);
      // The words come first in the direction of reading.
      expect((speech === english ? first : second)?.text).toBe('usual range');
      expect(first?.right).toBeLessThan(second?.left ?? 0);
      expect(first?.left).toBeGreaterThanOrEqual(0);
      expect(second?.right).toBeLessThanOrEqual(scene.width);
    },
  );

  it('leaves words wider than the line to the letter', () => {
    const line = numberLine(112, 130, 170);
    const usual = said('x'.repeat(40));
    const scene = drawPicture({ ...line, labels: { ...line.labels, usual } }, english);
    const below = textsOf(scene).filter(({ y }) => y > 40);
    expect(below.map(({ text }) => text)).toEqual(['130 \u2013 170']);
  });

  it('runs from low on the left to high on the right in every language, its figures too', () => {
    const [value, low] = [4, 30];
    const scene = drawPicture(numberLine(value, low, 900), arabic);
    expect(markOf(scene)).toBeLessThan(bandOf(scene)[0]);
    expect(textsOf(scene).find(({ text }) => text === '30')?.dir).toBe('ltr');
    expect(textsOf(scene).find(({ text }) => text === 'usual range')).toMatchObject({
      lang: 'ar',
      dir: 'rtl',
    });
  });

  it.each([
    ['no lower limit', null, 5],
    ['no upper limit', 30, null],
  ])('leaves the usual range open where there is %s', (_, low, high) => {
    const scene = drawPicture(numberLine(12, low, high), english);
    const [left, right] = bandOf(scene);
    expect(low === null ? left : scene.width - right).toBeLessThan(20);
  });
});

describe('an analogy', () => {
  const everyLevel = {
    store: 'well-below',
    carriers: 'well-above',
    load: 'well-below',
    goods: 'well-below',
  } as const;
  const unitsOf = (scene: Scene) => scene.shapes.filter(({ look }) => look === 'filled').length;

  it.each(analogies)('of the %s shows more in store for every higher position', (set) => {
    const counts = positions.map((store) =>
      unitsOf(drawPicture({ ...analogyPicture, set, levels: { ...everyLevel, store } }, english)),
    );
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expect(new Set(counts).size).toBe(positions.length);
  });

  it.each(analogies)('of the %s draws what was not measured dashed and empty', (set) => {
    const levels = { store: null, carriers: null, load: null, goods: null };
    const scene = drawPicture({ ...analogyPicture, set, levels }, english);
    expect(unitsOf(scene)).toBe(0);
    expect(scene.shapes.some(({ look }) => look === 'missing')).toBe(true);
  });

  it('wears a padlock only when the store is locked', () => {
    const locks = [true, false].map((locked) =>
      drawPicture({ ...analogyPicture, locked }, english).shapes.filter(
        ({ look }) => look === 'lock',
      ),
    );
    expect(locks.map(({ length }) => length)).toEqual([1, 0]);
  });

  it('is mirrored in a right-to-left letter, its text not', () => {
    const x = (speech: typeof english | typeof arabic) =>
      textsOf(drawPicture(analogyPicture, speech)).find(({ text }) => text.startsWith('Drawer'))?.x;
    expect(x(english)).toBe(60);
    expect(x(arabic)).toBe(300);
  });
});

describe('a trend', () => {
  const trend = (values: readonly number[]) =>
    ({
      kind: 'trend',
      points: values.map((point, index) => ({
        value: point,
        label: String(point),
        date: `May ${2020 + index}`,
      })),
      low: 30,
      high: 400,
      usual: said('usual range'),
      title: said('t'),
      description: said('d'),
    }) as const;
  const pointsOf = (scene: Scene) =>
    scene.shapes.flatMap((shape) => (shape.kind === 'circle' ? [{ x: shape.x, y: shape.y }] : []));

  it.each([2, 4, 7])('of %i results rises on paper as the values rise', (count) => {
    const points = pointsOf(
      drawPicture(trend([7, 12, 31, 44, 52, 60, 90].slice(0, count)), english),
    );
    expect(points).toHaveLength(count);
    expect(points.map(({ y }) => y)).toEqual(points.map(({ y }) => y).sort((a, b) => b - a));
  });

  // Common practice, no source: an axis keeps its direction, so that a line beside its English twin is the same line.
  it('is the same line in a letter of either direction, the oldest result on the left', () => {
    const drawn = [english, arabic].map((speech) => drawPicture(trend([7, 12, 31]), speech));
    const [left, right] = drawn.map(pointsOf);
    expect(right).toEqual(left);
    expect(left?.map(({ x }) => x)).toEqual(left?.map(({ x }) => x).sort((a, b) => a - b));
    const [leftDates, rightDates] = drawn.map((scene) =>
      textsOf(scene).flatMap(({ text, x, y }) => (text.startsWith('May') ? [[text, x, y]] : [])),
    );
    expect(rightDates).toEqual(leftDates);
  });

  it('has its key where reading starts, the box before the words', () => {
    const keyOf = (speech: typeof english | typeof arabic) => {
      const scene = drawPicture(trend([7, 12, 31, 44]), speech);
      const box = scene.shapes.find((shape) => shape.kind === 'rect' && shape.look === 'band');
      const text = textsOf(scene).find((one) => one.text === 'usual range');
      return { box: box?.kind === 'rect' ? box.x : null, words: text?.x, anchor: text?.anchor };
    };
    expect(keyOf(english)).toEqual({ box: 8, words: 38, anchor: 'start' });
    expect(keyOf(arabic)).toEqual({ box: 330, words: 322, anchor: 'start' });
  });

  it.each([
    ['beside its text, as wide as a number line, for two or three results', [7, 12, 31], 180],
    ['across the page for more', [7, 12, 31, 44], 360],
  ] as const)('stands %s', (_, values, width) => {
    expect(drawPicture(trend(values), english).width).toBe(width);
  });

  it('leaves no room over the usual range but for figures', () => {
    const scene = drawPicture({ ...trend([96, 118]), low: 115, high: 155 }, english);
    const [band] = scene.shapes;
    expect(band?.kind === 'rect' && band.y).toBeLessThan(30);
  });

  it.each([
    [96, 118, 115, 155],
    [5, 21, 16, 50],
    [114, 116, 115, 155],
    [31, 29, 30, 400],
  ])('sets the figures of %i and %i clear of the edges at %i and %i', (first, last, low, high) => {
    const scene = drawPicture({ ...trend([first, last]), low, high }, english);
    const edges = scene.shapes.flatMap((shape) =>
      shape.kind === 'line' && shape.look === 'tick' ? [shape.y1] : [],
    );
    const labels = textsOf(scene).filter(({ strong }) => strong);
    expect(labels.map(({ text }) => text)).toEqual([String(first), String(last)]);
    for (const { y } of labels)
      for (const edge of edges) expect(edge < y - 9 || edge > y, `${edge}, ${y}`).toBe(true);
  });
});

describe('the svg of a picture', () => {
  const scenes = [numberLine(7, 30, 400), analogyPicture].flatMap((picture) => [
    drawPicture(picture, english),
    drawPicture(picture, arabic),
  ]);

  it('reads back as the same picture', () => {
    for (const scene of scenes) {
      const svg = writeSvg(scene);
      const read = readSvg(svg, 'f');
      expect(read.ok).toBe(true);
      expect(read.ok && writeSvg(read.value)).toBe(svg);
      expect(read.ok && read.value.title).toBe(scene.title);
    }
  });

  it('names only shapes of the table of look', () => {
    for (const { look } of scenes.flatMap(({ shapes }) => shapes))
      expect(isShapeName(look)).toBe(true);
  });

  const frame = (inside: string) =>
    `<svg viewBox="0 0 10 10" role="img"><title>t</title><desc>d</desc>${inside}</svg>`;

  it.each([
    ['a foreign shape', frame('<ellipse cx="1" cy="1" rx="1" ry="1"/>')],
    ['a foreign object', frame('<foreignObject><p>x</p></foreignObject>')],
    ['an image', frame('<image href="https://a.example/x.png"/>')],
    ['a link to a shape', frame('<use href="#a"/>')],
    ['an event', frame('<rect class="axis" onload="x()" width="1" height="1"/>')],
    ['a style', frame('<rect class="axis" style="fill:red" width="1" height="1"/>')],
    ['a colour of its own', frame('<rect class="axis" fill="red" width="1" height="1"/>')],
    ['an unknown look', frame('<rect class="glow" width="1" height="1"/>')],
    ['no look', frame('<rect width="1" height="1"/>')],
    ['a relative path', frame('<path class="axis" d="m1 1 l2 2"/>')],
    ['a missing number', frame('<circle class="axis" cx="1" cy="1"/>')],
    ['a number with a unit', frame('<circle class="axis" cx="1" cy="1" r="2px"/>')],
    ['no description', '<svg viewBox="0 0 1 1" role="img"><title>t</title></svg>'],
    ['no size', '<svg role="img"><title>t</title><desc>d</desc></svg>'],
  ])('is refused for %s', (_, svg) => {
    expect(readSvg(svg, 'f').ok).toBe(false);
  });
});

describe('a very long path', () => {
  it('is refused in a moment, however close to right it is', () => {
    const path = `M1 1${' L12345678901234567890 1'.repeat(500)} L1`;
    const started = performance.now();
    const svg = `<svg viewBox="0 0 1 1" role="img"><title>t</title><desc>d</desc><path class="axis" d="${path}"/></svg>`;
    expect(readSvg(svg, 'f').ok).toBe(false);
    expect(performance.now() - started).toBeLessThan(2000);
  });
});
