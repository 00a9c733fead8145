// A report, its interpretation, the clinician's choices and the date arrive; advice leaves, all of it as codes.
import type { Interpretation } from '../interpret/interpretation.js';
import type { Report } from '../report/report.js';
import type { Advice, Choices } from './advice.js';
import { adviseFood } from './food.js';
import { findHelp } from './help.js';
import { findCautions } from './letter-cautions.js';
import { describePerson } from './person.js';
import { sourcesOf } from './sources.js';
import { staffLines } from './staff.js';
import { heardBy, planSteps } from './steps.js';
import { adviseTablets } from './tablets.js';

export { planWeek } from './plan-week.js';

/**
 * What to eat, what happens next, when to get help. Pure: the same four arguments give the same advice.
 * @param today ISO date of the letter; every date is counted from it.
 * @example advise(report, interpretation, { steps: null, tabletsPrescribed: null, noFood: false }, '2026-11-25').food.mode
 */
export function advise(
  report: Report,
  interpretation: Interpretation,
  given: Choices,
  today: string,
): Advice {
  const choices = withPrescription(given);
  const person = describePerson(report, interpretation);
  const tablets = adviseTablets(choices, person);
  const food = adviseFood(report, interpretation, choices, person);
  const steps = planSteps({ interpretation, choices, person, mode: food.mode, today });
  const aCase = { report, interpretation, person, tablets: tablets !== null };
  const help = findHelp(aCase);
  const cautions = findCautions(aCase);
  const staff = staffLines({ report, interpretation, person, choices, mode: food.mode });
  const told: Omit<Advice, 'sources'> = {
    food,
    tablets,
    steps,
    heardBy: heardBy(interpretation, steps, today),
    help,
    cautions,
    staff,
  };
  return { ...told, sources: sourcesOf(rulesOf(told)) };
}

/** Choosing the step "take tablets as prescribed" says that they were prescribed. */
function withPrescription(choices: Choices): Choices {
  const taken = choices.steps?.some((step) => step.step === 'take-tablets-as-prescribed') ?? false;
  if (!taken || choices.tabletsPrescribed !== null) return choices;
  return { ...choices, tabletsPrescribed: { dose: null } };
}

function rulesOf(advice: Omit<Advice, 'sources'>): readonly string[] {
  const { food, tablets } = advice;
  return [
    ...[...food.choices, ...food.partners].flatMap((choice) =>
      choice.why.flatMap((line) => line.rules),
    ),
    ...[...food.swaps, ...food.answers].flatMap((swap) => swap.rules),
    ...(tablets?.gaps.map((gap) => gap.rule) ?? []),
    ...(tablets?.points ?? []),
    ...advice.steps.flatMap((step) => step.rules),
    ...advice.help.map((line) => line.sign),
    ...advice.cautions,
    ...advice.staff.flatMap((line) => line.rules),
  ];
}
