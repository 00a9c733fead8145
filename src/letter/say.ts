// A key and its values arrive; one whole sentence leaves, every value isolated in its own direction.
import { type Bounded, bounded } from '../bounded.js';
import type { Said } from './content.js';
import type { EasyReadKey, FridgeKey, LetterKey, Namespace, SpokenKey } from './english.js';
import type { Language } from './language.js';
import type { ReviewState } from './record.js';

/** Left to right whatever surrounds it: results, units, intervals, phone numbers. */
export type Inserted = { readonly text: string; readonly direction: 'ltr' | 'own' };
export type Values = Readonly<Record<string, Inserted | number>>;

const none: Values = {};

export const ltr = (text: string): Inserted => ({ text, direction: 'ltr' });
/** Names, dates and a person's own words keep the direction of their first letter. */
export const own = (text: string): Inserted => ({ text, direction: 'own' });
/** A number to call; words in its place, such as 'the number on your card', keep their own direction. */
export const dial = (text: string): Inserted => (/\p{L}/u.test(text) ? own(text) : ltr(text));

const isolates = { ltr: '\u2066', own: '\u2068' } as const;
const isolateEnd = '\u2069';
const directionMarks = /[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/g;

/** Marks of direction inside a value would reach beyond it, so they are dropped; letters and digits are kept. */
export function isolate({ text, direction }: Inserted): string {
  return `${isolates[direction]}${text.replace(directionMarks, '')}${isolateEnd}`;
}

/** Speaks one language to one reader: a person about themselves, or the carer of a child. */
export type Voice = {
  readonly say: (key: LetterKey, values?: Values) => Said;
  readonly food: (id: string) => Said;
  /** Words of the week's sheet. */
  readonly fridge: (key: FridgeKey) => Said;
  /** Words that only the easy-read letter has. */
  readonly easy: (key: EasyReadKey, values?: Values) => Said;
  /** Words that only a letter read aloud has. */
  readonly aloud: (key: SpokenKey, values?: Values) => Said;
  readonly date: (iso: string) => Inserted;
  readonly child: boolean;
  /** Every message said so far, by its exact key, with how far it is checked. */
  readonly spoken: () => readonly Spoken[];
};

export type Spoken = {
  readonly namespace: Namespace;
  readonly key: string;
  readonly state: ReviewState;
};

/** A message that cannot be said stops the letter: half a sentence is worse than none. */
export class CannotSay extends Error {
  constructor(readonly key: string) {
    super(`no words for ${key}`);
  }
}

/**
 * @example voiceOf(english, false).say('step.heard-by', { date, phone }).text
 */
export function voiceOf(language: Language, child: boolean): Voice {
  const spoken = new Set<Spoken>();
  const told = (namespace: Namespace, key: string, values: Values): string => {
    const { text, message } = tellOnce(language, namespace, key, values, child);
    spoken.add(message);
    return text;
  };
  return {
    child,
    say: (key, values = none) => ({ key, text: told('letter', key, values) }),
    food: (id) => ({ key: `foods:${id}`, text: told('foods', id, none) }),
    fridge: (key) => ({ key: `fridge:${key}`, text: told('fridge', key, none) }),
    easy: (key, values = none) => ({ key: `easy:${key}`, text: told('easy-read', key, values) }),
    aloud: (key, values = none) => ({ key: `aloud:${key}`, text: told('spoken', key, values) }),
    date: (iso) => own(language.date(iso)),
    // The same message may have been said with other values.
    spoken: () => {
      const byKey = [...spoken].map((one) => [`${one.namespace} ${one.key}`, one] as const);
      return [...new Map(byKey).values()];
    },
  };
}

type Sentence = { readonly text: string; readonly message: Spoken };

/** Letters of one evening share most of their sentences; those with a name or a value in them come and go. */
const saidBefore = new WeakMap<Language, Map<string, Bounded<Sentence>>>();
const mostSaid = 2000;

function memoryOf(language: Language, namespace: Namespace, child: boolean): Bounded<Sentence> {
  const memories = saidBefore.get(language) ?? new Map<string, Bounded<Sentence>>();
  saidBefore.set(language, memories);
  const name = child ? `${namespace} child` : namespace;
  const memory = memories.get(name) ?? bounded<Sentence>(mostSaid);
  memories.set(name, memory);
  return memory;
}

function tellOnce(
  language: Language,
  namespace: Namespace,
  key: string,
  values: Values,
  child: boolean,
): Sentence {
  const before = memoryOf(language, namespace, child);
  const asked = values === none ? key : `${key} ${JSON.stringify(values)}`;
  const known = before.get(asked);
  if (known !== undefined) return known;
  const { text, exactKey } = tell(language, namespace, key, values, child);
  const state = language.stateOf(namespace, exactKey);
  const sentence = { text, message: { namespace, key: exactKey, state } };
  before.set(asked, sentence);
  return sentence;
}

function tell(
  language: Language,
  ns: Namespace,
  key: string,
  values: Values,
  child: boolean,
): { readonly text: string; readonly exactKey: string } {
  const filled = Object.fromEntries(
    Object.entries(values).map(([name, value]) => [
      name,
      typeof value === 'number' ? value : isolate(value),
    ]),
  );
  const options = { ...filled, ns, nest: false, ...(child ? { context: 'child' } : {}) };
  if (!language.words.exists(key, options)) throw new CannotSay(key);
  const { res, exactUsedKey } = language.words.t(key, { ...options, returnDetails: true });
  return { text: res, exactKey: exactUsedKey };
}
