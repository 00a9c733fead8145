// Shapes arrive one by one; a scene leaves. Knows the letter's direction and how wide text may get.
import type { Direction, Scene, Shape } from '../block.js';
import { hasRightToLeft } from '../read-runs.js';
import type { ShapeName } from '../look.js';

/** Language and direction of the words in a picture. */
export type Speech = { readonly lang: string; readonly dir: Direction };

export type Side = 'left' | 'middle' | 'right';

/**
 * Text cannot be measured here, so its room is estimated on the generous side: a full em for ideographs,
 * 0.58 em for everything else (digits of common faces take 0.55 to 0.57, running text less).
 * @example roomFor('30', 11) // 12.76
 */
export function roomFor(text: string, size: number): number {
  let ems = 0;
  for (const character of text) {
    if (/\p{M}|\p{Cf}/u.test(character)) continue;
    ems += /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}]/u.test(
      character,
    )
      ? 1
      : /[\p{Script=Devanagari}\p{Script=Bengali}\p{Script=Gurmukhi}]/u.test(character)
        ? 0.72
        : 0.58;
  }
  return ems * size;
}

/** Words in the letter's language. `side` is where x lies on the text, whichever way it reads. */
export function words(
  text: string,
  at: { readonly x: number; readonly y: number; readonly side: Side },
  speech: Speech,
  look: { readonly size: number; readonly strong?: boolean; readonly name?: ShapeName },
): Shape {
  return {
    kind: 'text',
    look: look.name ?? 'text',
    x: at.x,
    y: at.y,
    size: look.size,
    anchor: anchorFor(at.side, speech.dir),
    strong: look.strong ?? false,
    lang: speech.lang,
    dir: speech.dir,
    text,
  };
}

/** A laboratory's own string: left to right in every language. */
export function figures(
  text: string,
  at: { readonly x: number; readonly y: number; readonly side: Side },
  look: { readonly size: number; readonly strong?: boolean; readonly name?: ShapeName },
): Shape {
  const dir: Direction = hasRightToLeft(text) ? 'rtl' : 'ltr';
  return {
    kind: 'text',
    look: look.name ?? 'text',
    x: at.x,
    y: at.y,
    size: look.size,
    anchor: anchorFor(at.side, dir),
    strong: look.strong ?? false,
    lang: null,
    dir,
    text,
  };
}

/** An anchor follows reading, as in SVG: the start of right-to-left text is its right end. */
function anchorFor(side: Side, dir: Direction): 'start' | 'middle' | 'end' {
  if (side === 'middle') return 'middle';
  return (side === 'left') === (dir === 'ltr') ? 'start' : 'end';
}

/**
 * Breaks a label at spaces (between ideographs where there are none) so that no line needs more than the width.
 * @example wrapLabel('Drawer of spare buttons', 80, 11) // ['Drawer of', 'spare', 'buttons']
 */
export function wrapLabel(text: string, width: number, size: number): readonly string[] {
  const pieces = /\s/.test(text)
    ? text.split(/\s+/)
    : roomFor(text, size) > width
      ? [...text]
      : [text];
  const joint = /\s/.test(text) ? ' ' : '';
  const lines: string[] = [];
  for (const piece of pieces) {
    const last = lines.at(-1);
    const longer = last === undefined ? piece : last + joint + piece;
    if (last !== undefined && roomFor(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(piece);
  }
  return lines;
}

/** The same scene seen in a mirror; text keeps its reading, its places move. */
export function mirror(scene: Scene): Scene {
  const flip = (x: number) => scene.width - x;
  return { ...scene, shapes: scene.shapes.map((shape) => mirrorShape(shape, flip)) };
}

function mirrorShape(shape: Shape, flip: (x: number) => number): Shape {
  switch (shape.kind) {
    case 'rect':
      return { ...shape, x: flip(shape.x + shape.width) };
    case 'line':
      return { ...shape, x1: flip(shape.x1), x2: flip(shape.x2) };
    case 'path':
      return {
        ...shape,
        d: shape.d.replace(
          /(-?\d+(?:\.\d+)?) (-?\d+(?:\.\d+)?)/g,
          (_, x: string, y: string) => `${Math.round(flip(Number(x)) * 100) / 100} ${y}`,
        ),
      };
    case 'circle':
    case 'text':
      return { ...shape, x: flip(shape.x) };
  }
}
