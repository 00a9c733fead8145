// In: digits and a comparator as a laboratory wrote them. Out: a number, or why it is none.
import type { Comparator } from './report.js';

export type NumberRead =
  | { readonly ok: true; readonly value: number; readonly comparator: Comparator | null }
  | { readonly ok: false; readonly code: string; readonly expected: string };

const comparators: Readonly<Record<string, Comparator>> = {
  '<': '<',
  '<=': '<=',
  '=<': '<=',
  '≤': '<=',
  '>': '>',
  '>=': '>=',
  '=>': '>=',
  '≥': '>=',
};

const longest = 12;

/**
 * A plain positive decimal with one point or one comma, perhaps after '<', '<=', '>' or '>='.
 * '1,346' is refused: it may mean 1346 or 1.346.
 * @example readNumber('12,5') // { ok: true, value: 12.5, comparator: null }
 * @example readNumber('<5') // { ok: true, value: 5, comparator: '<' }
 * @example readNumber('1e3') // { ok: false, code: 'value-unread', … }
 */
export function readNumber(written: string): NumberRead {
  const match = /^\s*([<>=\u2264\u2265]{1,2})?\s*(\S*)\s*$/u.exec(written);
  const digits = match?.[2] ?? '';
  const sign = match?.[1] ?? null;
  if (digits === '') return refused('value-missing', 'digits such as 30');
  if (digits.length > longest) return refused('value-too-long', `at most ${longest} characters`);
  if (!/^\d+(?:[.,]\d+)?$/.test(digits))
    return refused('value-unread', 'digits such as 30 or 12.5');
  if (/^[1-9]\d{0,2},\d{3}$/.test(digits)) {
    const [whole, rest] = digits.split(',');
    return refused('value-ambiguous', `${whole}${rest} or ${whole}.${rest}`);
  }
  const comparator = sign === null ? null : readComparator(sign);
  if (sign !== null && comparator === null) return refused('value-unread', 'one of < <= > >=');
  return { ok: true, value: Number(digits.replace(',', '.')), comparator };
}

/**
 * Comparator as one of four, or null when it is none of them.
 * @example readComparator('≤') // '<='
 */
export function readComparator(written: string): Comparator | null {
  return comparators[written.trim()] ?? null;
}

function refused(code: string, expected: string): NumberRead {
  return { ok: false, code, expected };
}
