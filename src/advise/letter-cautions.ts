// The person, their results and tablets arrive; the cautions of the whole letter leave, in its order.
import type { Interpretation } from '../interpret/interpretation.js';
import { type LetterCautionRow, letterCautionRows } from '../knowledge/letter-cautions.js';
import type { Report } from '../report/report.js';
import { hasLowIron, ironMayHarm } from './food-mode.js';
import { hasIronAtHome } from './help.js';
import type { Person } from './person.js';

type Case = {
  readonly report: Report;
  readonly interpretation: Interpretation;
  readonly person: Person;
  readonly tablets: boolean;
};

/**
 * Cautions to print for this person.
 * @example findCautions(aCase) // ['cause-not-known', 'no-iron-tablets-on-your-own', …]
 */
export function findCautions(aCase: Case): readonly string[] {
  return letterCautionRows.filter((row) => applies(row, aCase)).map((row) => row.id);
}

/** Whoever takes iron already must not read that they should not. */
function takesIron(person: Person): boolean {
  return person.takes('iron-tablets') || person.flagged('taking-iron');
}

function applies(row: LetterCautionRow, aCase: Case): boolean {
  const { report, interpretation, person } = aCase;
  const tablets = aCase.tablets || takesIron(person);
  switch (row.when) {
    case 'always':
      return true;
    case 'tablets':
      return tablets;
    case 'no-tablets':
      return !tablets;
    case 'high-or-unclear-iron':
      return ironMayHarm(aCase);
    case 'iron-at-home':
      return hasIronAtHome(aCase);
    case 'in-range':
      return interpretation.pattern.main === 'all-in-range';
    case 'ill':
      return person.flagged('crp-raised') || report.context.symptoms.includes('fever');
    case 'low-iron':
      return hasLowIron(interpretation);
    case 'low-iron-and-periods':
      return hasLowIron(interpretation) && person.periods === true;
  }
}
