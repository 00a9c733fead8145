// The name of a pictogram arrives; its scene leaves: a few plain lines that stay clear small, in grey and mirrored.
import type { Pictogram, PictogramName } from '../../letter/content.js';
import type { Scene, Shape } from '../block.js';

const width = 48;
const height = 44;

const path = (d: string, look: 'open' | 'outline' | 'filled' | 'marker' = 'open'): Shape => ({
  kind: 'path',
  look,
  d,
});
const circle = (x: number, y: number, r: number, look: 'open' | 'outline' | 'filled' | 'marker') =>
  ({ kind: 'circle', look, x, y, r }) as const;
const box = (
  x: number,
  y: number,
  w: number,
  h: number,
  radius = 2,
  look: 'open' | 'outline' | 'filled' = 'outline',
) => ({ kind: 'rect', look, x, y, width: w, height: h, radius }) as const;
const stroke = (x1: number, y1: number, x2: number, y2: number) =>
  ({ kind: 'line', look: 'axis', x1, y1, x2, y2 }) as const;

const drawings: Readonly<Record<PictogramName, readonly Shape[]>> = {
  // A tube with a stopper, filled below.
  'blood-test': [
    box(18, 8, 12, 32, 6),
    path('M19.5 22 L28.5 22 L28.5 34 L26 38 L22 38 L19.5 34 Z', 'filled'),
    box(15, 4, 18, 6, 2, 'filled'),
  ],
  // A page with rings and one marked day.
  calendar: [
    box(8, 8, 32, 32),
    stroke(8, 17, 40, 17),
    stroke(16, 4, 16, 11),
    stroke(32, 4, 32, 11),
    ...[23, 29, 35].flatMap((y) => [14, 20, 26, 32].map((x) => circle(x, y, 1.2, 'marker'))),
    path('M28.5 25.5 L35.5 25.5 L35.5 32.5 L28.5 32.5 Z'),
  ],
  // Head, shoulders and a cross on the coat.
  clinician: [
    circle(24, 12, 8, 'outline'),
    path('M8 42 L8 34 L14 26 L34 26 L40 34 L40 42 Z', 'outline'),
    stroke(30, 32, 30, 40),
    stroke(26, 36, 34, 36),
  ],
  // A cup, and a clock: it is about when.
  drink: [
    path('M5 18 L27 18 L24 38 L8 38 Z', 'outline'),
    path('M26 22 L32 22 L31 30 L25 30'),
    stroke(11, 13, 11, 8),
    stroke(19, 13, 19, 8),
    circle(37, 12, 9, 'outline'),
    stroke(37, 12, 37, 6),
    stroke(37, 12, 41, 14),
  ],
  // A bowl with food above its edge.
  food: [
    circle(17, 18, 6, 'filled'),
    circle(29, 17, 7, 'outline'),
    path('M6 22 L42 22 L36 36 L30 40 L18 40 L12 36 Z', 'outline'),
  ],
  // Half a fruit, cut across: one with vitamin C.
  fruit: [
    circle(24, 23, 18, 'outline'),
    circle(24, 23, 13.5, 'open'),
    stroke(24, 11, 24, 35),
    stroke(13.6, 17, 34.4, 29),
    stroke(13.6, 29, 34.4, 17),
  ],
  // A hand-held telephone with keys.
  phone: [
    box(14, 3, 20, 38, 4),
    box(17, 8, 14, 10, 1, 'filled'),
    ...[23, 28, 33].flatMap((y) => [19, 24, 29].map((x) => circle(x, y, 1.3, 'marker'))),
  ],
  // An open hand with food on the palm: as much as that.
  portion: [
    path(
      'M14 43 L14 33 C10 31 6 27 5 23 C4.5 20 8 19.5 9.5 22 L14 26 L14 11 C14 8 19 8 19 11 L19 20 L20 20 L20 6 C20 3 25 3 25 6 L25 20 L26 20 L26 7 C26 4 31 4 31 7 L31 20 L32 20 L32 12 C32 9 37 9 37 12 L37 30 C37 36 35 38 34 43 Z',
      'outline',
    ),
    circle(25.5, 31, 7, 'filled'),
  ],
  // One round tablet with a score, one capsule.
  tablets: [
    circle(15, 17, 10, 'outline'),
    stroke(8, 17, 22, 17),
    box(21, 28, 24, 11, 5.5),
    path('M33 28 L33 39 L39 39 L43 37 L45 33.5 L43 30 L39 28 Z', 'filled'),
  ],
  // A triangle with an exclamation mark.
  warning: [
    path('M24 4 L44 40 L4 40 Z', 'outline'),
    path('M21.8 15 L26.2 15 L25.2 29 L22.8 29 Z', 'marker'),
    circle(24, 34, 2.4, 'marker'),
  ],
};

/** Names a template may give to a sign. */
export const pictogramNames = Object.keys(drawings) as readonly PictogramName[];

export function isPictogram(name: string): name is PictogramName {
  return Object.hasOwn(drawings, name);
}

/**
 * The same drawing as a sign beside words that say all: it has no words of its own.
 * @example drawSign('phone').title // ''
 */
export function drawSign(name: PictogramName): Scene {
  return { width, height, title: '', description: '', shapes: drawings[name] };
}

/**
 * Draws one pictogram, the same in every direction of reading.
 * @example drawPictogram({ kind: 'pictogram', name: 'phone', title, description }).width // 48
 */
export function drawPictogram({ name, title, description }: Pictogram): Scene {
  return { ...drawSign(name), title: title.text, description: description.text };
}
