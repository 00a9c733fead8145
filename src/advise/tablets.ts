// The clinician's word that iron tablets were prescribed and the person arrive; how to take them leaves.
import { medicineGaps } from '../knowledge/medicine-gaps.js';
import { tabletPointRows } from '../knowledge/tablet-points.js';
import type { Choices, TabletAdvice } from './advice.js';
import type { Person } from './person.js';

/**
 * Tablet advice, or null unless the clinician said they were prescribed. The dose is theirs, never ours.
 * @example adviseTablets(choices, person)?.gaps // [{ medicine: 'levothyroxine', hours: 4, rule: 'gap-levothyroxine' }]
 */
export function adviseTablets(choices: Choices, person: Person): TabletAdvice | null {
  if (choices.tabletsPrescribed === null) return null;
  const gaps = medicineGaps
    .filter((gap) => person.takes(gap.medicine))
    .map(({ medicine, hours, id }) => ({ medicine, hours, rule: id }));
  const applies = {
    always: true,
    'other-medicines': gaps.length > 0,
    'fasting-month': person.fastingMonth,
  };
  const points = tabletPointRows.filter((row) => applies[row.when]).map((row) => row.id);
  return { dose: choices.tabletsPrescribed.dose, gaps, points };
}
