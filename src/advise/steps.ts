// Pattern, hold, the clinician's choices and today's date arrive; who does what by when leaves.
import type { Interpretation } from '../interpret/interpretation.js';
import { heardByRows } from '../knowledge/heard-by.js';
import { type StepDefault, stepDefaults } from '../knowledge/next-step-defaults.js';
import type { Flag, NextStep } from '../terms.js';
import type { Choices, FoodMode, PlannedStep } from './advice.js';
import { addDays } from './dates.js';
import type { Person } from './person.js';

type Case = {
  readonly interpretation: Interpretation;
  readonly choices: Choices;
  readonly person: Person;
  readonly mode: FoodMode;
  readonly today: string;
};

const whoDoes: Readonly<Record<NextStep, PlannedStep['who']>> = {
  'no-further-test': 'patient',
  'repeat-test': 'patient',
  'repeat-test-fasting': 'patient',
  'repeat-test-when-well': 'patient',
  'further-tests': 'clinic',
  referral: 'clinic',
  'talk-at-clinic': 'patient',
  'take-tablets-as-prescribed': 'patient',
  'tell-us-about-periods': 'patient',
  'eat-for-iron': 'patient',
  'clinic-calls-you': 'clinic',
};

/** While one of these is open, nobody is told that no test is needed. */
const notSettled: readonly Flag[] = [
  'haemoglobin-not-measured',
  'ferritin-not-measured',
  'iron-supply-not-measured',
  'unit-doubtful',
  'value-doubtful',
  'preliminary-result',
  'comparator-undecided',
  'crp-raised',
];

/**
 * The clinician's steps where there are any, otherwise those suggested for the pattern.
 * Eating for iron is dropped wherever the food section does not raise iron, whoever asked for it.
 * @example planSteps(aCase)[0] // { step: 'talk-at-clinic', who: 'patient', by: '2026-12-09', suggested: true, … }
 */
export function planSteps(aCase: Case): readonly PlannedStep[] {
  const steps = aCase.choices.steps === null ? suggest(aCase) : chosenBy(aCase.choices.steps);
  return steps.filter((step) => step.step !== 'eat-for-iron' || aCase.mode === 'raise-iron');
}

/**
 * The day after which silence means: call us. Never before a day on which the clinic has promised something,
 * except where waiting is unsafe.
 * @example heardBy(interpretation, steps, '2026-11-25') // '2026-12-09'
 */
export function heardBy(
  interpretation: Interpretation,
  steps: readonly PlannedStep[],
  today: string,
): string {
  const { tier } = interpretation.hold;
  const row = heardByRows.find((candidate) => candidate.tier === tier);
  if (row === undefined) throw new Error('heard-by: a tier has no row');
  const usual = addDays(today, row.days);
  if (isPressing(interpretation)) return usual;
  const promised = steps.flatMap((step) =>
    step.who === 'clinic' && step.by !== null ? [step.by] : [],
  );
  return [usual, ...promised].sort().at(-1) ?? usual;
}

function chosenBy(steps: NonNullable<Choices['steps']>): readonly PlannedStep[] {
  return steps.map(({ step, by, words }) => ({
    step,
    who: whoDoes[step],
    by,
    suggested: false,
    rules: [],
    words,
  }));
}

function suggest(aCase: Case): readonly PlannedStep[] {
  const { interpretation, today } = aCase;
  // What comes after a pressing result is the clinician's to say once they have spoken with the person.
  if (isPressing(interpretation)) return [...pressing(aCase), ...tablets(aCase)];
  const main = interpretation.pattern.main;
  const rows = stepDefaults.filter((row) => row.pattern === main && applies(row, aCase));
  const planned = rows.map((row) => fromRow(row, today)).map((step) => adapt(step, aCase));
  return inOneOrder([...pressing(aCase), ...tablets(aCase), ...planned]);
}

function applies(row: StepDefault, { person, choices }: Case): boolean {
  const prescribed = choices.tabletsPrescribed !== null;
  switch (row.when) {
    case 'always':
      return true;
    case 'periods':
      return person.periods === true && !person.pregnant;
    case 'tablets':
      return prescribed && !person.pregnant;
    case 'tablets-pregnant':
      return prescribed && person.pregnant;
    case 'no-tablets':
      return !prescribed && !person.pregnant;
    case 'no-tablets-pregnant':
      return !prescribed && person.pregnant;
  }
}

function fromRow(row: StepDefault, today: string): PlannedStep {
  return {
    step: row.step,
    who: row.who,
    by: row.days === null ? null : addDays(today, row.days),
    suggested: true,
    rules: [row.id],
    words: null,
  };
}

/** Illness moves a test to when the person is well; an open question takes the place of "no further test". */
function adapt(planned: PlannedStep, { person, choices, interpretation }: Case): PlannedStep {
  const ill = person.flagged('crp-raised') && choices.tabletsPrescribed === null;
  if (planned.step === 'repeat-test' && ill) return { ...planned, step: 'repeat-test-when-well' };
  const open = person.flagged(...notSettled) || interpretation.hold.tier !== 'routine';
  if (planned.step === 'no-further-test' && open) return { ...planned, step: 'talk-at-clinic' };
  return planned;
}

function pressing({ interpretation, person, today }: Case): readonly PlannedStep[] {
  const rows = heardByRows.filter((row) => row.tier === interpretation.hold.tier);
  const step = (code: NextStep, by: string): PlannedStep => ({
    step: code,
    who: whoDoes[code],
    by,
    suggested: true,
    rules: rows.map((row) => row.id),
    words: null,
  });
  if (isPressing(interpretation)) return [step('clinic-calls-you', today)];
  if (interpretation.hold.tier !== 'referral') return [];
  const by = addDays(today, rows[0]?.days ?? 0);
  return [step(person.flagged('bowel-check-pathway') ? 'further-tests' : 'referral', by)];
}

function tablets({ choices }: Case): readonly PlannedStep[] {
  if (choices.tabletsPrescribed === null) return [];
  const step = 'take-tablets-as-prescribed';
  return [{ step, who: whoDoes[step], by: null, suggested: false, rules: [], words: null }];
}

/** The first of each kind of step stays: what is pressing was put first. */
function inOneOrder(steps: readonly PlannedStep[]): readonly PlannedStep[] {
  return steps.filter((step, at) => steps.findIndex((other) => other.step === step.step) === at);
}

function isPressing(interpretation: Interpretation): boolean {
  return interpretation.hold.tier === 'emergency' || interpretation.hold.tier === 'same-day';
}
