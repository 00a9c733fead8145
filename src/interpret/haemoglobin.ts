// In: a person in a group. Out: the guideline limits of haemoglobin, adjusted, with their rows.
import { type HaemoglobinRow, haemoglobinLimits } from '../knowledge/groups.js';
import type { Quantity } from '../report/report.js';
import { totalAdjustment } from './adjust.js';
import { type Answer, below, either } from './measure.js';
import type { Person } from './person.js';

/** A limit with the adjustment already added, g/L. */
export type HaemoglobinLimit = {
  readonly guideline: HaemoglobinRow['guideline'];
  readonly band: HaemoglobinRow['band'];
  readonly value: number;
  readonly row: HaemoglobinRow;
};

/**
 * Limits for the group in g/L; altitude and smoking raise WHO's, never another guideline's.
 * Empty of WHO rows where the altitude lies beyond WHO's table.
 * Source: WHO 2024 haemoglobin guideline, Tables 2 to 5; BSH 2020 guideline in pregnancy.
 * @example haemoglobinLimitsFor(womanAt2600Metres)[0]?.value // 138
 */
export function haemoglobinLimitsFor(person: Person): readonly HaemoglobinLimit[] {
  const total = totalAdjustment(person.adjustment);
  return haemoglobinLimits
    .filter((row) => row.group === person.group.slug)
    .flatMap((row): readonly HaemoglobinLimit[] => {
      const { guideline, band, value } = row;
      const add = guideline === 'bsh' ? 0 : total;
      return add === null ? [] : [{ guideline, band, value: value + add, row }];
    });
}

/** The line of one band, WHO's (or the adult limits carried past 65). */
export function bandLimit(
  person: Person,
  band: HaemoglobinRow['band'],
): HaemoglobinLimit | undefined {
  return haemoglobinLimitsFor(person).find((one) => one.guideline !== 'bsh' && one.band === band);
}

/** Whether any guideline calls this haemoglobin low; null where no guideline limit applies. */
export function belowGuideline(person: Person, quantity: Quantity): Answer | null {
  // The lines of moderate and severe lie under the one of anaemia, so they change no answer.
  const answers = haemoglobinLimitsFor(person).map(({ value }) => below(quantity, value));
  return answers.length === 0 ? null : either(...answers);
}

const severities = [
  ['severe', 'severe'],
  ['moderate', 'moderate'],
  ['mild', 'anaemia'],
] as const;

export type Severity = {
  readonly severity: (typeof severities)[number][0];
  /** The lowest line that the haemoglobin lies under. */
  readonly line: HaemoglobinLimit;
};

/** How low haemoglobin is by WHO's bands; null when it is not low, or when it cannot be told. */
export function severityOf(person: Person, quantity: Quantity): Severity | null {
  for (const [severity, band] of severities) {
    const line = bandLimit(person, band);
    if (line !== undefined && below(quantity, line.value) === 'yes') return { severity, line };
  }
  return null;
}
