// In: what the file says of pregnancy, birth and periods. Out: weeks and trimester, or why they cannot be so.
import type { WrittenPatient } from '../intake/written.js';
import { spanOf } from '../knowledge/plausible.js';
import type { Place } from '../problem.js';
import { type Sex, type Trimester, trimesters } from '../terms.js';
import { type Findings, fault } from './findings.js';
import type { Pregnancy } from './report.js';
import { withinSpan } from './span.js';

/** What must be known of the person before pregnancy can be believed. */
export type Person = { readonly sex: Sex | null; readonly ageMonths: number | null };

/**
 * Trimester of completed weeks of pregnancy; bounds and their source are rows of src/knowledge/spans.json.
 * @example trimesterOf(13) // 1
 * @example trimesterOf(14) // 2
 */
export function trimesterOf(weeks: number): Trimester | null {
  const within = (trimester: Trimester) => {
    const { low, high } = spanOf(`trimester-${trimester}-weeks`);
    return weeks >= low && weeks <= high;
  };
  return trimesters.find(within) ?? null;
}

/**
 * Pregnancy with completed weeks and trimester, each null when not told.
 * Problems: a man, an age out of span, weeks out of span, weeks and trimester that disagree.
 * @example readPregnancy({ …, pregnancy: { weeks: 15, trimester: null } }, person, place, into) // { weeks: 15, trimester: 2 }
 */
export function readPregnancy(
  { pregnancy }: WrittenPatient,
  person: Person,
  place: Place,
  into: Findings,
): Pregnancy | null {
  if (pregnancy === null) return null;
  const at = { ...place, field: 'patient.pregnancy' };
  if (person.sex === 'male')
    into.problems.push(fault('pregnant-male', at, 'a male patient is said to be pregnant'));
  ageWithin(person, 'pregnancy-age-months', 'pregnancy', at, into);
  const told = pregnancy.weeks === null ? null : Math.floor(pregnancy.weeks);
  const weeks = withinSpan(told, 'pregnancy-weeks', at, into);
  const written = trimesters.find((one) => one === pregnancy.trimester) ?? null;
  if (pregnancy.trimester !== null && written === null) {
    const more = { found: String(pregnancy.trimester).slice(0, 20), expected: '1, 2 or 3' };
    into.problems.push(fault('trimester-unknown', at, 'cannot use this trimester', more));
  }
  const counted = weeks === null ? null : trimesterOf(weeks);
  if (counted !== null && written !== null && counted !== written) {
    const found = `week ${weeks} and trimester ${written}`;
    const expected = `trimester ${counted} for that week`;
    const cannot = 'the week and the trimester contradict each other';
    into.problems.push(fault('pregnancy-contradiction', at, cannot, { found, expected }));
  }
  return { weeks, trimester: counted ?? written };
}

/**
 * Weeks since a birth. Problems: a man, out of span, fewer than the weeks of a present pregnancy.
 * @example readAfterBirth({ …, afterBirthWeeks: 5 }, null, person, place, into) // 5
 */
export function readAfterBirth(
  { afterBirthWeeks }: WrittenPatient,
  pregnancy: Pregnancy | null,
  person: Person,
  place: Place,
  into: Findings,
): number | null {
  if (afterBirthWeeks === null) return null;
  const at = { ...place, field: 'patient.afterBirthWeeks' };
  if (person.sex === 'male')
    into.problems.push(fault('birth-by-male', at, 'a male patient is said to have given birth'));
  ageWithin(person, 'pregnancy-age-months', 'a birth', at, into);
  const weeks = withinSpan(afterBirthWeeks, 'after-birth-weeks', at, into);
  const pregnantFor = fewestWeeks(pregnancy);
  if (weeks !== null && weeks < pregnantFor)
    into.problems.push(
      fault('birth-during-pregnancy', at, 'the last birth lies within the present pregnancy', {
        found: `${weeks} weeks after birth, ${pregnantFor} weeks pregnant`,
        expected: 'one of the two',
      }),
    );
  return weeks;
}

/**
 * Whether the person menstruates. Problems: a man, an age out of span when said to.
 * @example readMenstruating({ …, menstruating: true }, { sex: 'female', ageMonths: 400 }, place, into) // true
 */
export function readMenstruating(
  { menstruating }: WrittenPatient,
  person: Person,
  place: Place,
  into: Findings,
): boolean | null {
  if (menstruating !== true) return menstruating;
  const at = { ...place, field: 'patient.menstruating' };
  if (person.sex === 'male')
    into.problems.push(fault('periods-in-male', at, 'a male patient is said to have periods'));
  ageWithin(person, 'menstruating-age-months', 'periods', at, into);
  return true;
}

/** Weeks that a present pregnancy has lasted at least; 0 where none is known. */
function fewestWeeks(pregnancy: Pregnancy | null): number {
  const { weeks = null, trimester = null } = pregnancy ?? {};
  const least = trimester === null ? 0 : spanOf(`trimester-${trimester}-weeks`).low;
  return weeks ?? least;
}

function ageWithin(
  { ageMonths }: Person,
  name: 'pregnancy-age-months' | 'menstruating-age-months',
  what: string,
  at: Place,
  into: Findings,
): void {
  const { low, high } = spanOf(name);
  if (ageMonths === null || (ageMonths >= low && ageMonths <= high)) return;
  const expected = `${low / 12} to ${high / 12} years`;
  into.problems.push(
    fault('age-and-facts-contradict', at, `the age contradicts ${what}`, { expected }),
  );
}
