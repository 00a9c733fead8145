// In: a laboratory's interval as written, its unit. Out: both ends in our unit, and the string to copy into the letter.
import { readUnit } from '../knowledge/units.js';
import type { WrittenInterval } from '../intake/written.js';
import type { Place } from '../problem.js';
import type { Analyte } from '../terms.js';
import { copiedText } from './clean-text.js';
import { convert } from './convert.js';
import { type Findings, fault } from './findings.js';
import { readNumber } from './number.js';
import type { ReferenceInterval } from './report.js';

/** Ends of an interval in the unit it was printed in. */
type Ends = ReferenceInterval;

const longestCopied = 60;

export type IntervalRead = {
  readonly interval: ReferenceInterval | null;
  readonly copied: string | null;
};

/**
 * The laboratory's interval. Text that is no pair or limit is copied and compared with nothing.
 * Problems: both ends zero, low above high, two readings that disagree.
 * @example readInterval({ low: null, high: null, text: '10,5 - 20' }, 'mch', 'pg', place, into)
 *   // { interval: { low: 10.5, high: 20 }, copied: '10,5 - 20' }
 */
export function readInterval(
  written: WrittenInterval | null,
  analyte: Analyte,
  unit: string,
  place: Place,
  into: Findings,
): IntervalRead {
  if (written === null) return { interval: null, copied: null };
  const copied = copiedInterval(written);
  if (copied === null) return { interval: null, copied };
  const fromText = written.text === null ? null : readIntervalText(written.text, unit);
  const fromEnds = readEnds(written);
  const ends = fromEnds ?? fromText;
  if (ends === null) {
    into.notes.push(
      fault('interval-unread', place, 'cannot compare with the printed interval', {
        found: copied,
        expected: 'an interval such as 30 - 400 or < 5',
        remedy: 'It is copied into the letter as printed; guideline limits are used alone.',
      }),
    );
    return { interval: null, copied };
  }
  const wrong = faultOfEnds(ends, fromText);
  if (wrong !== null) {
    into.problems.push(fault(wrong.code, place, wrong.cannot, { found: copied, ...wrong.more }));
    return { interval: null, copied };
  }
  return { interval: inOurUnit(ends, analyte, unit), copied };
}

function inOurUnit(ends: Ends, analyte: Analyte, unit: string): ReferenceInterval {
  return {
    low: ends.low === null ? null : convert(analyte, ends.low, unit),
    high: ends.high === null ? null : convert(analyte, ends.high, unit),
  };
}

type EndsFault = { code: string; cannot: string; more: { expected: string; remedy?: string } };

function faultOfEnds(ends: Ends, alsoPrinted: Ends | null): EndsFault | null {
  if (alsoPrinted !== null && (alsoPrinted.low !== ends.low || alsoPrinted.high !== ends.high))
    return {
      code: 'interval-contradiction',
      cannot: 'cannot use an interval whose ends and printed text disagree',
      more: { expected: 'the same limits in both' },
    };
  if (ends.low === null || ends.high === null) return null;
  if (ends.low === 0 && ends.high === 0)
    return {
      code: 'interval-zero',
      cannot: 'cannot compare with an interval from zero to zero',
      more: { expected: 'the limits printed on the report, or none' },
    };
  if (ends.low < ends.high) return null;
  return {
    code: 'interval-reversed',
    cannot: 'cannot use an interval whose low end is not below its high end',
    more: { expected: 'the lower limit first' },
  };
}

/** Ends from their own fields; null when there are none or they are not plain numbers. */
function readEnds({ low, high }: WrittenInterval): Ends | null {
  const [from = null, to = null] = [low, high].map((side) =>
    blank(side) ? null : plain(side ?? ''),
  );
  if (from === null && to === null) return null;
  return Number.isNaN(from) || Number.isNaN(to) ? null : { low: from, high: to };
}

/**
 * Ends of an interval printed as text, in the unit it was printed in; null when it reads otherwise.
 * @example readIntervalText('30–400 ug/L', 'ug/L') // { low: 30, high: 400 }
 */
function readIntervalText(text: string, unit: string): Ends | null {
  const bare = withoutUnit(text.normalize('NFKC').trim(), unit).replace(/^[([](.*)[)\]]$/, '$1');
  const pair =
    /^([\d.,]+)\s*(?:-|\u2013|\u2014|\u2212|\u2010|\u2011|\bto\b|\.\.)\s*([\d.,]+)$/u.exec(bare);
  if (pair !== null) return readEnds({ low: pair[1] ?? null, high: pair[2] ?? null, text: null });
  const limit = /^(<=?|\u2264|>=?|\u2265|up to)\s*([\d.,]+)$/iu.exec(bare);
  if (limit === null) return null;
  const [, sign = '', value = null] = limit;
  const above = ['>', '>=', '\u2265'].includes(sign);
  return readEnds({ low: above ? value : null, high: above ? null : value, text: null });
}

/** Text before a trailing unit that is the value's own; another unit stays, and the text goes unread. */
function withoutUnit(text: string, unit: string): string {
  // Stryker disable next-line EqualityOperator: behind the end there is no unit.
  for (let at = 1; at < text.length; at += 1)
    // Not between two digits: the unit of a fraction is written 1, and '0.51' must not become '0.5'.
    if (/[)\]\s]|\d\D/.test(text.slice(at - 1, at + 1)) && readUnit(text.slice(at)) === unit)
      return text.slice(0, at);
  return text;
}

function plain(side: string): number {
  const read = readNumber(side);
  return read.ok && read.comparator === null ? read.value : Number.NaN;
}

function blank(side: string | null): boolean {
  return (side ?? '').trim() === '';
}

function copiedInterval({ low, high, text }: WrittenInterval): string | null {
  const printed = text !== null && text.trim() !== '' ? text : joined(low, high);
  return printed === null ? null : copiedText(printed).slice(0, longestCopied);
}

function joined(low: string | null, high: string | null): string | null {
  if (blank(low) && blank(high)) return null;
  if (blank(low)) return `≤ ${high}`;
  return blank(high) ? `≥ ${low}` : `${low}–${high}`;
}
