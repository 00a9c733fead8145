// Planned steps arrive; what the reader does and what the clinic does leave, each with how and by when.
import type { PlannedStep } from '../../advise/advice.js';
import type { Content, StepTold } from '../content.js';
import type { Told } from '../letter-input.js';
import { ltr } from '../say.js';

export function tellYourSteps(told: Told): Content['yourSteps'] {
  const steps = told.advice.steps.filter(({ who }) => who === 'patient');
  return {
    heading: told.voice.say('your-steps.heading'),
    steps: [...steps.map((step) => tellStep(told, step)), heardBy(told)],
  };
}

export function tellOurSteps(told: Told): Content['ourSteps'] {
  const steps = told.advice.steps.filter(({ who }) => who === 'clinic');
  return {
    heading: told.voice.say('our-steps.heading'),
    steps:
      steps.length > 0
        ? steps.map((step) => tellStep(told, step))
        : [{ text: told.voice.say('our-steps.none'), words: null }],
  };
}

function tellStep({ clinic, voice }: Told, { step, who, by, words }: PlannedStep): StepTold {
  const phone = ltr(clinic.phone);
  const text =
    by === null
      ? voice.say(`step.${step}.${who}`, { phone })
      : voice.say(`step.${step}.${who}.by`, { phone, date: voice.date(by) });
  return { text, words };
}

/** Each side waits for the other unless a date says whose turn it is. */
function heardBy({ advice, clinic, voice }: Told): StepTold {
  const values = { date: voice.date(advice.heardBy), phone: ltr(clinic.phone) };
  return { text: voice.say('step.heard-by', values), words: null };
}
