// A written date arrives; an ISO date and a time of day leave, or null where the order of day and month is not proved.

export type DateOrder = 'iso' | 'day-first' | 'month-first';
export type DateAsWritten = { readonly date: string; readonly time: string | null };

const isoShape =
  /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::\d{2}(?:\.\d+)?)?\s*(?:Z|[+-]\d{2}:?\d{2})?)?$/;
const yearFirst = /^(\d{4})[/.](\d{1,2})[/.](\d{1,2})(?:[ T](\d{1,2}):(\d{2})(?::\d{2})?)?$/;
const compact =
  /^((?:19|20)\d{2})(\d{2})(\d{2})(?:(\d{2})(\d{2})(?:\d{2}(?:\.\d+)?)?(?:[+-]\d{4})?)?$/;
const yearLast = /^(\d{1,2})([/.-])(\d{1,2})\2(\d{4})(?:[ T,]+(\d{1,2}):(\d{2})(?::\d{2})?)?$/;
const named =
  /^(\d{1,2})[ -]([A-Za-z]{3,9})\.?,?[ -](\d{4})(?:[ ,]+(\d{1,2}):(\d{2})(?::\d{2})?)?$/;
const months = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

/**
 * Reads a date. Digits with the year last need `order`, because 03/04/2026 is two days.
 * The time of day is as written, never moved to another zone. Null: not a date of the calendar, or order unknown.
 * @example readDate('2026-11-25 08:40') // { date: '2026-11-25', time: '08:40' }
 * @example readDate('25/11/2026', 'day-first') // { date: '2026-11-25', time: null }
 */
export function readDate(text: string, order: DateOrder | null = null): DateAsWritten | null {
  const written = text.trim();
  const plain = isoShape.exec(written) ?? yearFirst.exec(written) ?? compact.exec(written);
  if (plain !== null) return dated(plain[1], plain[2], plain[3], plain[4], plain[5]);
  const words = named.exec(written);
  if (words !== null) {
    const month = monthNumber(words[2] ?? '');
    return month === null ? null : dated(words[3], month, words[1], words[4], words[5]);
  }
  const last = yearLast.exec(written);
  if (last === null || order === null || order === 'iso') return null;
  return order === 'day-first'
    ? dated(last[4], last[3], last[1], last[5], last[6])
    : dated(last[4], last[1], last[3], last[5], last[6]);
}

/**
 * Order of day and month that a whole column proves: some part is over 12 and none speaks against it.
 * @example orderProvedBy(['03/04/2026', '25/04/2026']) // 'day-first'
 */
export function orderProvedBy(column: readonly string[]): DateOrder | null {
  const witness = new DateOrderWitness();
  for (const text of column) witness.hear(text);
  return witness.proved();
}

/** The same of a column whose dates come one by one. */
export class DateOrderWitness {
  private dayFirst = false;
  private monthFirst = false;

  hear(text: string): void {
    const match = yearLast.exec(text.trim());
    if (match === null) return;
    this.dayFirst ||= Number(match[1]) > monthsOfYear;
    this.monthFirst ||= Number(match[3]) > monthsOfYear;
  }

  proved(): DateOrder | null {
    if (this.dayFirst === this.monthFirst) return null;
    return this.dayFirst ? 'day-first' : 'month-first';
  }
}

/** True for a date whose day and month could be taken for each other, or wait for an order. */
export function needsOrder(text: string): boolean {
  return yearLast.test(text.trim());
}

const monthsOfYear = months.length;

function monthNumber(word: string): string | null {
  const index = months.findIndex((month) => month.startsWith(word.toLowerCase()));
  return index < 0 ? null : String(index + 1);
}

function dated(
  year = '',
  month = '',
  day = '',
  hour: string | undefined = undefined,
  minute: string | undefined = undefined,
): DateAsWritten | null {
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const read = new Date(`${date}T00:00:00Z`);
  if (Number.isNaN(read.getTime()) || read.toISOString().slice(0, 10) !== date) return null;
  if (hour === undefined || minute === undefined) return { date, time: null };
  if (Number(hour) > 23 || Number(minute) > 59) return null;
  return { date, time: `${hour.padStart(2, '0')}:${minute}` };
}
