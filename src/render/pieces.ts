// Markup of parts one after another arrives; the parts leave, each a tag with all that stands in it.
import { emptyTags } from './parse-markup.js';

const anyTag = /<(\/?)([a-z][a-z0-9]*)\b[^>]*>/g;

/**
 * Cuts without parsing, so that a part met before need not be parsed again. What a part says is for the parser:
 * each one ends with its own closing tag, so that parts which parse alone say the same together.
 * @returns null where that cannot be told at a glance: text beside the parts, comments, tags left open.
 * @example cutPieces('<h1>A</h1> <p>B</p>') // ['<h1>A</h1>', '<p>B</p>']
 */
export function cutPieces(markup: string): readonly string[] | null {
  if (/<[!?]/.test(markup)) return null;
  const pieces: string[] = [];
  let depth = 0;
  let start = 0;
  let end = 0;
  for (const { 0: tag, 1: slash, 2: name = '', index } of markup.matchAll(anyTag)) {
    const isEmpty = emptyTags.has(name);
    if (depth === 0) {
      if (slash !== '' || (tag.endsWith('/>') && !isEmpty)) return null;
      if (markup.slice(end, index).trim() !== '') return null;
      start = index;
    }
    if (slash !== '') depth -= 1;
    else if (!isEmpty && !tag.endsWith('/>')) depth += 1;
    if (depth > 0) continue;
    end = index + tag.length;
    pieces.push(markup.slice(start, end));
  }
  return depth === 0 && markup.slice(end).trim() === '' ? pieces : null;
}

/**
 * The opening tag of a piece and what it holds; null for a piece of another name.
 * @example openPiece('<section class="keep"><p>A</p></section>', 'section')?.inner // '<p>A</p>'
 */
export function openPiece(piece: string, name: string) {
  const text = piece.trim();
  const start = text.indexOf('>') + 1;
  const end = text.length - `</${name}>`.length;
  const isNamed = text.startsWith(`<${name}`) && /[\s>]/.test(text.charAt(name.length + 1));
  if (!isNamed || start > end || !text.endsWith(`</${name}>`)) return null;
  return { tag: text.slice(0, start), inner: text.slice(start, end) };
}
