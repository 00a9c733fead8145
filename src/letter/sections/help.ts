// Signs and the clinic's numbers arrive; when to get help leaves, most pressing first.
import type { Urgency } from '../../advise/advice.js';
import type { Content, Said } from '../content.js';
import { isLetterKey } from '../english.js';
import type { Told } from '../letter-input.js';
import { dial, ltr, own, type Values } from '../say.js';

const order: readonly Urgency[] = ['emergency', 'today', 'soon'];

export function tellHelp(told: Told): Content['help'] {
  const { urgent, voice } = told;
  const values = numbers(told);
  return {
    heading: voice.say('help.heading'),
    first: urgent,
    groups: order
      .map((urgency) => ({
        urgency,
        heading: voice.say(`help.${urgency}`, values),
        lines: signs(told, urgency, values),
      }))
      .filter(({ lines }) => lines.length > 0),
    notes: [closed(told), ...maternity(told)],
  };
}

function numbers({ advice, clinic, voice }: Told): Values {
  return {
    emergency: dial(clinic.emergencyNumber),
    phone: ltr(clinic.phone),
    date: voice.date(advice.heardBy),
  };
}

function signs(
  { advice, voice: { say } }: Told,
  urgency: Urgency,
  values: Values,
): readonly Said[] {
  return (
    advice.help
      .filter((each) => each.urgency === urgency)
      // The steps say this already, with the same date.
      .filter(({ sign }) => sign !== 'not-heard-by-date')
      .map(({ sign }) => `sign.${sign}`)
      .filter(isLetterKey)
      .map((key) => say(key, values))
  );
}

function closed({ clinic, voice: { say } }: Told): Said {
  return clinic.outOfHours === null
    ? say('help.closed-unknown', { emergency: dial(clinic.emergencyNumber) })
    : say('help.closed', { who: own(clinic.outOfHours) });
}

function maternity({ clinic, report, voice: { say } }: Told): readonly Said[] {
  if (report.patient.pregnancy === null || clinic.maternityPhone === null) return [];
  return [say('help.maternity', { phone: ltr(clinic.maternityPhone) })];
}
