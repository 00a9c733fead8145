// Rows of the table of look arrive; operators of a content stream leave (ISO 32000-1, 8.5).
import type { ShapeLook } from '../look.js';
import { bounded } from '../../bounded.js';
import type { Ground } from './placed.js';
import { short } from './typecase.js';

/**
 * Red, green and blue from 0 to 1.
 * @example colourOf('#ffffff') // '1 1 1'
 */
export function colourOf(hex: string): string {
  const known = colours.get(hex);
  if (known !== undefined) return known;
  const parts = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
  const colour = parts.map((part) => String(Math.round(part * 1000) / 1000)).join(' ');
  colours.set(hex, colour);
  return colour;
}

const colours = new Map<string, string>();

/** Colours, width and dashes of a shape; line ends are round. */
export function shapePaint({ fill, stroke, width, dash }: ShapeLook): string {
  return [
    fill === null ? '' : `${colourOf(fill)} rg`,
    stroke === null ? '' : `${colourOf(stroke)} RG ${short(width)} w 1 J 1 j`,
    stroke === null ? '' : `[${(dash ?? []).map(short).join(' ')}] 0 d`,
  ].join(' ');
}

const operators: Readonly<Record<string, string>> = { M: 'm', L: 'l', C: 'c', Z: 'h' };
const pairs: Readonly<Record<string, number>> = { M: 2, L: 2, C: 6, Z: 0 };

/**
 * A path of absolute M, L, C and Z, and the operator that fills or strokes it.
 * @throws on any other command, and on a number of coordinates that does not fit.
 * @example outlinePath('M0 0 L10 0', axis) // '0 0 m\n10 0 l\nS'
 */
export function outlinePath(path: string, { fill, stroke }: ShapeLook): string {
  const key = `${fill !== null} ${stroke !== null} ${path}`;
  const known = outlines.get(key);
  if (known !== undefined) return known;
  const drawn = drawOutline(path, fill !== null, stroke !== null);
  outlines.set(key, drawn);
  return drawn;
}

/** Pictures draw the same things in letter after letter. */
const outlines = bounded<string>(2000);

function drawOutline(path: string, fills: boolean, strokes: boolean): string {
  const parts = path.matchAll(/([A-Za-z])([^A-Za-z]*)/g);
  const drawn: string[] = [];
  for (const [, command = '', rest = ''] of parts) {
    const operator = operators[command];
    const step = pairs[command] ?? 0;
    const numbers = (rest.match(/-?\d*\.?\d+/g) ?? []).map(Number);
    if (operator === undefined || (step === 0 ? numbers.length > 0 : numbers.length % step > 0)) {
      throw new Error('A path of a picture holds a command that cannot be drawn');
    }
    if (step === 0) drawn.push(operator);
    for (let at = 0; at < numbers.length; at += step) {
      const point = numbers
        .slice(at, at + step)
        .map(short)
        .join(' ');
      // SVG 2, 9.3.3: further pairs after M are lines.
      drawn.push(`${point} ${command === 'M' && at > 0 ? 'l' : operator}`);
    }
  }
  return [...drawn, paintOperator(fills, strokes)].join('\n');
}

function paintOperator(fills: boolean, strokes: boolean): string {
  if (fills) return strokes ? 'B' : 'f';
  return strokes ? 'S' : 'n';
}

type Edge = Pick<Extract<Ground, { kind: 'box' }>, 'x' | 'y' | 'width' | 'height' | 'edgeWidth'> & {
  readonly edge: string;
  readonly sides: 'all' | 'start' | 'end';
};

/** All four sides, or the one where reading begins: `start` left, `end` right. */
export function edgePath({ x, y, width, height, edge, edgeWidth, sides }: Edge): string {
  if (sides === 'all') {
    const half = edgeWidth / 2;
    const box = [x + half, y + half, width - edgeWidth, height - edgeWidth].map(short).join(' ');
    return `${colourOf(edge)} RG ${short(edgeWidth)} w 0 J 0 j [] 0 d ${box} re S`;
  }
  const left = sides === 'start' ? x : x + width - edgeWidth;
  const bar = [left, y, edgeWidth, height].map(short).join(' ');
  return `${colourOf(edge)} rg ${bar} re f`;
}
