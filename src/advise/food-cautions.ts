// A person, the mode and its reasons arrive; what is said once for the whole food section leaves.
import type { Interpretation } from '../interpret/interpretation.js';
import type { Report } from '../report/report.js';
import type { FoodMode } from './advice.js';
import type { CautionCode } from './codes.js';
import { looksLike } from './food-mode.js';
import { hasKidneyDiet, needsSteadyVitaminK } from './left-out.js';
import type { Person } from './person.js';

type Case = {
  readonly report: Report;
  readonly interpretation: Interpretation;
  readonly person: Person;
  readonly mode: FoodMode;
  readonly why: readonly string[];
  readonly tablets: boolean;
  readonly askDietitian: boolean;
};
type Line = readonly [caution: CautionCode, when: boolean];

/**
 * Cautions of the food section in the order of the letter; empty when the section is silent.
 * @example foodCautions({ ...raised, mode: 'hold-back' }) // ['no-iron-or-vitamin-c-tablets', …]
 */
export function foodCautions(aCase: Case): readonly CautionCode[] {
  const lines = linesFor[aCase.mode](aCase);
  return lines.filter(([, when]) => when).map(([caution]) => caution);
}

const linesFor: Readonly<Record<FoodMode, (aCase: Case) => readonly Line[]>> = {
  none: () => [],
  general: (aCase) => [
    ['usual-healthy-eating', true],
    ['illness-blurs-iron', aCase.person.flagged('crp-raised')],
    ['thalassaemia-ask-before-iron', aCase.why.includes('thalassaemia-recorded')],
    ...bodyLines(aCase),
  ],
  'hold-back': holdBackLines,
  'raise-iron': (aCase) => [...raiseLines(aCase), ...bodyLines(aCase)],
};

function holdBackLines({ person, why, tablets, interpretation }: Case): readonly Line[] {
  const known = why.includes('known-iron-overload');
  const loaded = known || why.includes('transferrin-saturation-raised');
  return [
    ['team-plans-your-diet', known],
    [
      'ferritin-needs-explaining',
      !known &&
        (why.includes('ferritin-raised') ||
          looksLike(interpretation, 'raised-ferritin-normal-tsat')),
    ],
    ['no-iron-or-vitamin-c-tablets', !tablets],
    ['no-fortified-cereal-or-iron-pot', loaded],
    ['no-raw-shellfish', loaded],
    ['little-or-no-alcohol', loaded && person.isAtLeast('alcohol-advice-from')],
  ];
}

function raiseLines({
  report,
  interpretation,
  person,
  tablets,
  askDietitian,
}: Case): readonly Line[] {
  return [
    ['choose-what-you-eat', person.diet === null],
    ['ask-dietitian', askDietitian],
    ['food-alone-is-not-enough', !onlyEarly(interpretation)],
    ['food-is-not-the-cause', !onlyEarly(interpretation) && needsCauseFound(person)],
    ['vitamin-c-tablets-not-needed', tablets],
    ['clay-and-ice-tell-us', report.context.symptoms.includes('craving-ice-or-earth')],
    ['fasting-month-ask-first', person.fastingMonth],
  ];
}

/** What body and medicines ask of any eating advice. */
function bodyLines({ person, mode }: Case): readonly Line[] {
  const raising = mode === 'raise-iron';
  const eatsMeat =
    person.diet === null || ['no-restriction', 'no-pork', 'no-beef'].includes(person.diet);
  const month = person.ageMonths;
  return [
    ['not-for-under-ones', month === null],
    ['keep-portions-to-age', month !== null && person.mayBeUnder('adult-portions-from')],
    ['milk-limit-for-toddlers', month !== null && person.mayBeUnder('milk-limit-to')],
    ['chop-food-for-small-child', person.mayBeUnder('whole-nuts-from')],
    ['no-liver-in-pregnancy', person.pregnant && eatsMeat],
    ['no-liver-if-you-may-be-pregnant', raising && person.mayBePregnant && eatsMeat],
    ['kidney-team-plans-diet', hasKidneyDiet(person)],
    ['keep-vitamin-k-steady', needsSteadyVitaminK(person)],
    ['whole-fruit-not-juice', person.has('diabetes')],
    ['calcium-tablets-apart', person.takes('calcium')],
    ['do-not-stop-stomach-medicine', person.takes('proton-pump-inhibitor')],
  ];
}

function onlyEarly(interpretation: Interpretation): boolean {
  return interpretation.pattern.main === 'early-low-intake';
}

/** Men, and women after their periods have stopped: iron lack without a plain reason is looked into first. */
export function needsCauseFound(person: Person): boolean {
  if (!person.isAtLeast('adult-from') || person.pregnant) return false;
  if (person.sex === 'male' || person.isAtLeast('after-periods-from')) return true;
  return person.periods === false && person.afterBirthWeeks === null;
}
