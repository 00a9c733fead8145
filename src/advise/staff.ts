// A report, its interpretation and the person arrive; the lines of the clinician's sheet about food and iron leave.
import type { Interpretation, Reason } from '../interpret/interpretation.js';
import { coefficient } from '../knowledge/absorption.js';
import type { Report } from '../report/report.js';
import type { Choices, FoodMode } from './advice.js';
import { armahPercent, collingsPercent, typicalDay } from './absorption.js';
import { dailyNeed } from './daily-need.js';
import { needsCauseFound } from './food-cautions.js';
import { hasLowIron } from './food-mode.js';
import type { Person } from './person.js';
import { reason } from './reason.js';

type Case = {
  readonly report: Report;
  readonly interpretation: Interpretation;
  readonly person: Person;
  readonly choices: Choices;
  readonly mode: FoodMode;
};

/**
 * Numbers that never reach the patient: daily need, estimated absorption, and what was held back from the letter.
 * @example staffLines(aCase).map((line) => line.code) // ['daily-need', 'absorption-collings', …]
 */
export function staffLines(aCase: Case): readonly Reason[] {
  const { report, person } = aCase;
  const donor =
    person.flagged('blood-donation') || report.context.bleeding.includes('blood-donation');
  return [
    ...dailyNeed(person, donor),
    ...absorption(aCase),
    ...warnings(aCase),
    ...(person.diet === null ? [reason('diet-not-recorded')] : []),
    ...(person.otherCuisines > 0
      ? [reason('cuisine-not-in-table', { count: person.otherCuisines })]
      : []),
  ];
}

function warnings({ interpretation, person, choices, mode }: Case): readonly Reason[] {
  const lines: Reason[] = [];
  if (hasLowIron(interpretation) && needsCauseFound(person))
    lines.push(reason('food-is-not-the-lead'));
  const asked = choices.steps?.some((step) => step.step === 'eat-for-iron') ?? false;
  if (asked && mode !== 'raise-iron') lines.push(reason('eat-for-iron-withheld', { mode }));
  if (choices.tabletsPrescribed !== null && mode === 'hold-back')
    lines.push(reason('tablets-prescribed-though-iron-may-harm'));
  return lines;
}

function absorption(aCase: Case): readonly Reason[] {
  const why = notUsable(aCase);
  const ferritin = ferritinOf(aCase.interpretation);
  if (why !== null || ferritin === null) {
    const facts = { why: why ?? 'ferritin-not-measured' };
    return [
      reason('absorption-collings-not-used', facts),
      reason('whole-diet-armah-not-used', facts),
    ];
  }
  return [collings(ferritin, aCase), ...armah(ferritin)];
}

/** Both studies were of healthy adults with ferritin inside a range; outside it they say nothing. */
function notUsable({ interpretation, person }: Case): string | null {
  const ferritin = ferritinOf(interpretation);
  const adult = person.ageMonths !== null && person.ageMonths >= coefficient('adult-from-months');
  if (person.flagged('crp-raised') || crpLevel(interpretation) === 'high') return 'crp-raised';
  if (!adult) return 'not-a-known-adult';
  if (person.pregnant) return 'pregnancy';
  if (ferritin === null) return 'ferritin-not-measured';
  return collingsPercent(ferritin, 0) === null ? 'ferritin-outside-the-data' : null;
}

function crpLevel(interpretation: Interpretation): string {
  return interpretation.results.find((result) => result.analyte === 'crp')?.level ?? 'not-measured';
}

function ferritinOf(interpretation: Interpretation): number | null {
  const found = interpretation.results.find((result) => result.analyte === 'ferritin');
  if (found === undefined || found.comparator !== null || found.doubt !== null) return null;
  return found.value;
}

function collings(ferritin: number, { interpretation }: Case): Reason {
  const [hindering, ordinary, helping] = ([-1, 0, 1] as const).map((diet) =>
    toOneDecimal(collingsPercent(ferritin, diet) ?? 0),
  );
  const crp = crpLevel(interpretation) === 'usual' ? 'not-raised' : 'not-measured';
  const facts = {
    ferritin,
    hindering: hindering ?? 0,
    ordinary: ordinary ?? 0,
    helping: helping ?? 0,
    crp,
  };
  return reason('absorption-collings', facts, [
    'collings-constant',
    'collings-ferritin',
    'collings-modifier',
  ]);
}

/** How little a whole day changes, beside the large changes of single meals. */
function armah(ferritin: number): readonly Reason[] {
  const day = typicalDay();
  const base = armahPercent(ferritin, day);
  const teaCups = coefficient('typical-day-tea-more');
  const tea = armahPercent(ferritin, { ...day, teaCups });
  const times = coefficient('typical-day-vitamin-c-times');
  const fruit = armahPercent(ferritin, { ...day, vitaminC: day.vitaminC * times });
  if (base === null || tea === null || fruit === null) return [];
  const facts = {
    ordinary: toOneDecimal(base),
    teaCups,
    teaTimes: toTwoDecimals(tea / base),
    vitaminCTimes: times,
    fruitTimes: toTwoDecimals(fruit / base),
  };
  return [reason('whole-diet-armah', facts, ['armah-constant', 'typical-day-vitamin-c'])];
}

const toOneDecimal = (value: number): number => Math.round(value * 10) / 10;
const toTwoDecimals = (value: number): number => Math.round(value * 100) / 100;
