// A document of blocks arrives; the same letter as plain text leaves, to be read aloud or put into braille.
import LineBreaker from 'linebreak';
import type { Block, Cell, Direction, LetterDocument, Run } from './block.js';
import { hasRightToLeft } from './read-runs.js';

const columns = 70;

type Voice = { readonly dir: Direction };

/**
 * Writes the letter as UTF-8 text: lines of at most 70 columns, headings on lines of their own, one thought
 * a line where the letter has a list, rows of tables as lines, pictures as their descriptions.
 * @example writeText(document) // 'Your iron blood test results\n\nDear Ana Duarte\n…'
 */
export function writeText(document: LetterDocument): string {
  const voice: Voice = { dir: document.dir };
  const header = document.header === null ? [] : [wrap(speak(document.header.runs, voice))];
  const footer = document.footer === null ? [] : [wrap(speak(document.footer.runs, voice))];
  const parts = [...header, ...blocksAloud(document.blocks, voice), ...footer];
  const whole = parts.filter((part) => part !== '').join('\n\n');
  return `${whole.replaceAll('\u2060', '')}\n`;
}

/** One string a block; blank lines come between them. */
function blocksAloud(blocks: readonly Block[], voice: Voice): readonly string[] {
  const parts: string[] = [];
  let lastWasAddress = false;
  for (const block of blocks) {
    const isAddress = block.kind === 'paragraph' && ['address', 'label'].includes(block.look);
    const said = blockAloud(block, voice);
    const last = parts.at(-1);
    const [only] = said;
    if (isAddress && lastWasAddress && last !== undefined && only !== undefined) {
      parts[parts.length - 1] = `${last}\n${only}`;
    } else parts.push(...said);
    lastWasAddress = isAddress;
  }
  return parts;
}

/** Isolates serve no one where every letter runs left to right. */
function plainly(text: string, { dir }: Voice): string {
  const mixed = dir === 'rtl' || hasRightToLeft(text);
  const whole = text.replace(/[\u2066-\u2068][^\u2066-\u2069]*\u2069/g, unbroken);
  return mixed ? whole : whole.replace(/[\u2066-\u2069]/g, '');
}

/** A number and its unit stay on one line: UAX 14 breaks neither before nor after a word joiner. */
function unbroken(text: string): string {
  return text.length > longestWhole ? text : text.replace(/[ /-]/g, '$&\u2060');
}
const longestWhole = 20;

function blockAloud(block: Block, voice: Voice): readonly string[] {
  switch (block.kind) {
    case 'heading':
    case 'paragraph':
      return [wrap(speak(block.runs, voice))];
    case 'list':
      return [
        block.items
          .map((item, index) => hang(markOf(block, index), blocksAloud(item, voice).join('\n\n')))
          .join('\n'),
      ];
    case 'table':
      return tableAloud(block, voice);
    case 'notice':
      return blocksAloud(block.blocks, voice);
    case 'figure':
      return [
        wrap(plainly(block.scene.description, voice)),
        ...(block.caption === null ? [] : [wrap(speak(block.caption, voice))]),
      ];
    case 'section':
      return blocksAloud(block.blocks, block.dir === null ? voice : { dir: block.dir });
    case 'pair':
      return [...blockAloud(block.first, voice), ...blockAloud(block.second, voice)];
    case 'logo':
    case 'page-break':
    case 'rule':
      return [];
  }
}

function markOf(list: Block & { readonly kind: 'list' }, index: number): string {
  if (list.ticks) return '[ ] ';
  return list.ordered ? `${index + 1}. ` : '- ';
}

/** A row is a line: each cell after the head of its column, so that no cell needs to be looked up. */
function tableAloud(table: Block & { readonly kind: 'table' }, voice: Voice): readonly string[] {
  const cellText = (cell: Cell) => blocksAloud(cell.blocks, voice).join(' ').replace(/\n/g, ' ');
  const heads = table.head.at(-1)?.map(cellText) ?? [];
  const rows = table.rows.map((row) =>
    wrap(
      row
        .map((cell, index) => {
          const head = heads[index] ?? '';
          return cell.header || head === '' ? cellText(cell) : `${head}: ${cellText(cell)}`;
        })
        .filter((text) => text !== '')
        .join('; '),
    ),
  );
  return [...(table.caption === null ? [] : [wrap(speak(table.caption, voice))]), rows.join('\n')];
}

/** Isolates are kept only where something runs from right to left; elsewhere they are noise. */
function speak(runs: readonly Run[], voice: Voice): string {
  const mixed = voice.dir === 'rtl' || runs.some(({ text }) => hasRightToLeft(text));
  return runs
    .map(({ text, isolate }) => {
      if (isolate === null) return text;
      if (!mixed) return unbroken(text);
      return `${isolate === 'ltr' ? '\u2066' : '\u2067'}${unbroken(text)}\u2069`;
    })
    .join('');
}

/** Breaks lines where UAX 14 allows it; a longer word stands alone on its line. */
function wrap(text: string, room = columns): string {
  const breaker = new LineBreaker(text);
  const lines: string[] = [];
  let line = '';
  let start = 0;
  for (let next = breaker.nextBreak(); next !== null; next = breaker.nextBreak()) {
    const piece = text.slice(start, next.position);
    // 115–155 is one thing: half of a range on a line of its own would read as a number.
    if (/\d[-\u2013]$/.test(piece) && /^\d/.test(text.slice(next.position))) continue;
    start = next.position;
    if (line !== '' && columnsOf((line + piece).trimEnd()) > room) {
      lines.push(line.trimEnd());
      line = '';
    }
    line += piece;
  }
  return [...lines, line.trimEnd()].join('\n');
}

/** The mark stands before the first line, the others follow under it. */
function hang(mark: string, text: string): string {
  const indent = ' '.repeat(mark.length);
  const lines = text
    .split('\n\n')
    .map((part) => wrap(part.replace(/\n(?=\S)/g, ' '), columns - mark.length))
    .join('\n')
    .split('\n');
  return lines.map((line, index) => (index === 0 ? mark : indent) + line).join('\n');
}

const wide =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\u3000-\u303F\uFF01-\uFF60]/u;

const plainColumns = /^[\x20-\x7E]*$/;

/** Ideographs take two columns, marks and invisible characters none. */
function columnsOf(text: string): number {
  if (plainColumns.test(text)) return text.length;
  let count = 0;
  for (const character of text) {
    if (/[\p{M}\p{Cf}]/u.test(character)) continue;
    count += wide.test(character) ? 2 : 1;
  }
  return count;
}
