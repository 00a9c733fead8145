// The person, their results and tablets arrive; the signs that need help leave, most pressing first.
import type { Interpretation } from '../interpret/interpretation.js';
import { type HelpSignRow, helpSignRows } from '../knowledge/help-signs.js';
import type { Advice } from './advice.js';
import { hasLowIron, looksLike } from './food-mode.js';
import type { Person } from './person.js';

type Case = {
  readonly interpretation: Interpretation;
  readonly person: Person;
  readonly tablets: boolean;
};

/**
 * Signs to print for this person. Those for everyone are never left out; a small child has signs of its own.
 * @example findHelp(aCase)[0] // { sign: 'chest-pain', urgency: 'emergency' }
 */
export function findHelp(aCase: Case): Advice['help'] {
  return helpSignRows
    .filter((row) => applies(row, aCase))
    .map(({ id, urgency }) => ({ sign: id, urgency }));
}

/** Iron tablets are, or may be, where a child could reach them. */
export function hasIronAtHome({ person, tablets }: Case): boolean {
  const child = person.ageMonths !== null && person.mayBeUnder('child-at-home-to');
  return tablets || child || person.takes('iron-tablets') || person.flagged('taking-iron');
}

function applies(row: HelpSignRow, aCase: Case): boolean {
  const { interpretation, person } = aCase;
  switch (row.when) {
    case 'always':
      return true;
    case 'pregnant':
      return person.pregnant;
    // A small child cannot tell of these; signs that a parent sees stand in their place.
    case 'not-small-child':
      return !isSmallChild(person);
    case 'child':
      return isSmallChild(person);
    case 'iron-at-home':
      return hasIronAtHome(aCase);
    case 'tablets':
      return aCase.tablets;
    case 'ferritin':
      return ferritinAbove(interpretation, row.above);
    case 'high-haemoglobin':
      return looksLike(interpretation, 'high-haemoglobin');
    case 'periods':
      return person.periods === true && !person.pregnant;
    case 'after-periods':
      return person.sex === 'female' && person.isAtLeast('after-periods-from');
    case 'low-iron-adult':
      return hasLowIron(interpretation) && person.isAtLeast('adult-from');
  }
}

/** True only when the age is known. */
function isSmallChild(person: Person): boolean {
  return person.ageMonths !== null && person.mayBeUnder('small-child-to');
}

function ferritinAbove(interpretation: Interpretation, limit: number | null): boolean {
  const ferritin = interpretation.results.find((result) => result.analyte === 'ferritin');
  if (ferritin === undefined || limit === null) return false;
  const open = ferritin.comparator === '>' || ferritin.comparator === '>=';
  return ferritin.value > limit || (open && ferritin.value === limit);
}
