// A birth date and a later day arrive; the age on that day leaves, in whole units.

export type AgeUnit = 'years' | 'months' | 'weeks' | 'days';

const dayLength = 24 * 60 * 60 * 1000;
const daysAWeek = 7;
const monthsAYear = 12;

/**
 * Completed years, months, weeks or days; null for a day before the birth.
 * @param birth ISO day. @param day ISO day.
 * @example ageOn('1984-03-09', '2026-03-08', 'years') // 41
 */
export function ageOn(birth: string, day: string, unit: AgeUnit): number | null {
  if (day < birth) return null;
  const days = Math.round((Date.parse(day) - Date.parse(birth)) / dayLength);
  if (unit === 'days') return days;
  if (unit === 'weeks') return Math.floor(days / daysAWeek);
  const [from, to] = [birth, day].map((date) => date.split('-').map(Number));
  const [year = 0, month = 0, date = 0] = from ?? [];
  const [years = 0, months = 0, dates = 0] = to ?? [];
  const whole = (years - year) * monthsAYear + months - month - (dates < date ? 1 : 0);
  return unit === 'months' ? whole : Math.floor(whole / monthsAYear);
}
