// A measurement named gestational age arrives (HL7 v2 or FHIR); whole weeks leave, or null where they cannot be read.
import { meaningOfColumn } from './names.js';

/** Told by its name alone, for no code of it was seen in an opened source. */
export function saysPregnancyWeeks(name: string): boolean {
  return meaningOfColumn(name) === 'pregnancyWeeks';
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
