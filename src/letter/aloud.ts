// Strings as a laboratory wrote them arrive; how they are said on the phone leaves, or that a language cannot say them.
import { readUnit } from '../knowledge/units.js';
import { isSpokenKey } from './english.js';
import { CannotSay, ltr, type Voice } from './say.js';

const decimal = /^(\d+)(?:[.,](\d+))?$/;

/**
 * Digits as they are said: whole numbers as they stand, decimals digit by digit after the point.
 * @example sayNumber(voice, '12.5') // '12 point 5'
 */
function sayNumber({ aloud }: Voice, written: string): string {
  const [, whole, digits] = decimal.exec(written) ?? [];
  if (whole === undefined) throw new CannotSay(`spoken: ${written}`);
  if (digits === undefined) return whole;
  return plain(aloud('point', { whole: ltr(whole), digits: ltr([...digits].join(' ')) }).text);
}

const signs = { '<': 'less-than', '>': 'more-than', '<=': 'at-most', '>=': 'at-least' } as const;

/**
 * A value with its unit, as a person says it.
 * @throws CannotSay for a number or unit that the language has no words for.
 * @example sayValue(voice, '<5', 'µg/L') // 'less than 5 micrograms per litre'
 */
export function sayValue(voice: Voice, value: string, unit: string): string {
  const [, sign = '', number = ''] =
    /^\s*(<=|>=|[<>\u2264\u2265])?\s*(.*?)\s*$/.exec(
      value.replace('\u2264', '<=').replace('\u2265', '>='),
    ) ?? [];
  const said = sayNumber(voice, number);
  const key = Object.entries(signs).find(([each]) => each === sign)?.[1];
  const compared = key === undefined ? said : plain(voice.aloud(key, { number: ltr(said) }).text);
  if (unit.trim() === '') return compared;
  const unitKey = `unit.${slugOf(readUnit(unit) ?? unit)}`;
  if (!isSpokenKey(unitKey)) throw new CannotSay(`spoken: ${unit}`);
  return plain(voice.aloud(unitKey, { number: ltr(compared) }).text);
}

/**
 * A printed interval.
 * @example sayInterval(voice, '30–400') // '30 to 400'
 */
export function sayInterval(voice: Voice, interval: string): string {
  const ends = /^\s*(\d+(?:[.,]\d+)?)\s*(?:-|\u2013|\u2014|to)\s*(\d+(?:[.,]\d+)?)\s*$/.exec(
    interval,
  );
  if (ends === null) return sayValue(voice, interval, '');
  const [, low = '', high = ''] = ends;
  const [from, to] = [sayNumber(voice, low), sayNumber(voice, high)];
  return plain(voice.aloud('range', { low: ltr(from), high: ltr(to) }).text);
}

/** A phone number is read digit by digit, with a pause at each gap. @example sayPhone('555-0142') // '5 5 5, 0 1 4 2' */
export function sayPhone(number: string): string {
  return number
    .split(/[\s()-]+/)
    .filter((part) => part !== '')
    .map((part) => [...part].join(' '))
    .join(', ');
}

const isPhone = /^\+?\d[\d\s()-]*\d$/;

/** Every number to call in a sentence, digit by digit. Dates and other values stay. */
export function sayPhones(text: string): string {
  return text.replace(/\u2066([^\u2069]*)\u2069/g, (whole, inner: string) => {
    const digits = inner.replace(/\D/g, '').length;
    return isPhone.test(inner) && digits >= 6 ? sayPhone(inner) : whole;
  });
}

/** @example slugOf('10*12/L') // '10-12-per-l' */
function slugOf(code: string): string {
  return code.replace('%', 'percent').replace('/', '-per-').replace('*', '-').toLowerCase();
}

const plain = (text: string): string => text.replace(/[\u2066-\u2069]/g, '');
