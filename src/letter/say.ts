// A key and its values arrive; one whole sentence leaves, every value isolated in its own direction.
import type { Said } from './content.js';
import type { FridgeKey, LetterKey } from './english.js';
import type { Language } from './language.js';

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
function isolate({ text, direction }: Inserted): string {
  return `${isolates[direction]}${text.replace(directionMarks, '')}${isolateEnd}`;
}

/** Speaks one language to one reader: a person about themselves, or the carer of a child. */
export type Voice = {
  readonly say: (key: LetterKey, values?: Values) => Said;
  readonly food: (id: string) => Said;
  /** Words of the week's sheet. */
  readonly fridge: (key: FridgeKey) => Said;
  readonly date: (iso: string) => Inserted;
  readonly child: boolean;
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
  return {
    child,
    say: (key, values = {}) => ({ key, text: told(language, 'letter', key, values, child) }),
    food: (id) => ({ key: `foods:${id}`, text: told(language, 'foods', id, {}, child) }),
    fridge: (key) => ({ key: `fridge:${key}`, text: told(language, 'fridge', key, {}, child) }),
    date: (iso) => own(language.date(iso)),
  };
}

function told(language: Language, ns: string, key: string, values: Values, child: boolean): string {
  const filled = Object.fromEntries(
    Object.entries(values).map(([name, value]) => [
      name,
      typeof value === 'number' ? value : isolate(value),
    ]),
  );
  const options = { ...filled, ns, nest: false, ...(child ? { context: 'child' } : {}) };
  if (!language.words.exists(key, options)) throw new CannotSay(key);
  return language.words.t(key, options);
}
