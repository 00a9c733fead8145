// Logical text arrives; embedding levels, and the order of pieces on a line, leave (Unicode Standard Annex 9).
import bidiFactory from 'bidi-js';
import type { Direction } from '../../direction.js';

// The package is CommonJS: at run time the default import is the factory itself, which its types miss.
const bidi = (bidiFactory as unknown as typeof bidiFactory.default)();

export const isolates = { ltr: '\u2066', rtl: '\u2067', end: '\u2069' } as const;

/** Direction marks, embeddings and isolates, soft hyphens, zero-width spaces: they act, and are not painted. */
const unpainted = /[\u00AD\u061C\u200B\u200E\u200F\u202A-\u202E\u2060\u2066-\u2069\uFEFF]/;

/** True for a character that steers layout and has no glyph. */
export function isUnpainted(character: string): boolean {
  return unpainted.test(character);
}

/** Text without characters that steer layout: what a reader should hear and copy. */
export function paintedText(text: string): string {
  return text.replace(new RegExp(unpainted.source, 'g'), '');
}

/** Anything that can raise a level above 0 in a left-to-right paragraph: right-to-left letters and controls. */
const turns =
  /[\u0590-\u08FF\u200F\u202B\u202E\u2067\u2068\uFB1D-\uFDFF\uFE70-\uFEFC]|[\uD802\uD803\uD83A\uD83B]/;

/**
 * Embedding level of every UTF-16 unit: odd runs right to left.
 * @example levelsOf('12 g/L', 'rtl')[0] // 2
 */
export function levelsOf(text: string, dir: Direction): Uint8Array {
  if (dir === 'ltr' && !turns.test(text)) return new Uint8Array(text.length);
  return bidi.getEmbeddingLevels(text, dir).levels;
}

/**
 * Rule L2: from the highest level down to the lowest odd one, reverse every stretch at that level or higher.
 * @param levels one for each piece of a line, in logical order.
 * @returns places in `levels`, from left to right.
 * @example visualOrder([1, 2, 1]) // [2, 1, 0]
 */
export function visualOrder(levels: readonly number[]): readonly number[] {
  const order = levels.map((_, at) => at);
  const highest = Math.max(0, ...levels);
  const odd = levels.filter((level) => level % 2 === 1);
  const lowest = odd.length === 0 ? highest + 1 : Math.min(...odd);
  for (let level = highest; level >= lowest; level -= 1) {
    let from = 0;
    while (from < order.length) {
      if ((levels[order[from] ?? 0] ?? 0) < level) {
        from += 1;
        continue;
      }
      let to = from;
      while (to < order.length && (levels[order[to] ?? 0] ?? 0) >= level) to += 1;
      order.splice(from, to - from, ...order.slice(from, to).reverse());
      from = to;
    }
  }
  return order;
}
