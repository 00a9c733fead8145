// A scene arrives; one svg of the closed subset leaves, with its title and description.
import type { Scene, Shape } from '../block.js';
import { escapeHtml } from '../escape.js';

type Naming = {
  /** Prefix of the ids that tie title and description to the picture; null leaves ids out. */
  readonly id: string | null;
  /** Prefix of the classes: none in markup, 'shape-' in the finished page. */
  readonly classes: string;
};

/**
 * Writes a picture. Shapes name rows of the table of look and carry no colours, so nothing in it can
 * fetch, run or style.
 * @example writeSvg(scene) // '<svg viewBox="0 0 360 52" role="img"><title>…'
 */
export function writeSvg(scene: Scene, naming: Naming = { id: null, classes: '' }): string {
  const { id, classes } = naming;
  const ids =
    id === null
      ? ['', '', '']
      : [` aria-labelledby="${id}-t ${id}-d"`, ` id="${id}-t"`, ` id="${id}-d"`];
  return [
    `<svg viewBox="0 0 ${short(scene.width)} ${short(scene.height)}" role="img"${ids[0]}>`,
    `<title${ids[1]}>${escapeHtml(scene.title)}</title>`,
    `<desc${ids[2]}>${escapeHtml(scene.description)}</desc>`,
    ...scene.shapes.map((shape) => writeShape(shape, classes)),
    '</svg>',
  ].join('');
}

/** Writes a sign: decoration, of which nothing is read aloud (WCAG 2.2, 1.1.1). */
export function writeSign(scene: Scene, classes: string): string {
  const shapes = scene.shapes.map((shape) => writeShape(shape, classes)).join('');
  return `<svg viewBox="0 0 ${short(scene.width)} ${short(scene.height)}" aria-hidden="true">${shapes}</svg>`;
}

function writeShape(shape: Shape, classes: string): string {
  const name = `class="${classes}${escapeHtml(shape.look)}"`;
  switch (shape.kind) {
    case 'rect': {
      const radius = shape.radius === 0 ? '' : ` rx="${short(shape.radius)}"`;
      return `<rect ${name} x="${short(shape.x)}" y="${short(shape.y)}" width="${short(shape.width)}" height="${short(shape.height)}"${radius}/>`;
    }
    case 'circle':
      return `<circle ${name} cx="${short(shape.x)}" cy="${short(shape.y)}" r="${short(shape.r)}"/>`;
    case 'line':
      return `<line ${name} x1="${short(shape.x1)}" y1="${short(shape.y1)}" x2="${short(shape.x2)}" y2="${short(shape.y2)}"/>`;
    case 'path':
      return `<path ${name} d="${escapeHtml(shape.d)}"/>`;
    case 'text': {
      const lang = shape.lang === null ? '' : ` lang="${escapeHtml(shape.lang)}"`;
      const dir = shape.dir === null ? '' : ` direction="${shape.dir}"`;
      const weight = shape.strong ? ' font-weight="bold"' : '';
      return `<text ${name} x="${short(shape.x)}" y="${short(shape.y)}" font-size="${short(shape.size)}" text-anchor="${shape.anchor}"${weight}${lang}${dir}>${escapeHtml(shape.text)}</text>`;
    }
  }
}

/** Two decimals are finer than any printer of a letter. */
export function short(value: number): string {
  return String(Math.round(value * 100) / 100);
}
