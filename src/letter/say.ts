// A key and its values arrive; one whole sentence leaves, every value isolated in its own direction.
import { type Bounded, bounded } from '../bounded.js';
import type { Said } from './content.js';
import type { EasyReadKey, FridgeKey, LetterKey, Namespace, SpokenKey } from './english.js';
import type { Language } from './language.js';
import type { ReviewState } from './record.js';

/** Left to right whatever surrounds it: results, units, intervals, phone numbers. */
export type Inserted = { readonly text: string; readonly direction: 'ltr' | 'own' };
export type Values = Readonly<Record<string, Inserted | number>>;

export const ltr = (text: string): Inserted => ({ text, direction: 'ltr' });
/** Names, dates and a person's own words keep the direction of their first letter. */
export const own = (text: string): Inserted => ({ text, direction: 'own' });

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
  const spoken = new Map<string, Spoken>();
  const told = (namespace: Namespace, key: string, values: Values): string => {
    const { text, message } = tellOnce(language, namespace, key, values, child);
    const place = `${namespace} ${message.key}`;
    if (!spoken.has(place)) spoken.set(place, message);
    return text;
  };
  return {
    child,
    say: (key, values = {}) => ({ key, text: told('letter', key, values) }),
    food: (id) => ({ key: `foods:${id}`, text: told('foods', id, {}) }),
    fridge: (key) => ({ key: `fridge:${key}`, text: told('fridge', key, {}) }),
    easy: (key, values = {}) => ({ key: `easy:${key}`, text: told('easy-read', key, values) }),
    aloud: (key, values = {}) => ({ key: `aloud:${key}`, text: told('spoken', key, values) }),
    date: (iso) => own(language.date(iso)),
    spoken: () => [...spoken.values()],
  };
}

type Sentence = { readonly text: string; readonly message: Spoken };

/** Letters of one evening share most of their sentences; those with a name or a value in them come and go. */
const saidBefore = new WeakMap<Language, Bounded<Sentence>>();
const mostSaid = 4000;

function tellOnce(
  language: Language,
  namespace: Namespace,
  key: string,
  values: Values,
  child: boolean,
): Sentence {
  const before = saidBefore.get(language) ?? bounded<Sentence>(mostSaid);
  saidBefore.set(language, before);
  const asked = `${namespace} ${child ? 'child' : 'own'} ${key} ${JSON.stringify(values)}`;
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
