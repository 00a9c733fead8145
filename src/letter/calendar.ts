// Dated steps of a letter arrive; what a calendar says of each leaves, with no name and no result in it.
import type { NextStep } from '../terms.js';
import type { Checked } from '../problem.js';
import type { Said } from './content.js';
import { isHeld } from './held.js';
import type { LetterInput, Told } from './letter-input.js';
import { ltr } from './say.js';
import { tellContact } from './sections/closing.js';
import { tellBands } from './sections/opening.js';
import { tellYourSteps } from './sections/steps.js';
import { tellWith } from './tell-with.js';

export type CalendarEvent = {
  readonly step: NextStep | 'heard-by';
  /** ISO date; the event takes the whole day. */
  readonly by: string;
  readonly summary: Said;
};

export type Calendar = {
  readonly lang: string;
  /** ISO date of the letter. */
  readonly made: string;
  readonly events: readonly CalendarEvent[];
  /** The clinic and how to reach it, beside every event. */
  readonly details: readonly string[];
};

/**
 * One event for each step with a date, and one for the day after which silence means: call us.
 * The clinician's own words stay in the letter: they may hold a name or a result.
 * Problems: those of messages, as `tellWith`.
 * @example composeCalendar(input) // { ok: true, value: { events: [{ step: 'repeat-test', by: '2027-02-20', … }] } }
 */
export function composeCalendar(input: LetterInput): Checked<Calendar> {
  return tellWith(input, tell);
}

function tell(told: Told): Calendar {
  const { advice, clinic, language, options, voice } = told;
  const phone = ltr(clinic.phone);
  // Isolates are for letters that run from the right; elsewhere some calendars would print them as boxes.
  const plain = ({ key, text }: Said): Said => ({
    key,
    text: language.dir === 'rtl' ? text : text.replace(/[\u2066-\u2069]/g, ''),
  });
  const dated = advice.steps.flatMap(({ step, who, by }) =>
    by === null ? [] : [{ step, by, summary: voice.say(`step.${step}.${who}`, { phone }) }],
  );
  const events = [...dated, ...silence(told)];
  return {
    lang: language.tag,
    made: options.date,
    events: events.map((event) => ({ ...event, summary: plain(event.summary) })),
    details: [
      clinic.name,
      ...[...tellContact(told).lines, ...tellBands(told)].map((said) => plain(said).text),
    ],
  };
}

/** An urgent letter sends nobody to wait for a date. */
function silence(told: Told): readonly CalendarEvent[] {
  // The letter's last step of the reader's own is always this one.
  const last = tellYourSteps(told).steps.at(-1);
  if (isHeld(told) || last === undefined) return [];
  return [{ step: 'heard-by', by: told.advice.heardBy, summary: last.text }];
}
