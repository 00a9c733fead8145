// Shapes of pictures and signs arrive; operators of a content stream leave.
import { type ShapeLook, shapeLook } from '../look.js';
import { type Canvas, type Packed, pack, packedStream } from './canvas.js';
import { outlinePath, shapePaint } from './paint.js';
import type { Letters, SceneInk, SignGround } from './placed.js';
import { storedOnce } from './stored-once.js';
import { short } from './typecase.js';

/** Of neighbours painted alike the first alone says how. */
export function sceneOperators(
  shapes: readonly SceneInk[],
  lettersOperators: (letters: Letters, paint: ShapeLook) => string,
): string {
  let set = '';
  const drawn = shapes.map((shape) => {
    const paint = shapeLook(shape.look);
    const before = set;
    set = shape.kind === 'letters' ? '' : shapePaint(paint);
    if (shape.kind === 'letters') return lettersOperators(shape, paint);
    const path = outlinePath(shape.path, paint);
    return set === before ? path : `${set}\n${path}`;
  });
  return drawn.join('\n');
}

/** A picture's own units at its place on the page. */
export function unitsOf({ x, y, scale }: Record<'x' | 'y' | 'scale', number>): string {
  return `${short(scale)} 0 0 ${short(scale)} ${short(x)} ${short(y)} cm`;
}

/** Signs of all letters by name, packed: there are a dozen. */
const packedSigns = new Map<string, Packed>();

/** A sign is the same in every letter and often stands on a page twice: a form (ISO 32000-1, 8.10). */
export function signOperators(canvas: Canvas, sign: SignGround): string {
  const { name, width, height, scale } = sign;
  const form = storedOnce(canvas, name, () =>
    packedStream(canvas, packedSign(sign), {
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [0, 0, width / scale, height / scale],
      Resources: {},
    }),
  );
  return `q ${unitsOf(sign)} /${form} Do Q`;
}

function packedSign({ name, shapes }: SignGround): Packed {
  const known = packedSigns.get(name);
  if (known !== undefined) return known;
  const noLetters = () => {
    throw new Error('A sign has no letters');
  };
  const packed = pack(new TextEncoder().encode(sceneOperators(shapes, noLetters)));
  packedSigns.set(name, packed);
  return packed;
}
