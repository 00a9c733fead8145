// A person arrives; the iron reference bodies advise them to eat in a day leaves, for the clinician's sheet only.
import type { Reason } from '../interpret/interpretation.js';
import { needFactors } from '../knowledge/need-factors.js';
import { type Need, needs } from '../knowledge/needs.js';
import type { Diet } from '../terms.js';
import type { Person } from './person.js';
import { reason } from './reason.js';

const vegetarianDiets: readonly (Diet | null)[] = ['vegetarian', 'vegetarian-no-egg', 'vegan'];

/**
 * One line for each reference value that applies, then what multiplies or adds to it; mg a day.
 * Without an age only a pregnancy gives a line.
 * @example dailyNeed(woman30)[0]?.facts // { body: 'iom', group: 'female-19-50', milligrams: 18, upperLevel: 45 }
 */
export function dailyNeed(person: Person, donor: boolean): readonly Reason[] {
  const rows = needs.filter((need) => matches(need, person));
  if (rows.length === 0) return [reason('daily-need-not-shown', { why: 'age-unknown' })];
  return [
    ...rows.map((need) => reason('daily-need', factsOf(need), [need.id])),
    ...vegetarian(rows, person),
    ...(donor ? donorExtra() : []),
  ];
}

function matches(need: Need, person: Person): boolean {
  if (!inState(need, person)) return false;
  if (need.sex !== null && person.sex !== 'unknown' && need.sex !== person.sex) return false;
  if (need.periods !== null && need.periods !== person.periods) return false;
  const age = person.ageMonths;
  if (age === null) return need.fromMonths === null && need.toMonths === null;
  return (need.fromMonths ?? 0) <= age && age < (need.toMonths ?? Number.POSITIVE_INFINITY);
}

function inState(need: Need, person: Person): boolean {
  if (person.pregnant) return need.state === 'pregnant';
  const weeks = person.afterBirthWeeks;
  const feeding = weeks !== null && weeks <= factor('breastfeeding-weeks').high;
  return need.state === 'usual' || (need.state === 'breastfeeding' && feeding);
}

function vegetarian(rows: readonly Need[], person: Person): readonly Reason[] {
  if (!vegetarianDiets.includes(person.diet)) return [];
  const times = factor('vegetarian-factor');
  return rows
    .filter((need) => need.body === 'iom')
    .map((need) =>
      reason(
        'daily-need-vegetarian',
        { group: need.group, milligrams: Math.round(need.milligrams * times.low * 10) / 10 },
        [need.id, times.id],
      ),
    );
}

function donorExtra(): readonly Reason[] {
  const extra = factor('donor-extra');
  return [reason('daily-need-donor', { low: extra.low, high: extra.high }, [extra.id])];
}

function factsOf(need: Need): Reason['facts'] {
  const { body, group, milligrams, upperLevel } = need;
  return { body, group, milligrams, ...(upperLevel === null ? {} : { upperLevel }) };
}

function factor(id: string): (typeof needFactors)[number] {
  const found = needFactors.find((row) => row.id === id);
  if (found === undefined) throw new Error(`need-factors: no row ${id}`);
  return found;
}
