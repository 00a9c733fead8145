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

const lessWords = String.raw`inf(?:\.|[e\u00E9]rieure?)?\s*[\u00E0a]|less\s+than|menor\s+(?:que|de)|kleiner\s+als|minder\s+dan|lager\s+dan`;
const moreWords = String.raw`sup(?:\.|[e\u00E9]rieure?)?\s*[\u00E0a]|(?:more|greater)\s+than|mayor\s+(?:que|de)|maior\s+que|gr\u00F6(?:\u00DF|ss)er\s+als|(?:meer|hoger)\s+dan`;
const number = String.raw`(?:(?:[<>\u2264\u2265]=?|${lessWords}|${moreWords})\s*)?[+-]?\d(?:[\d.,]*\d)?`;
/** A number that no slash or dash continues, so that a date or an interval is not taken for a value. */
const valueShape = new RegExp(
  String.raw`^(.*?[\p{L}%)\]*])[\s:|=]+(${number})(?=$|[\s*(\[|\p{L}%\u2191\u2193]|[,;](?:\s|$))[,;]?\s*(.*)$`,
  'iu',
);
const dashes = String.raw`-|\u2010|\u2011|\u2013|\u2014|\u2212|to|bis|\u00E0|a|at\u00E9`;
const intervalShape = new RegExp(
  String.raw`[([{]\s*[^()[\]{}]*\d[^()[\]{}]*[)\]}]|(?<![\d.,^*/])[+-]?\d+(?:[.,]\d+)?\s*%?\s*(?:${dashes})\s*\d+(?:[.,]\d+)?(?![\d/^])|(?:<|>|\u2264|\u2265)=?\s*\d+(?:[.,]\d+)?`,
  'iu',
);
const flagShape =
  /^(?:\(?(?:H|L|HH|LL|N|A|AA|HU|LU)\)?|\[(?:H|L|HH|LL)\]|\*{1,2}|!{1,2}|\u2191{1,2}|\u2193{1,2}|LOW|HIGH|Low|High|low|high|Below|Above)$/;
/** What some records print for a mark; its first word says all. */
const flagWords =
  /\b(below|above)\s+(?:low|high)\s+(?:reference|normal)\s+limit\b|\b(low|high)\s+(?:out\s+of|outside)\s+(?:reference\s+)?range\b/giu;
const silent =
  /^(?:ref|reference|range|interval|normal|values?|limits?|units?|result|val(?:or|eur)(?:e?s)?|de|di|refer\u00EAncia|referencia|r\u00E9f(?:\u00E9rence)?|riferimento|referenz(?:bereich)?|norme?s?|soll|v\.?r|v\.?n|[:|,;=-]+)[:.]?$/iu;

/**
 * Splits a line such as 'Ferritin   9 ug/L  (30 - 400)  L'. A mark may stand before or behind the value.
 * @example lineParts('Ferritin  9 ug/L (30 - 400) L') // { name: 'Ferritin', value: '9', unit: 'ug/L', … }
 */
export function lineParts(line: string): LineParts | null {
  const plain = withoutLeaders(line.trim().slice(0, longestLine));
  const [, before, value, behind] = valueShape.exec(plain) ?? [];
  if (before === undefined || value === undefined || behind === undefined) return null;
  const header = nameIn(before);
  const { sign, rest } = signBehind(behind);
  const found = intervalShape.exec(rest);
  const printed = found?.[0] ?? null;
  const others =
    printed === null
      ? rest
      : `${rest.slice(0, found?.index)} ${rest.slice((found?.index ?? 0) + printed.length)}`;
  const parts = sorted(others.split(/[\s|]+/).filter((word) => word !== ''));
  const unit = parts.unit ?? header.unit;
  const signed = withSign(value);
  // 'Ferritin less than 15 suggests low stores' is a comment, not a result.
  if (signed !== value && parts.leftOver.length > 0) return null;
  return {
    name: header.name,
    value: signed,
    unit,
    interval: readInterval(printed, unit),
    flag: parts.flag ?? sign ?? header.flag,
    leftOver: parts.leftOver.join(' '),
  };
}

/**
 * Results written one after the other, such as 'Hb 108 g/L, ferritin 9 ug/L'; null where the line holds one or none.
 * @example severalResults('Hb 108 g/L, ferritin 9 ug/L') // ['Hb 108 g/L', 'ferritin 9 ug/L']
 */
export function severalResults(line: string): readonly string[] | null {
  if (line.length > longestLine) return null;
  const pieces = line.split(/[,;]\s+/u).filter((piece) => piece.trim() !== '');
  const ours = pieces.filter((piece) => {
    const name = lineParts(piece)?.name;
    return name !== undefined && isKnown(name);
  });
  return ours.length > 1 ? pieces : null;
}

/** No line of a laboratory's sheet is longer; a longer one is prose. */
const longestLine = 300;

/** Dots that lead the eye from a name to its value. */
function withoutLeaders(line: string): string {
  return line.replace(/\.{3,}|(?:\s\.){3,}|\u2026+|_{3,}/gu, '  ');
}

const less = new RegExp(String.raw`^(?:${lessWords})\s*`, 'iu');
const more = new RegExp(String.raw`^(?:${moreWords})\s*`, 'iu');

/** A comparator in words means its sign. */
function withSign(value: string): string {
  return value.replace(less, '<').replace(more, '>');
}

/** '+' and '-' directly behind a value are a mark in some countries; before a number they belong to it. */
function signBehind(behind: string): { readonly sign: string | null; readonly rest: string } {
  const words = behind.replace(
    flagWords,
    (_, side?: string, height?: string) => side ?? height ?? '',
  );
  const [, sign, rest] = /^(\+{1,2}|-{1,2})(?:\s+(?!\d)(.*))?$/u.exec(words) ?? [];
  return sign === undefined ? { sign: null, rest: words } : { sign, rest: rest ?? '' };
}

function nameIn(before: string) {
  const whole = testHeader(before.replace(/[\s:|=]+$/u, ''));
  const [, name, flag] = /^(.*\S)\s+(\S+)$/u.exec(whole.name) ?? [];
  if (!isKnown(whole.name) && name !== undefined && flag !== undefined && flagShape.test(flag))
    return { name, unit: whole.unit, flag };
  const behindColon = /^[^:]+:\s*([^:]+)$/u.exec(whole.name)?.[1];
  if (behindColon !== undefined && !isKnown(whole.name) && isKnown(behindColon))
    return { name: behindColon, unit: whole.unit, flag: null };
  return { name: whole.name.replace(/\*+$/u, '').trim(), unit: whole.unit, flag: null };
}

function isKnown(name: string): boolean {
  return whichAnalyte({ name, code: null, unit: null, specimen: null }).is !== 'unknown';
}

function sorted(words: readonly string[]) {
  let unit: string | null = null;
  let flag: string | null = null;
  const leftOver: string[] = [];
  for (const written of words) {
    const word = written.replace(/(?<=.)[,;]+$/u, '');
    const code = readUnit(word);
    if (unit === null && code !== null) unit = word;
    else if (unit !== null && (word === unit || (code !== null && code === readUnit(unit))))
      continue;
    else if (flag === null && flagShape.test(capital(word))) flag = word.replace(/[()[\]]/g, '');
    else if (unit === null && /^[^\d\s]*[\p{L}\u00B5]+\/[\p{L}]+$/u.test(word)) unit = word;
    else if (!silent.test(word)) leftOver.push(written);
  }
  return { unit, flag, leftOver };
}

/** 'below' and 'Below' are one mark; 'h' and 'l' are units elsewhere and stay as they are. */
function capital(word: string): string {
  return /^(?:below|above)$/iu.test(word)
    ? `${word[0]?.toUpperCase() ?? ''}${word.slice(1).toLowerCase()}`
    : word;
}
