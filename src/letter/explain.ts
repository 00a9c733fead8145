// The English language arrives; a speaker of codes for the clinician's sheet leaves.
import type { Reason } from '../interpret/interpretation.js';
import type { Language } from './language.js';

/** Turns codes into the clinician's words; facts stand behind the sentence as they were computed. */
export type Explain = {
  readonly words: (key: string, values?: Readonly<Record<string, string>>) => string;
  readonly coded: (group: string, reason: Reason) => string;
  readonly reason: (reason: Reason) => string;
  readonly withFacts: (sentence: string, facts: Reason['facts']) => string;
};

/** @throws when a code has no words: the parity test should have caught it. */
export function explainer(language: Language): Explain {
  const words: Explain['words'] = (key, values = {}) => {
    if (!language.words.exists(key, { ns: 'reasoning' })) {
      throw new Error(`the clinician's sheet has no words for ${key}`);
    }
    return language.words.t(key, { ...values, ns: 'reasoning', nest: false });
  };
  const withFacts: Explain['withFacts'] = (sentence, facts) => {
    const told = tellFacts(words, sentence, facts);
    return told.length === 0 ? sentence : `${sentence.replace(/\.$/, '')} (${told.join(', ')}).`;
  };
  const coded: Explain['coded'] = (group, { code, facts }) =>
    withFacts(words(`${group}.${code}`), facts);
  return { words, coded, reason: (reason) => coded('reason', reason), withFacts };
}

/**
 * Facts in the order they were computed: a value with its unit, names of tests and patterns in words.
 * @example for 'Ferritin is low.' and { analyte: 'ferritin', value: 9, unit: 'ug/L' }: ['9 ug/L']
 */
function tellFacts(
  words: Explain['words'],
  sentence: string,
  facts: Reason['facts'],
): readonly string[] {
  const unit = facts.unit === undefined ? '' : ` ${facts.unit}`;
  return Object.entries(facts).flatMap(([name, fact]) => {
    if (name === 'unit') return [];
    if (name === 'value') return [`${fact}${unit}`];
    if (name === 'limit') return [`${spaced(name)} ${fact}${unit}`];
    if (name === 'pattern') return [words(`pattern.${fact}`)];
    if (name !== 'analyte' && name !== 'test') return [`${spaced(name)} ${fact}`];
    const test = words(`analyte.${fact}`);
    return sentence.includes(test) ? [] : [test];
  });
}

const spaced = (name: string) =>
  name.replace(
    /([a-z])([A-Z])/g,
    (_all, before: string, after: string) => `${before} ${after.toLowerCase()}`,
  );
