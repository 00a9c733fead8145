// The text of a clinic's SVG arrives; plain paths with plain colours leave, or what a letterhead cannot take, with its line.
import { Parser } from 'htmlparser2';
import svgpath from 'svgpath';
import { lineFinder } from '../../render/line-finder.js';
import type { Logo, LogoShape } from '../../render/logo.js';
import { limits } from './limits.js';
import { Foreign, type Paint, paintOf, plainPaint } from './svg-paint.js';

type Level = { readonly paint: Paint; readonly transforms: readonly string[] };

export type SvgRefused = {
  readonly line: number;
  readonly cannot: string;
  readonly expected: string;
};

/** Their words are for other readers than a letter's. */
const silent = new Set(['title', 'desc', 'metadata']);
const groups = ['transform'];
const forms: Readonly<Record<string, readonly string[]>> = {
  svg: ['viewBox', 'width', 'height', 'x', 'y'],
  g: groups,
  path: [...groups, 'd'],
  rect: [...groups, 'x', 'y', 'width', 'height', 'rx', 'ry'],
  circle: [...groups, 'cx', 'cy', 'r'],
  ellipse: [...groups, 'cx', 'cy', 'rx', 'ry'],
  line: [...groups, 'x1', 'y1', 'x2', 'y2'],
  polyline: [...groups, 'points'],
  polygon: [...groups, 'points'],
};

/**
 * Takes in shapes and nothing else: no text, no picture, no style sheet, no script, no link, nothing that fetches.
 * What is refused is refused by name; nothing is left out in silence.
 * @example readSvgLogo('<svg viewBox="0 0 8 8"><circle cx="4" cy="4" r="4"/></svg>')
 */
export function readSvgLogo(svg: string): (Logo & { readonly kind: 'vector' }) | SvgRefused {
  const lineOf = lineFinder(svg);
  const levels: Level[] = [];
  const shapes: LogoShape[] = [];
  const room = { segments: limits.segments as number };
  let box: Box | null = null;
  let refused: SvgRefused | null = null;
  let quiet = 0;
  const attempt = (work: () => void) => {
    if (refused !== null) return;
    try {
      work();
    } catch (fault) {
      if (!(fault instanceof Foreign)) throw fault;
      const { cannot, expected } = fault;
      refused = { line: lineOf(parser.startIndex), cannot, expected };
    }
  };
  const parser = new Parser(
    {
      onopentag: (tag, attributes) =>
        attempt(() => {
          if (quiet > 0 || silent.has(tag)) {
            quiet += 1;
            return;
          }
          const form = Object.hasOwn(forms, tag) ? forms[tag] : undefined;
          if (form === undefined || (tag === 'svg') !== (levels.length === 0))
            throw new Foreign(
              `draw <${tag.slice(0, 30)}>`,
              'paths and plain shapes; save text as outlines and pictures as paths',
            );
          const above = levels.at(-1) ?? { paint: plainPaint, transforms: [] };
          const paint = paintOf(attributes, form, above.paint);
          const transforms = [...transformOf(attributes.transform), ...above.transforms];
          if (tag === 'svg') box = boxOf(attributes);
          else if (tag !== 'g' && box !== null)
            shapes.push(...shapeOf(outline(tag, attributes), paint, [...transforms], box, room));
          if (shapes.length > limits.shapes)
            throw new Foreign('draw so many shapes', `${limits.shapes} at most`);
          levels.push({ paint, transforms });
        }),
      onclosetag: () => {
        if (quiet > 0) quiet -= 1;
        else if (levels.length > 0) levels.pop();
      },
      ontext: (text) =>
        attempt(() => {
          if (quiet === 0 && text.trim() !== '')
            throw new Foreign('print words', 'words saved as outlines');
        }),
      onprocessinginstruction: (name, data) =>
        attempt(() => {
          const plain =
            name === '?xml' || (name.toLowerCase() === '!doctype' && !/[[&]/.test(data));
          if (!plain) throw new Foreign('follow an instruction in the file', 'only shapes');
        }),
      oncdatastart: () =>
        attempt(() => {
          throw new Foreign('read a block of other data', 'only shapes');
        }),
    },
    { xmlMode: true },
  );
  parser.end(svg);
  if (refused !== null) return refused;
  const drawn = shapes.filter(({ fill, stroke }) => fill !== null || stroke !== null);
  if (box === null || drawn.length === 0)
    return { line: 1, cannot: 'find a shape in it', expected: 'an <svg> with shapes' };
  const { width, height } = box as Box;
  return { kind: 'vector', width: round((width * tall) / height), height: tall, shapes: drawn };
}

type Box = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** Units of the finished logo: every one is as tall, so that two decimals are finer than any printer. */
const tall = 100;

function boxOf({ viewBox, width, height }: Readonly<Record<string, string>>): Box {
  const numbers =
    viewBox === undefined
      ? [0, 0, Number.parseFloat(width ?? ''), Number.parseFloat(height ?? '')]
      : viewBox
          .trim()
          .split(/[\s,]+/)
          .map(Number);
  const [x, y, wide, high] = numbers;
  if (x === undefined || y === undefined || wide === undefined || high === undefined)
    throw new Foreign('find its size', 'a viewBox such as "0 0 120 40"');
  if (!numbers.every((number) => Math.abs(number) < 1e6) || !(wide > 0 && high > 0))
    throw new Foreign('find its size', 'a viewBox such as "0 0 120 40"');
  return { x, y, width: wide, height: high };
}

function transformOf(written: string | undefined): readonly string[] {
  if (written === undefined) return [];
  const rest = written.replace(
    /(matrix|translate|scale|rotate|skewX|skewY)\s*\([-+.\deE,\s]{1,200}\)/g,
    '',
  );
  if (!/^[\s,]*$/.test(rest))
    throw new Foreign('use this transform', 'matrix, translate, scale, rotate or skew');
  return [written];
}

function outline(tag: string, attributes: Readonly<Record<string, string>>): string {
  const number = (name: string) => {
    const written = attributes[name] ?? '0';
    if (!/^[-+]?\d*\.?\d+(e[-+]?\d{1,2})?(px)?$/i.test(written.trim()))
      throw new Foreign(`read ${name} of <${tag}>`, 'a number');
    return Number.parseFloat(written);
  };
  switch (tag) {
    case 'path':
      return attributes.d ?? '';
    case 'line':
      return `M${number('x1')} ${number('y1')}L${number('x2')} ${number('y2')}`;
    case 'polyline':
    case 'polygon':
      return attributes.points === undefined || attributes.points.trim() === ''
        ? ''
        : `M${attributes.points}${tag === 'polygon' ? 'Z' : ''}`;
    case 'rect': {
      const [x, y, w, h] = [number('x'), number('y'), number('width'), number('height')];
      const rx = Math.min(number(attributes.rx === undefined ? 'ry' : 'rx'), w / 2);
      const ry = Math.min(number(attributes.ry === undefined ? 'rx' : 'ry'), h / 2);
      if (!(w > 0 && h > 0)) return '';
      if (!(rx > 0 && ry > 0)) return `M${x} ${y}h${w}v${h}h${-w}Z`;
      const arc = (dx: number, dy: number) => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
      return `M${x + rx} ${y}h${w - 2 * rx}${arc(rx, ry)}v${h - 2 * ry}${arc(-rx, ry)}h${2 * rx - w}${arc(-rx, -ry)}v${2 * ry - h}${arc(rx, -ry)}Z`;
    }
    default: {
      const [cx, cy] = [number('cx'), number('cy')];
      const [rx, ry] = tag === 'circle' ? [number('r'), number('r')] : [number('rx'), number('ry')];
      if (!(rx > 0 && ry > 0)) return '';
      return `M${cx - rx} ${cy}a${rx} ${ry} 0 1 1 ${2 * rx} 0a${rx} ${ry} 0 1 1 ${-2 * rx} 0Z`;
    }
  }
}

function shapeOf(
  d: string,
  paint: Paint,
  transforms: readonly string[],
  box: Box,
  room: { segments: number },
): readonly LogoShape[] {
  if (d.trim() === '') return [];
  const path = placed(d, transforms, box);
  const parts: string[] = [];
  path.iterate((segment, _index, x, y) => {
    const [command, ...numbers] = segment as readonly [string, ...number[]];
    const part = plainPart(command, numbers, x, y);
    room.segments -= 1;
    if (room.segments < 0)
      throw new Foreign('draw so many lines', `${limits.segments} at most in all shapes`);
    if (part.numbers.some((number) => !(Math.abs(number) < 1e5)))
      throw new Foreign('draw so far outside the picture', 'shapes near its viewBox');
    parts.push(part.command + part.numbers.map(round).join(' '));
  });
  if (parts.length < 2) return [];
  const { fill, stroke, evenOdd } = paint;
  return [
    {
      d: parts.join(' '),
      fill,
      stroke,
      evenOdd,
      strokeWidth: round(paint.strokeWidth * scaleOf(transforms, box)),
    },
  ];
}

function placed(d: string, transforms: readonly string[], box: Box) {
  const path = svgpath(d) as ReturnType<typeof svgpath> & { readonly err: string };
  if (path.err !== '') throw new Foreign('read a path', 'the path commands of SVG');
  const moved = transforms.reduce(
    (so, transform) => so.transform(transform),
    path.abs().unshort().unarc(),
  );
  return moved
    .translate(-box.x, -box.y)
    .scale(tall / box.height)
    .abs();
}

/** How much larger an area becomes, as a length: what a line's thickness grows by. */
function scaleOf(transforms: readonly string[], box: Box): number {
  const at: (readonly [number, number])[] = [];
  placed('M0 0L1 0L0 1', transforms, { ...box, x: 0, y: 0 }).iterate((segment) => {
    const [, x = 0, y = 0] = segment as readonly [string, ...number[]];
    at.push([x, y]);
  });
  const [[x0, y0] = [0, 0], [x1, y1] = [0, 0], [x2, y2] = [0, 0]] = at;
  return Math.sqrt(Math.abs((x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)));
}

/** Straight and quadratic parts in the few commands that a PDF has too (SVG 2, 9.3). */
function plainPart(command: string, numbers: readonly number[], x: number, y: number) {
  const [a = 0, b = 0, c = 0, d = 0] = numbers;
  switch (command) {
    case 'H':
      return { command: 'L', numbers: [a, y] };
    case 'V':
      return { command: 'L', numbers: [x, a] };
    case 'Q':
      return {
        command: 'C',
        numbers: [
          x + (2 * (a - x)) / 3,
          y + (2 * (b - y)) / 3,
          c + (2 * (a - c)) / 3,
          d + (2 * (b - d)) / 3,
          c,
          d,
        ],
      };
    case 'z':
    case 'Z':
      return { command: 'Z', numbers: [] };
    default:
      return { command, numbers };
  }
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
