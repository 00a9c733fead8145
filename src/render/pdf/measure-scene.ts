// A picture's shapes arrive; outlines and shaped letters leave, in the picture's own units.
import type { Scene, Shape } from '../block.js';
import { addTag, leftOf, plainRun, type Bench, type Place } from './frame.js';
import type { Strip } from './flow.js';
import { look, pictureScale } from '../look.js';
import { breakLines } from './lines.js';
import { composeParagraph } from './paragraph.js';
import type { Outline, SceneInk } from './placed.js';

/** One strip that holds the whole picture, at the side where reading begins. */
export function measureScene(scene: Scene, place: Place, bench: Bench): Strip {
  const scale = pictureScale(scene, place.width, bench.base);
  const width = scene.width * scale;
  const height = scene.height * scale;
  const alt = [scene.title, scene.description].filter((part) => part !== '').join('. ');
  const tag = addTag(bench, place.tag, 'Figure', { alt });
  const space = look.space.block * bench.base;
  const x = leftOf(place, 0, width);
  const shapes = scene.shapes.flatMap((shape) => shapeInk(shape, place, bench));
  return {
    kind: 'strip',
    before: space,
    after: space,
    glue: 0,
    height,
    baseline: null,
    ink: [{ kind: 'picture', tag, x, y: 0, width, height, scale, shapes }],
    grounds: [],
    repeat: null,
  };
}

/** Outlines of a scene without words. */
export function outlinesOf(scene: Scene): readonly Outline[] {
  return scene.shapes.flatMap((shape) =>
    shape.kind === 'text'
      ? []
      : [{ kind: 'outline', look: shape.look, path: outlineOf(shape) } as const],
  );
}

function shapeInk(shape: Shape, place: Place, bench: Bench): readonly SceneInk[] {
  if (shape.kind === 'text') return lettersOf(shape, place, bench);
  return [{ kind: 'outline', look: shape.look, path: outlineOf(shape) }];
}

/** SVG 2, section 11: anchors count from where the text begins, which is its right side in right-to-left text. */
function lettersOf(
  shape: Extract<Shape, { kind: 'text' }>,
  place: Place,
  bench: Bench,
): readonly SceneInk[] {
  const dir = shape.dir ?? place.dir;
  const setting = { lang: shape.lang ?? place.lang, dir, strong: shape.strong };
  const paragraph = composeParagraph([plainRun(shape.text)], setting, bench.fonts);
  for (const point of paragraph.missing) bench.missing.add(point);
  const [line] = breakLines(paragraph, Number.POSITIVE_INFINITY, dir, bench.fonts);
  if (line === undefined) return [];
  const { size, y, look: name } = shape;
  const width = (line.width * size) / 1000;
  const atLeft = shape.anchor === (dir === 'rtl' ? 'end' : 'start');
  const back = shape.anchor === 'middle' ? width / 2 : atLeft ? 0 : width;
  const left = shape.x - back;
  return line.pieces.map(({ file, glyphs, x }) => ({
    kind: 'letters',
    look: name,
    x: left + (x * size) / 1000,
    y,
    size,
    file,
    glyphs,
  }));
}

/** Distance of the handles that make a quarter of a circle from one curve. */
const quarter = 0.5522847498;

function outlineOf(shape: Exclude<Shape, { kind: 'text' }>): string {
  switch (shape.kind) {
    case 'path':
      return shape.d;
    case 'line':
      return `M${shape.x1} ${shape.y1} L${shape.x2} ${shape.y2}`;
    case 'circle': {
      const { x, y, r } = shape;
      return roundedPath(x - r, y - r, 2 * r, 2 * r, r);
    }
    case 'rect': {
      const { x, y, width, height, radius } = shape;
      return roundedPath(x, y, width, height, Math.min(radius, width / 2, height / 2));
    }
  }
}

function roundedPath(x: number, y: number, width: number, height: number, r: number): string {
  const right = x + width;
  const bottom = y + height;
  if (r <= 0) return `M${x} ${y} L${right} ${y} L${right} ${bottom} L${x} ${bottom} Z`;
  const k = r * (1 - quarter);
  return [
    `M${x + r} ${y} L${right - r} ${y} C${right - k} ${y} ${right} ${y + k} ${right} ${y + r}`,
    `L${right} ${bottom - r} C${right} ${bottom - k} ${right - k} ${bottom} ${right - r} ${bottom}`,
    `L${x + r} ${bottom} C${x + k} ${bottom} ${x} ${bottom - k} ${x} ${bottom - r}`,
    `L${x} ${y + r} C${x} ${y + k} ${x + k} ${y} ${x + r} ${y} Z`,
  ].join(' ');
}
