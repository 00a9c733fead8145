// One pasted line arrives; the parts of a result leave, as written, or null where the line holds none.
import { readUnit } from '../../knowledge/units.js';
import { readInterval } from '../interval-as-written.js';
import { testHeader } from '../table/test-header.js';
import { whichAnalyte } from '../which-analyte.js';
import type { WrittenInterval } from '../written.js';

export type LineParts = {
  readonly name: string;
  readonly value: string;
  readonly unit: string | null;
  readonly interval: WrittenInterval | null;
  readonly flag: string | null;
  /** Words behind the result that are no part of it. */
  readonly leftOver: string;
};

const number = String.raw`(?:[<>≤≥]=?\s*)?[+-]?\d[\d.,]*`;
/** A number that no slash or dash continues, so that a date or an interval is not taken for a value. */
const valueShape = new RegExp(
  String.raw`^(.*?[\p{L}%)\]*])[\s:|=]+(${number})(?=$|[\s*(\[|\p{L}%↑↓])\s*(.*)$`,
  'u',
);
const intervalShape =
  /[([{]\s*[^()[\]{}]*\d[^()[\]{}]*[)\]}]|(?<![\d.,^*/])[+-]?\d+(?:[.,]\d+)?\s*(?:-|–|—|to)\s*\d+(?:[.,]\d+)?(?![\d/^])|(?:<|>|≤|≥)=?\s*\d+(?:[.,]\d+)?/u;
const flagShape =
  /^(?:\(?(?:H|L|HH|LL|N|A|AA|HU|LU)\)?|\[(?:H|L|HH|LL)\]|\*{1,2}|↑{1,2}|↓{1,2}|LOW|HIGH|Low|High|low|high)$/;
const silent =
  /^(?:ref|reference|range|interval|normal|ref\.|values?|limits?|units?|result|[:|,;=-]+)[:.]?$/i;

/**
 * Splits a line such as 'Ferritin   9 ug/L  (30 - 400)  L'. A mark may stand before or behind the value.
 * @example lineParts('Ferritin  9 ug/L (30 - 400) L') // { name: 'Ferritin', value: '9', unit: 'ug/L', … }
 */
export function lineParts(line: string): LineParts | null {
  const [, before, value, rest] = valueShape.exec(line.trim().slice(0, longestLine)) ?? [];
  if (before === undefined || value === undefined || rest === undefined) return null;
  const header = nameIn(before);
  const found = intervalShape.exec(rest);
  const printed = found?.[0] ?? null;
  const others =
    printed === null
      ? rest
      : `${rest.slice(0, found?.index)} ${rest.slice((found?.index ?? 0) + printed.length)}`;
  const parts = sorted(others.split(/[\s|]+/).filter((word) => word !== ''));
  const unit = parts.unit ?? header.unit;
  return {
    name: header.name,
    value,
    unit,
    interval: readInterval(printed, unit),
    flag: parts.flag ?? header.flag,
    leftOver: parts.leftOver.join(' '),
  };
}

/** No line of a laboratory's sheet is longer; a longer one is prose. */
const longestLine = 300;

function nameIn(before: string) {
  const whole = testHeader(before.replace(/[\s:|=]+$/u, ''));
  const [, name, flag] = /^(.*\S)\s+(\S+)$/u.exec(whole.name) ?? [];
  const known = whichAnalyte({ name: whole.name, code: null, unit: null, specimen: null }).is;
  if (known === 'unknown' && name !== undefined && flag !== undefined && flagShape.test(flag))
    return { name, unit: whole.unit, flag };
  return { name: whole.name.replace(/\*+$/u, '').trim(), unit: whole.unit, flag: null };
}

function sorted(words: readonly string[]) {
  let unit: string | null = null;
  let flag: string | null = null;
  const leftOver: string[] = [];
  for (const word of words) {
    if (unit === null && readUnit(word) !== null) unit = word;
    else if (flag === null && flagShape.test(word)) flag = word.replace(/[()[\]]/g, '');
    else if (unit === null && /^[^\d\s]*[\p{L}µ]+\/[\p{L}]+$/u.test(word)) unit = word;
    else if (!silent.test(word)) leftOver.push(word);
  }
  return { unit, flag, leftOver };
}
