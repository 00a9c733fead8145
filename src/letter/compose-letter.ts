// One person's report, its interpretation and advice arrive; the words of their letter leave, or why it may not be made.
import { type Checked, faulty, fine, type Problem } from '../problem.js';
import type { Clinic } from './clinic.js';
import type { Content } from './content.js';
import { needsCarer } from './letter-ages.js';
import type { LetterInput, Told } from './letter-input.js';
import { CannotSay, voiceOf } from './say.js';
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
  isTrusted,
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
  if (problems.length > 0) return faulty(problems);
  try {
    const told = prepare(input);
    const made = content(told);
    const unsigned = unsignedProblems(told);
    return unsigned.length > 0 ? faulty(unsigned) : fine(made);
  } catch (error) {
    if (error instanceof CannotSay) return faulty([unsaid(input.language.tag, error.key)]);
    throw error;
  }
}

/** What every section is told from: the voice for this reader, and who the reader is. */
export function prepare(input: LetterInput): Told {
  const child = needsCarer(input.report.patient);
  const addressee =
    input.options.addressee ?? (child ? { kind: 'carer', name: null } : { kind: 'patient' });
  const voice = voiceOf(input.language, addressee.kind === 'carer');
  return { ...input, voice, addressee, urgent: isHeld(input) };
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

/** Where only signed translations are wanted, one message that nobody signed stops the letter. */
export function unsignedProblems({ language, options, voice }: Told): readonly Problem[] {
  if (options.signedOnly !== true) return [];
  const unsigned = voice.spoken().filter((message) => !isTrusted(message));
  const [first] = unsigned;
  if (first === undefined) return [];
  return [
    {
      code: 'translation-unsigned',
      place: {
        file: `locales/${language.tag}/${first.namespace}.json`,
        row: null,
        field: first.key,
      },
      cannot: `cannot make this letter from signed translations only: ${unsigned.length} of its messages are not signed`,
      found: first.state,
      expected: 'every message signed by a named, qualified person',
      remedy: `Without --signed-only the letter is made and says so. ironleaf languages export ${language.tag} makes a file for translators.`,
    },
  ];
}

/** True when the results are too urgent for a letter to be the first word about them. */
export function isHeld({ interpretation }: Pick<LetterInput, 'interpretation'>): boolean {
  return interpretation.hold.tier === 'emergency' || interpretation.hold.tier === 'same-day';
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
  return needed
    .filter((field) => clinic[field].trim() === '')
    .map((field) => ({
      code: 'clinic-incomplete',
      place: { file: null, row: null, field: `clinic.${field}` },
      cannot: `cannot make a letter without the clinic's ${field}`,
      found: null,
      expected: 'the number or words that hold for this clinic; there is no default',
      remedy: null,
    }));
}

/** The problem of a message that a language lacks. */
export function unsaid(tag: string, key: string): Problem {
  return {
    code: 'language-message',
    place: { file: `locales/${tag}`, row: null, field: key },
    cannot: 'cannot say this sentence',
    found: null,
    expected: 'a message with this key',
    remedy: null,
  };
}
