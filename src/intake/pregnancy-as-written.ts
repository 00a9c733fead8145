// A measurement named gestational age arrives (HL7 v2 or FHIR); whole weeks leave, or null where they cannot be read.
import { meaningOfColumn } from './names.js';
import type { WrittenPatient } from './written.js';

/** Told by its name alone, for no code of it was seen in an opened source. */
export function saysPregnancyWeeks(name: string): boolean {
  return meaningOfColumn(name) === 'pregnancyWeeks';
}

/** True for a measurement that says only whether there is a pregnancy. */
export function saysPregnancy(name: string): boolean {
  return meaningOfColumn(name) === 'pregnant';
}

/** @example saysYes('Pregnant') // true */
export function saysYes(value: string | null): boolean {
  return /^(?:y|yes|true|positive|pregnant|currently pregnant)$/i.test((value ?? '').trim());
}

/** A pregnancy of which nobody says how far it is: later rooms hold results against every trimester. */
export const openPregnancy = { weeks: null, trimester: null } as const;

export function isOpen(pregnancy: WrittenPatient['pregnancy']): boolean {
  return pregnancy !== null && pregnancy.weeks === null && pregnancy.trimester === null;
}

/**
 * Completed weeks; days beside them are let go, as clinics count. Other units are not converted.
 * @example weeksOfPregnancy('20', 'weeks') // 20
 * @example weeksOfPregnancy('20w3d', null) // 20
 * @example weeksOfPregnancy('140', 'd') // null
 */
export function weeksOfPregnancy(value: string, unit: string | null): number | null {
  const written = `${value.trim()} ${unit ?? ''}`.trim();
  const [, weeks] =
    /^(\d{1,2})(?:\.0)?\s*(?:w|wk|wks|week|weeks|\{?weeks\}?)(?:\s*\+?\s*[0-6]\s*(?:d|day|days))?$/i.exec(
      written,
    ) ?? [];
  return weeks === undefined ? null : Number(weeks);
}

/** What a file of dated results says of a person and their pregnancy. */
type DatedPregnancy = {
  readonly patient: WrittenPatient;
  /** Weeks by the day they were told for. */
  readonly weeks: ReadonlyMap<string | null, number>;
  /** Days of which it says only that there was a pregnancy. */
  readonly pregnant: ReadonlySet<string | null>;
};

/** The person as of one day: weeks told for another day are not those of the sample. */
export function pregnantOn(
  day: string | null,
  { patient, weeks, pregnant }: DatedPregnancy,
): WrittenPatient {
  const told = weeks.get(day);
  if (told !== undefined) return { ...patient, pregnancy: { weeks: told, trimester: null } };
  return pregnant.has(day) ? { ...patient, pregnancy: openPregnancy } : patient;
}
