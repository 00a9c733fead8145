// Tablet advice arrives; how to take them leaves, or nothing where none were prescribed.
import type { Content, Said } from '../content.js';
import { isLetterKey } from '../english.js';
import type { Told } from '../letter-input.js';
import { dial, own } from '../say.js';

export function tellTablets(told: Told): Content['tablets'] {
  const { tablets } = told.advice;
  if (tablets === null) return null;
  const { say } = told.voice;
  const dose = tablets.dose;
  return {
    heading: say('tablets.heading'),
    paragraphs: dose === null ? [] : [[say('tablets.dose', { dose: own(dose) })]],
    items: [...points(told, dose !== null), ...gaps(told)],
  };
}

function points({ advice, clinic, voice: { say } }: Told, doseSaid: boolean): readonly Said[] {
  return (advice.tablets?.points ?? [])
    .filter((point) => !(doseSaid && point === 'as-prescribed'))
    .map((point) => `tablets.${point}`)
    .filter(isLetterKey)
    .map((key) => say(key, { emergency: dial(clinic.emergencyNumber) }));
}

function gaps({ advice, voice: { say } }: Told): readonly Said[] {
  return (advice.tablets?.gaps ?? []).map(({ medicine, hours }) =>
    hours === null ? say(`gap.${medicine}.ask`) : say(`gap.${medicine}`, { count: hours }),
  );
}
