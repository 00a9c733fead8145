// A printed reference interval arrives, such as '30 - 400' or '< 5'; its two sides leave as written.
import type { WrittenInterval } from './written.js';

const longestInterval = 60;
const number = String.raw`([+-]?\d+(?:[.,]\d+)?)`;
const dash = String.raw`\s*(?:-|\u2013|\u2014|\u2010|\u2011|\u2212|to|\.\.|~|a|\u00E0|bis|at\u00E9)\s*`;
/** Words that only say that an interval follows. */
const label =
  /^(?:ref(?:erence)?|range|interval|normal?|norm|r\u00E9f|v\.?r|v\.?n)\.?(?:\s+(?:range|interval|values?))?\s*[:.]?\s*(?=[<>\u2264\u2265=\d-])/iu;
const between = new RegExp(`^${number}${dash}${number}$`, 'iu');
const oneSided = new RegExp(String.raw`^(<=|>=|=<|=>|<|>|\u2264|\u2265)\s*${number}$`, 'u');
const trailing = new RegExp(String.raw`^${number}\s*-\s*$`, 'u');
const leading = new RegExp(String.raw`^-\s+${number}$`, 'u');

/**
 * Reads the sides of a printed interval; text that fits no known shape keeps both sides null.
 * Each side stays as written. Brackets round the whole and a repeated unit behind it are passed over.
 * @example readInterval('(30 - 400)') // { low: '30', high: '400', text: '30 - 400' }
 * @example readInterval('<5') // { low: null, high: '5', text: '<5' }
 */
export function readInterval(
  printed: string | null,
  unit: string | null = null,
): WrittenInterval | null {
  if (printed === null) return null;
  const whole = printed.trim();
  const text = whole.length > longestInterval ? whole : withoutBrackets(whole).replace(label, '');
  if (text === '') return null;
  if (text.length > longestInterval) return { low: null, high: null, text };
  const bare = withoutUnit(text, unit);
  const both = between.exec(bare);
  if (both !== null) return { low: both[1] ?? null, high: both[2] ?? null, text };
  const one = oneSided.exec(bare);
  if (one !== null) {
    const limit = one[2] ?? null;
    return (one[1] ?? '').match(/[<\u2264]/) === null
      ? { low: limit, high: null, text }
      : { low: null, high: limit, text };
  }
  const low = trailing.exec(bare)?.[1] ?? null;
  const high = leading.exec(bare)?.[1] ?? null;
  return { low, high, text };
}

function withoutBrackets(text: string): string {
  const inside = /^[([{]\s*([^()[\]{}]*?)\s*[)\]}]$/u.exec(text);
  return inside?.[1] ?? text;
}

/** The unit may stand behind either side or behind both. */
function withoutUnit(text: string, unit: string | null): string {
  if (unit === null || unit === '' || !text.endsWith(unit)) return text;
  const bare = text.slice(0, -unit.length).trim();
  const [first = '', ...others] = bare.split(unit);
  return others.length === 1 && /\d\s*$/.test(first) ? first + others.join('') : bare;
}
