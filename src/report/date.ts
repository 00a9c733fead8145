// In: a date as written. Out: an ISO date that exists in the calendar, and the months between two of them.

/**
 * ISO date of 'YYYY-MM-DD', of an ISO date and time, or of HL7's YYYYMMDD; null when it is none or no such day exists.
 * '03/04/2026' is refused, for it is two days in two countries.
 * @example readDate('2024-02-29T08:30:00Z') // '2024-02-29'
 * @example readDate('2023-02-29') // null
 */
export function readDate(written: string): string | null {
  const match =
    /^(\d{4})-(\d{2})-(\d{2})(?:[T ]\d{2}:?\d{2}.*)?$/.exec(written.trim()) ??
    /^(\d{4})(\d{2})(\d{2})(?:\d{2,6}.*)?$/.exec(written.trim());
  if (match === null) return null;
  const [year = 0, month = 0, day = 0] = [match[1], match[2], match[3]].map(Number);
  if (year < 1850 || month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return null;
  return `${match[1]}-${match[2]}-${match[3]}`;
}

/**
 * Whole months from one ISO date to a later one; negative when the order is reversed.
 * @example monthsBetween('2020-01-31', '2020-02-29') // 0
 * @example monthsBetween('2020-01-15', '2021-01-15') // 12
 */
export function monthsBetween(from: string, to: string): number {
  const [fromYear = 0, fromMonth = 0, fromDay = 0] = from.split('-').map(Number);
  const [toYear = 0, toMonth = 0, toDay = 0] = to.split('-').map(Number);
  const months = (toYear - fromYear) * 12 + toMonth - fromMonth;
  return toDay < fromDay ? months - 1 : months;
}

function daysIn(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}
