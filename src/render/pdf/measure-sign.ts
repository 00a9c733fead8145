// Measured elements arrive; they leave with a box to tick or a small sign on their first line, which says nothing of its own.
import type { PictogramName } from '../../letter/content.js';
import { look } from '../look.js';
import { drawSign } from '../pictures/pictogram.js';
import { leftOf, type Bench, type Place } from './frame.js';
import type { Element, Strip } from './flow.js';
import { lowered } from './ends.js';
import { outlinesOf } from './measure-scene.js';
import type { Ground } from './placed.js';

/** Points that a sign takes from its column, with the gap to the words. */
export function roomOfSign(name: PictogramName, base: number): number {
  const { width, height } = drawSign(name);
  return (width / height) * look.sign.height * base + look.sign.gap * base;
}

/**
 * The sign stands where reading begins, its middle on the middle of the first line.
 * @param place the whole column; the elements were measured in what the sign leaves of it.
 */
export function withSign(
  elements: readonly Element[],
  name: PictogramName,
  place: Place,
  { base }: Bench,
): readonly Element[] {
  const scene = drawSign(name);
  const height = look.sign.height * base;
  const scale = height / scene.height;
  const width = scene.width * scale;
  const x = leftOf(place, 0, width);
  const shapes = outlinesOf(scene);
  return withGround(elements, base, { kind: 'sign', name, x, y: 0, width, height, scale, shapes });
}

/** An empty box where the mark of the item would stand. */
export function withTick(
  elements: readonly Element[],
  place: Place,
  { base }: Bench,
): readonly Element[] {
  const { side, edge, edgeWidth, fill } = look.tick;
  const size = side * base;
  const x = leftOf(place, 0, size);
  return withGround(elements, base, {
    kind: 'box',
    ...{ x, y: 0, width: size, height: size, fill, edge, edgeWidth, sides: 'all' },
  });
}

/** What is higher than the line makes room for itself above and below. */
function withGround(
  elements: readonly Element[],
  base: number,
  ground: Extract<Ground, { kind: 'box' | 'sign' }>,
): readonly Element[] {
  const [first, ...others] = elements;
  const half = ground.height / 2;
  if (first?.kind !== 'strip' || first.baseline === null) {
    const alone = { kind: 'strip', before: 0, after: 0, glue: 2, repeat: null } as const;
    const strip: Strip = {
      ...alone,
      height: ground.height,
      baseline: null,
      ink: [],
      grounds: [ground],
    };
    return [strip, ...elements];
  }
  const own = first.baseline - look.space.middle * base;
  const down = Math.max(0, half - own);
  const middle = own + down;
  const line = lowered(first, down);
  const height = Math.max(line.height, middle + half);
  const grounds = [...line.grounds, { ...ground, y: middle - half }];
  return [{ ...line, height, grounds }, ...others];
}
