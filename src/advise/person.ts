// A report and its interpretation arrive; what advice needs to know of the person leaves, each fact once.
import type { Interpretation } from '../interpret/interpretation.js';
import { foodLimit } from '../knowledge/food-policy.js';
import type { Report } from '../report/report.js';
import type { Condition, Diet, DietAvoid, Flag, Medicine } from '../terms.js';
import { type Cuisine, cuisineCodes } from './codes.js';

export type Person = {
  readonly diet: Diet | null;
  readonly avoids: readonly DietAvoid[];
  readonly lowCost: boolean;
  readonly fastingMonth: boolean;
  readonly cuisines: readonly Cuisine[];
  readonly otherCuisines: number;
  readonly ageMonths: number | null;
  readonly sex: 'female' | 'male' | 'unknown';
  readonly pregnant: boolean;
  /** A pregnancy was not recorded and cannot be ruled out by age or sex. */
  readonly mayBePregnant: boolean;
  readonly periods: boolean | null;
  readonly afterBirthWeeks: number | null;
  readonly has: (...conditions: readonly Condition[]) => boolean;
  readonly takes: (...medicines: readonly Medicine[]) => boolean;
  readonly flagged: (...flags: readonly Flag[]) => boolean;
  /** True also when the age is not known: used where the young must be spared something. */
  readonly mayBeUnder: (limit: string) => boolean;
  /** True only when the age is known. */
  readonly isAtLeast: (limit: string) => boolean;
};

/**
 * The person as advice sees them. Unknown stays unknown: where something could harm the young or the
 * unborn, not knowing counts as a reason to leave it out.
 * @example describePerson(report, interpretation).mayBeUnder('whole-nuts-from') // true at 4 years or without an age
 */
export function describePerson(report: Report, interpretation: Interpretation): Person {
  const { patient, context } = report;
  const diet = patient.diet;
  const age = patient.ageMonths;
  const flagged = (...flags: readonly Flag[]): boolean =>
    interpretation.flags.some((raised) => flags.includes(raised.flag));
  const asked = (diet?.cuisines ?? []).map((name) => name.toLowerCase().replace(/[^a-z]+/g, '-'));
  const heavyPeriods = flagged('heavy-periods') || context.bleeding.includes('heavy-periods');
  const pregnant = patient.pregnancy !== null || flagged('pregnancy');
  return {
    diet: diet?.pattern ?? null,
    avoids: diet?.avoids ?? [],
    lowCost: diet?.lowCost ?? false,
    fastingMonth: diet?.fastingMonth ?? false,
    cuisines: cuisineCodes.filter((cuisine) => asked.includes(cuisine)),
    otherCuisines: asked.filter((name) => !cuisineCodes.some((cuisine) => cuisine === name)).length,
    ageMonths: age,
    sex: patient.sex,
    pregnant,
    mayBePregnant: !pregnant && patient.sex !== 'male' && ofChildbearingAge(age),
    periods: heavyPeriods ? true : patient.menstruating,
    afterBirthWeeks: patient.afterBirthWeeks,
    has: (...conditions) => patient.conditions.some((one) => conditions.includes(one)),
    takes: (...medicines) => patient.medicines.some((one) => medicines.includes(one)),
    flagged,
    mayBeUnder: (limit) => age === null || age < foodLimit(limit),
    isAtLeast: (limit) => age !== null && age >= foodLimit(limit),
  };
}

function ofChildbearingAge(ageMonths: number | null): boolean {
  if (ageMonths === null) return true;
  return (
    ageMonths >= foodLimit('may-be-pregnant-from') && ageMonths < foodLimit('may-be-pregnant-to')
  );
}
