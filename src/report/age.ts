// In: birth date, age in years or months, date of the sample. Out: whole months of age at the sample.
import type { WrittenPatient } from '../intake/written.js';
import { spanOf } from '../knowledge/plausible.js';
import type { Place } from '../problem.js';
import { monthsBetween, readDate } from './date.js';
import { type Findings, fault } from './findings.js';

export type AgeRead = { readonly birthDate: string | null; readonly ageMonths: number | null };

const monthsAYear = 12;

/**
 * Age on the day of the sample: from the birth date, else the months, else the years.
 * Problems: no such date, born after the sample, ages that contradict, under 6 months, age 0 without months.
 * @example readAge({ …, birthDate: '1990-05-02' }, '2026-05-01', place, into) // { birthDate: '1990-05-02', ageMonths: 431 }
 */
export function readAge(
  patient: WrittenPatient,
  collected: string | null,
  place: Place,
  into: Findings,
): AgeRead {
  const birthDate = readBirthDate(patient.birthDate, place, into);
  const born =
    birthDate === null || collected === null ? null : monthsBetween(birthDate, collected);
  if ((born ?? 0) < 0) {
    const at = { ...place, field: 'patient.birthDate' };
    into.problems.push(fault('born-after-sample', at, 'the sample is dated before the birth'));
    // Stryker disable next-line ObjectLiteral: the report is refused, whatever the age.
    return { birthDate, ageMonths: null };
  }
  const told = toldMonths(patient, place, into);
  if (born !== null && told !== null && !agree(born, told))
    into.problems.push(contradiction(place, 'the birth date and the age'));
  const ageMonths = born ?? told?.from ?? null;
  return { birthDate, ageMonths: believable(ageMonths, place, into) };
}

/** Months that the written age leaves open: '34 years' is 408 to 419 months. */
type Told = { readonly from: number; readonly to: number };

/** A year either way: an age may have been noted at the last birthday or on the day of printing. */
function agree(born: number, told: Told): boolean {
  const slack = monthsAYear;
  return born >= told.from - slack && born <= told.to + slack;
}

function toldMonths(
  { ageYears, ageMonths }: WrittenPatient,
  place: Place,
  into: Findings,
): Told | null {
  const at = { ...place, field: ageMonths === null ? 'patient.ageYears' : 'patient.ageMonths' };
  for (const age of [ageYears, ageMonths])
    if (age !== null && !(Number.isFinite(age) && age >= 0)) {
      const expected = 'a number from 0';
      into.problems.push(fault('age-unread', at, 'cannot read the age', { expected }));
      return null;
    }
  const years = ageYears === null ? null : yearsAsMonths(ageYears);
  if (ageMonths === null) {
    if (ageYears !== 0) return years;
    const expected = 'the age in months, or a birth date';
    into.problems.push(fault('age-in-months-needed', at, 'age 0 is not enough', { expected }));
    return null;
  }
  const months = Math.floor(ageMonths);
  if (years !== null && (months < years.from || months > years.to))
    into.problems.push(contradiction(place, 'the age in years and in months'));
  return { from: months, to: months };
}

/** Whole years leave twelve months open; a fraction such as 0.75 was worked out from months. */
function yearsAsMonths(years: number): Told {
  const from = Math.floor(years * monthsAYear + 1e-6);
  return { from, to: Number.isInteger(years) ? from + monthsAYear - 1 : from };
}

function contradiction(place: Place, what: string) {
  const at = { ...place, field: 'patient' };
  return fault('age-contradiction', at, `${what} contradict each other`, {
    expected: 'one age, on the day of the sample',
  });
}

function believable(ageMonths: number | null, place: Place, into: Findings): number | null {
  if (ageMonths === null) return null;
  const { low, high } = spanOf('age-months');
  const at = { ...place, field: 'patient' };
  if (ageMonths < low) {
    into.problems.push(
      fault('too-young', at, `no letter is made for a child under ${low} months`, {
        remedy: 'The limits used here begin at that age; a clinician reads these results.',
      }),
    );
    return null;
  }
  if (ageMonths <= high) return ageMonths;
  const expected = `at most ${high / monthsAYear} years`;
  into.problems.push(fault('too-old', at, 'cannot believe the age', { expected }));
  return null;
}

function readBirthDate(written: string | null, place: Place, into: Findings): string | null {
  if (written === null || written.trim() === '') return null;
  const date = readDate(written);
  if (date !== null) return date;
  const at = { ...place, field: 'patient.birthDate' };
  const expected = 'a date such as 1990-05-02';
  into.problems.push(fault('birth-date-unread', at, 'cannot read the birth date', { expected }));
  return null;
}
