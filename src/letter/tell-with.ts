// What a letter is made from, and a way to tell it, arrive; what was told leaves, or which message stood in its way.
import { type Checked, faulty, fine, type Problem } from '../problem.js';
import { clinicIn } from './clinic.js';
import { isHeld } from './held.js';
import { needsCarer } from './letter-ages.js';
import type { LetterInput, Told } from './letter-input.js';
import { CannotSay, voiceOf } from './say.js';
import { isTrusted } from './sections/opening.js';

/**
 * Tells in the voice for this reader.
 * Problems: a message that the language lacks; where only signed translations are wanted, one that nobody signed.
 * @example tellWith(input, ({ voice }) => voice.say('title')) // { ok: true, value: { key: 'title', text: … }, notes: [] }
 */
export function tellWith<T>(input: LetterInput, tell: (told: Told) => T): Checked<T> {
  const told = toldFrom(input);
  try {
    const value = tell(told);
    const unsigned = unsignedProblems(told);
    return unsigned.length > 0 ? faulty(unsigned) : fine(value);
  } catch (error) {
    if (error instanceof CannotSay) return faulty([unsaid(input.language.tag, error.key)]);
    throw error;
  }
}

function toldFrom(input: LetterInput): Told {
  const child = needsCarer(input.report.patient);
  const addressee =
    input.options.addressee ?? (child ? { kind: 'carer', name: null } : { kind: 'patient' });
  const voice = voiceOf(input.language, addressee.kind === 'carer');
  const clinic = clinicIn(input.clinic, input.language.tag);
  return { ...input, clinic, voice, addressee, urgent: isHeld(input) };
}

function unsignedProblems({ language, options, voice }: Told): readonly Problem[] {
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

function unsaid(tag: string, key: string): Problem {
  return {
    code: 'language-message',
    place: { file: `locales/${tag}`, row: null, field: key },
    cannot: 'cannot say this sentence',
    found: null,
    expected: 'a message with this key',
    remedy: null,
  };
}
