// Planned steps arrive; what the reader does and what the clinic does leave, each with how and by when.
import type { PlannedStep } from '../../advise/advice.js';
import type { NextStep } from '../../terms.js';
import type { Content, PictogramName, StepTold } from '../content.js';
import type { Told } from '../letter-input.js';
import { dial, ltr } from '../say.js';

/** What each step is about. */
const signs: Readonly<Record<NextStep, PictogramName>> = {
  'no-further-test': 'calendar',
  'repeat-test': 'blood-test',
  'repeat-test-fasting': 'blood-test',
  'repeat-test-when-well': 'blood-test',
  'further-tests': 'blood-test',
  referral: 'clinician',
  'talk-at-clinic': 'clinician',
  'take-tablets-as-prescribed': 'tablets',
  'tell-us-about-periods': 'calendar',
  'eat-for-iron': 'food',
  'clinic-calls-you': 'phone',
};

export function tellYourSteps(told: Told): Content['yourSteps'] {
  const steps = inOrderOfDay(stepsOf(told, 'patient'));
  return {
    heading: told.voice.say('your-steps.heading'),
    howToTick: told.voice.say('your-steps.tick'),
    steps: [...steps.map((step) => tellStep(told, step)), heardBy(told)],
  };
}

export function tellOurSteps(told: Told): Content['ourSteps'] {
  const steps = inOrderOfDay(stepsOf(told, 'clinic'));
  return {
    heading: told.voice.say('our-steps.heading'),
    steps:
      steps.length > 0
        ? steps.map((step) => tellStep(told, step))
        : [{ text: told.voice.say('our-steps.none'), words: null, sign: 'clinician' }],
  };
}

/**
 * A step about food without a food section would lead nowhere, or towards iron that must not be; beside
 * other suggested steps the food section speaks for itself.
 */
function stepsOf({ advice }: Told, whose: PlannedStep['who']): readonly PlannedStep[] {
  const steps = advice.steps.filter(({ who }) => who === whose);
  const others = steps.filter(({ step }) => step !== 'eat-for-iron');
  const food = steps.filter(({ step }) => step === 'eat-for-iron');
  const wanted = food.some(({ suggested }) => !suggested) || others.length === 0;
  return advice.food.mode === 'raise-iron' && wanted ? steps : others;
}

/** What comes first in the calendar stands first; a step without a day stays behind the one it followed. */
export function inOrderOfDay(steps: readonly PlannedStep[]): readonly PlannedStep[] {
  const dayAt = (at: number) => steps.slice(0, at + 1).findLast(({ by }) => by !== null)?.by ?? '';
  return steps
    .map((step, at) => ({ step, day: dayAt(at) }))
    .sort((one, other) => one.day.localeCompare(other.day))
    .map(({ step }) => step);
}

function tellStep({ clinic, voice }: Told, { step, who, by, words }: PlannedStep): StepTold {
  const phone = ltr(clinic.phone);
  const text =
    by === null
      ? voice.say(`step.${step}.${who}`, { phone })
      : voice.say(`step.${step}.${who}.by`, { phone, date: voice.date(by) });
  return { text, words, sign: signs[step] };
}

/** Each side waits for the other unless a date says whose turn it is. */
function heardBy(told: Told): StepTold {
  const { advice, clinic, urgent, voice } = told;
  const values = {
    date: voice.date(advice.heardBy),
    phone: ltr(clinic.phone),
    emergency: dial(clinic.emergencyNumber),
  };
  if (urgent)
    return { text: voice.say('step.heard-by.urgent', values), words: null, sign: 'phone' };
  const clinicActs = stepsOf(told, 'clinic').some(({ step }) => step !== 'no-further-test');
  const text = voice.say(clinicActs ? 'step.heard-by' : 'step.heard-by.none', values);
  return { text, words: null, sign: 'phone' };
}
