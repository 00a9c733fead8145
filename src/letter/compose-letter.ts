// One person's report, its interpretation and advice arrive; the words of their letter leave, or why it may not be made.
import { type Checked, faulty, type Problem } from '../problem.js';
import { type Clinic, misleadingDetails } from './clinic.js';
import type { Content } from './content.js';
import { isHeld } from './held.js';
import { needsCarer } from './letter-ages.js';
import type { LetterInput, Told } from './letter-input.js';
import {
  tellCautions,
  tellChoices,
  tellContact,
  tellRunning,
  tellSignature,
} from './sections/closing.js';
import { tellFood } from './sections/food.js';
import { tellHelp } from './sections/help.js';
import { tellMeaning } from './sections/meaning.js';
import {
  tellAbout,
  tellBands,
  tellGreeting,
  tellReleased,
  tellSender,
} from './sections/opening.js';
import { tellPicture } from './sections/picture.js';
import { tellResults } from './sections/results.js';
import { tellOurSteps, tellYourSteps } from './sections/steps.js';
import { tellSummary } from './sections/summary.js';
import { tellTablets } from './sections/tablets.js';
import { tellWith } from './tell-with.js';

/**
 * Says one letter in one language. Pure: the date, the clinic and the language come in.
 * Refused, with problems: a held letter nobody released; a clinic without phone, hours or emergency number.
 * @example composeLetter({ report, interpretation, advice, clinic, language, options })
 */
export function composeLetter(input: LetterInput): Checked<Content> {
  const problems = [
    ...holdProblems(input),
    ...clinicProblems(input.clinic),
    ...addresseeProblems(input),
  ];
  return problems.length > 0 ? faulty(problems) : tellWith(input, content);
}

function content(told: Told): Content {
  const { say } = told.voice;
  const words = {
    lang: told.language.tag,
    dir: told.language.dir,
    title: say('title'),
    documentTitle: say('document-title').text,
    sender: tellSender(told),
    about: tellAbout(told),
    greeting: tellGreeting(told),
    released: tellReleased(told),
    summary: tellSummary(told),
    yourSteps: tellYourSteps(told),
    ourSteps: tellOurSteps(told),
    results: tellResults(told),
    meaning: tellMeaning(told),
    picture: tellPicture(told),
    food: tellFood(told),
    tablets: tellTablets(told),
    help: tellHelp(told),
    choices: tellChoices(told),
    contact: tellContact(told),
    closing: { heading: say('closing.heading') },
    cautions: tellCautions(told),
    signature: tellSignature(told),
    running: tellRunning(told),
  };
  return { ...words, bands: tellBands(told) };
}

function holdProblems(input: LetterInput): readonly Problem[] {
  if (!isHeld(input)) return [];
  const released = input.options.released ?? null;
  const complete = released !== null && released.by.trim() !== '' && released.done.trim() !== '';
  if (complete) return [];
  return [
    {
      code: 'letter-held',
      place: input.report.place,
      cannot: `cannot make this letter: the results need a person first (${input.interpretation.hold.tier})`,
      found: null,
      expected: 'a named clinician who releases it and says what was done',
      remedy: 'Phone first. The call sheet says what to say.',
    },
  ];
}

/** A letter to a carer speaks of "your child"; an adult is spoken to. */
function addresseeProblems({ options, report }: LetterInput): readonly Problem[] {
  if (options.addressee?.kind !== 'carer' || needsCarer(report.patient)) return [];
  return [
    {
      code: 'letter-addressee',
      place: report.place,
      cannot: "cannot address an adult's letter to a parent or carer",
      found: null,
      expected: 'the patient as reader',
      remedy: null,
    },
  ];
}

function clinicProblems(clinic: Clinic): readonly Problem[] {
  const needed = ['name', 'phone', 'hours', 'emergencyNumber'] as const;
  const missing = needed
    .filter((field) => clinic[field].trim() === '')
    .map((field) => ({
      code: 'clinic-incomplete',
      place: { file: null, row: null, field: `clinic.${field}` },
      cannot: `cannot make a letter without the clinic's ${field}`,
      found: null,
      expected: 'the number or words that hold for this clinic; there is no default',
      remedy: null,
    }));
  return [...missing, ...misleadingDetails(clinic, null)];
}
