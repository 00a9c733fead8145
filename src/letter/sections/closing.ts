// Cautions, the clinic and the clinician arrive; what closes the letter and what stands on every page leaves.
import type { Content, Said } from '../content.js';
import { isLetterKey } from '../english.js';
import type { Told } from '../letter-input.js';
import { ltr, own, type Values } from '../say.js';

export function tellChoices({ voice: { say } }: Told): Content['choices'] {
  return {
    heading: say('choices.heading'),
    paragraphs: [[say('choices.together')]],
  };
}

export function tellContact({ clinic, voice: { say } }: Told): Content['contact'] {
  const { interpreter, website } = clinic;
  return {
    heading: say('contact.heading'),
    lines: [
      say('contact.phone', { phone: ltr(clinic.phone) }),
      say('contact.hours', { hours: own(clinic.hours) }),
      ...(website === null ? [] : [say('contact.website', { website: ltr(website) })]),
    ],
    formats: [
      ...(interpreter === null
        ? []
        : [
            say(interpreter.free ? 'contact.interpreter-free' : 'contact.interpreter', {
              phone: ltr(interpreter.phone),
            }),
          ]),
      say('contact.formats'),
    ],
  };
}

/** Every caution that advice names; whose letter it is goes by name where there is one. */
export function tellCautions(told: Told): readonly Said[] {
  const { advice, report, voice } = told;
  const { name } = report.patient;
  const values: Values = name === null ? {} : { name: own(name) };
  return [...new Set(advice.cautions)]
    .map((code) => cautionKey(told, code))
    .filter(isLetterKey)
    .map((key) => voice.say(key, values));
}

function cautionKey({ interpretation, report }: Told, code: string): string {
  const inRange = interpretation.pattern.main === 'all-in-range';
  if (code === 'cause-not-known' && inRange) return 'caution.cause-not-known.in-range';
  const unnamed = report.patient.name === null;
  return code === 'for-this-person-only' && unnamed
    ? 'caution.for-this-person-only.unnamed'
    : `caution.${code}`;
}

export function tellSignature({ clinic, options, voice: { say } }: Told): readonly Said[] {
  return options.checkedBy === null
    ? [say('signature.unchecked')]
    : [
        say('signature.checked', { name: own(options.checkedBy) }),
        say('signature.clinic', { clinic: own(clinic.name) }),
      ];
}

export function tellRunning(told: Told): Content['running'] {
  const { say } = told.voice;
  return { header: header(told), footer: footer(told), pageOf: say('running.page-of') };
}

function header({ report, voice: { say, date } }: Told): Said {
  const { name, birthDate } = report.patient;
  if (name === null) return say('running.header.unnamed');
  return birthDate === null
    ? say('running.header.name', { name: own(name) })
    : say('running.header', { name: own(name), date: date(birthDate) });
}

/** A page that leaves the others must still say what it is. */
function footer({ clinic, options, voice: { say } }: Told): Said {
  const values = { clinic: own(clinic.name), phone: ltr(clinic.phone) };
  const unchecked = options.checkedBy === null;
  if (clinic.demo) {
    return say(unchecked ? 'running.footer.example-unchecked' : 'running.footer.example', values);
  }
  return say(unchecked ? 'running.footer.unchecked' : 'running.footer', values);
}
