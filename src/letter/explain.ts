// The English language arrives; a speaker of codes for the clinician's sheet leaves.
import type { FlagRaised, Reason } from '../interpret/interpretation.js';
import { english } from './english.js';
import type { Language } from './language.js';
import { type Speaker, sayFacts } from './say-facts.js';

type Facts = Reason['facts'];

/** Turns codes into the clinician's words, each a whole sentence with its facts inside. */
export type Explain = Speaker & {
  readonly reason: (reason: Reason) => string;
  readonly flag: (raised: FlagRaised) => string;
  readonly coded: (group: string, reason: Reason) => string;
};

/** @throws when a code has no words for its facts: the parity test should have caught it. */
export function explainer(language: Language): Explain {
  const words: Explain['words'] = (key, values = {}) => {
    if (!language.words.exists(key, { ns: 'reasoning' })) {
      throw new Error(`the clinician's sheet has no words for ${key}`);
    }
    return language.words.t(key, { ...values, ns: 'reasoning', nest: false });
  };
  const speaker: Speaker = { words, date: language.date };
  const told = (key: string, facts: Facts, rules: readonly string[]) => {
    const values = sayFacts(facts, rules, speaker);
    return words(sentenceFor(key, Object.keys(values)) ?? key, values);
  };
  return {
    ...speaker,
    reason: ({ code, facts, rules }) => told(`reason.${code}`, facts, rules),
    flag: ({ flag, analyte, facts, rules }) =>
      told(`flag.${flag}`, analyte === null ? facts : { analyte, ...facts }, rules),
    coded: (group, { code, facts }) => withFacts(words, words(`${group}.${code}`), facts),
  };
}

type Sentence = { readonly key: string; readonly variables: readonly string[] };

/**
 * The sentences of a code: the key itself and those that add a part to it for other facts.
 * @example sentencesOf('flag.recent-bleed').map(({ key }) => key)
 *   // ['flag.recent-bleed', 'flag.recent-bleed.bleeding', 'flag.recent-bleed.fall']
 */
export function sentencesOf(key: string): readonly Sentence[] {
  return sentences.get(key) ?? [];
}

/** The sentence that says the most of what is known, and asks for nothing else; null without one. */
function sentenceFor(key: string, known: readonly string[]): string | null {
  const fitting = sentencesOf(key).filter(({ variables }) =>
    variables.every((variable) => known.includes(variable)),
  );
  const most = fitting.toSorted((one, other) => other.variables.length - one.variables.length);
  return most[0]?.key ?? null;
}

const sentences: ReadonlyMap<string, readonly Sentence[]> = gather();

function gather(): ReadonlyMap<string, readonly Sentence[]> {
  const found = new Map<string, Sentence[]>();
  for (const [key, text] of Object.entries(english.reasoning)) {
    const code = key.split('.').slice(0, 2).join('.');
    const list = found.get(code) ?? [];
    list.push({ key, variables: variablesOf(text) });
    found.set(code, list);
  }
  return found;
}

function variablesOf(text: string): readonly string[] {
  return [...text.matchAll(/\{\{([\w-]+)\}\}/g)].map(([, name = '']) => name);
}

/** A sentence with its facts behind it, in the order they were computed. */
function withFacts(words: Speaker['words'], sentence: string, facts: Facts): string {
  const told = Object.entries(facts).map(([name, fact]) =>
    name === 'analyte' || name === 'test' ? words(`analyte.${fact}`) : `${name} ${fact}`,
  );
  return told.length === 0 ? sentence : `${sentence.replace(/\.$/, '')} (${told.join(', ')}).`;
}
