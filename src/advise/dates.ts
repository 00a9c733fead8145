// An ISO date and a number of days arrive; a later ISO date leaves. No clock and no time zone.

/**
 * A date some whole days later, in the proleptic Gregorian calendar.
 * @throws when `date` is not a date of the form YYYY-MM-DD: our bug, intake has read it already.
 * @example addDays('2026-02-27', 3) // '2026-03-02'
 */
export function addDays(date: string, days: number): string {
  const start = Date.parse(`${date}T00:00:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(start))
    throw new Error('advise: the date of the letter is not an ISO date');
  return new Date(start + days * 86_400_000).toISOString().slice(0, 10);
}
