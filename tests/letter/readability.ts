// Sentences of a letter arrive; how hard they are to read leaves. Formulas and counting rules stand beside each function.
import { syllable } from 'syllable';

export type Counts = {
  readonly words: number;
  readonly sentences: number;
  readonly syllables: number;
  /** Words of three syllables or more. */
  readonly long: number;
  readonly longestSentence: number;
};

/** Words the general counter gets wrong; English dictionaries. */
const spoken: Readonly<Record<string, number>> = {
  iron: 2,
  ferritin: 3,
  transferrin: 3,
  haemoglobin: 4,
  saturation: 4,
  anaemia: 4,
};

const syllablesOf = (word: string): number => spoken[word.toLowerCase()] ?? syllable(word);

/** A run of letters; an inner apostrophe or hyphen belongs to the word. */
const word = /\p{L}[\p{L}\p{M}]*(?:['’-]\p{L}[\p{L}\p{M}]*)*/gu;
const wordsOf = (text: string): readonly string[] => text.match(word) ?? [];

/** Values, units, dates, phone numbers and names stand in isolates and are not counted. */
const withoutValues = (text: string) => text.replace(/[\u2066-\u2068][^\u2069]*\u2069/gu, '');

/** A sentence ends at . ? ! or with its message or list item; a decimal point ends nothing. */
export function sentencesOf(message: string): readonly string[] {
  return withoutValues(message)
    .split(/[.?!]+(?=\s|"|\)|$)/u)
    .filter((sentence) => wordsOf(sentence).length > 0);
}

export function count(messages: readonly string[]): Counts {
  const sentences = messages.flatMap(sentencesOf).map(wordsOf);
  const words = sentences.flat();
  const syllables = words.map(syllablesOf);
  return {
    words: words.length,
    sentences: sentences.length,
    syllables: syllables.reduce((sum, one) => sum + one, 0),
    long: syllables.filter((one) => one >= 3).length,
    longestSentence: Math.max(0, ...sentences.map((each) => each.length)),
  };
}

export const meanSentence = ({ words, sentences }: Counts) => words / sentences;

/** Flesch-Kincaid grade, Kincaid and others 1975: 0.39 words a sentence + 11.8 syllables a word - 15.59. */
export const fleschKincaid = ({ words, sentences, syllables }: Counts) =>
  0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;

/** Flesch reading ease, Flesch 1948. */
export const fleschEase = ({ words, sentences, syllables }: Counts) =>
  206.835 - 1.015 * (words / sentences) - 84.6 * (syllables / words);

/** SMOG, McLaughlin 1969, equation D; an estimate below thirty sentences. */
export const smog = ({ sentences, long }: Counts) =>
  1.043 * Math.sqrt((30 * long) / sentences) + 3.1291;
