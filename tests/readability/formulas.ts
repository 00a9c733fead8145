// Sentences of a letter in any language arrive; how hard they are to read leaves, by formulas published for that language.
import { count, fleschEase, sentencesOf } from '../letter/readability.js';

const word = /\p{L}[\p{L}\p{M}]*(?:['’-]\p{L}[\p{L}\p{M}]*)*/gu;
const wordsOf = (text: string): readonly string[] => text.match(word) ?? [];

/** Words and sentences alone: what can be counted in every language that writes spaces. */
export type Lengths = {
  readonly words: readonly string[];
  readonly sentences: number;
  readonly longest: number;
};

/** Arabic, Devanagari and Chinese have stops of their own. */
const stops = /[؟۔।॥。！？]+/gu;

export function lengthsOf(messages: readonly string[]): Lengths {
  const sentences = messages
    .map((message) => message.replace(stops, '. '))
    .flatMap(sentencesOf)
    .map(wordsOf);
  return {
    words: sentences.flat(),
    sentences: sentences.length,
    longest: Math.max(0, ...sentences.map((each) => each.length)),
  };
}

const share = (part: number, whole: number) => (whole === 0 ? 0 : part / whole);

/** Words of more than six letters count as long (Björnsson 1968). Easy up to 34, 38 about grade 6 (textstat's documentation). */
export function lix(messages: readonly string[]): number {
  const { words, sentences } = lengthsOf(messages);
  const long = words.filter((one) => [...one.normalize('NFC')].length > 6).length;
  return share(words.length, sentences) + 100 * share(long, words.length);
}

/**
 * Syllables of a Spanish word: its nuclei. Two strong vowels, or a weak one with an accent, part; others join.
 * @example spanishSyllables('clínica') // 3
 */
export function spanishSyllables(one: string): number {
  const plain = one
    .toLowerCase()
    .normalize('NFC')
    .replace(/qu/g, 'k')
    .replace(/gu(?=[eiéí])/g, 'g');
  const groups = plain.replace(/^y(?=[aeiouáéíóú])/, '').match(/[aeiouáéíóúüy]+/g) ?? [];
  const nuclei = groups.map(
    (group) =>
      group
        .replace(/([aeoáéó])(?=[aeoáéóíú])/g, '$1|')
        .replace(/([íú])(?=[aeoáéó])/g, '$1|')
        .split('|').length,
  );
  return Math.max(
    1,
    nuclei.reduce((sum, one) => sum + one, 0),
  );
}

/** Szigriszt-Pazos 1993, bands of INFLESZ: 65 to 80 fairly easy, over 80 very easy (Barrio-Cantalejo 2008). */
export function szigrisztPazos(messages: readonly string[]): number {
  const { words, sentences } = lengthsOf(messages);
  const syllables = words.reduce((sum, one) => sum + spanishSyllables(one), 0);
  return 206.835 - 62.3 * share(syllables, words.length) - share(words.length, sentences);
}

/**
 * Syllables of a French word: groups of vowels; a last e, es or ent after a consonant is mute.
 * @example frenchSyllables('prise') // 1
 */
export function frenchSyllables(one: string): number {
  const plain = one
    .toLowerCase()
    .normalize('NFC')
    .replace(/^(?:[ldjnmtsc]|qu)['’]/, '')
    .replace(/qu/g, 'k');
  const heard =
    plain.length > 3 ? plain.replace(/([^aeiouyàâéèêëîïôûùü])(?:e|es|ent)$/, '$1') : plain;
  return Math.max(1, (heard.match(/[aeiouyàâäæéèêëîïôöœûùü]+/g) ?? []).length);
}

/** Kandel and Moles 1958, in the form 209 − 1.15 words a sentence − 68 syllables a word; read like Flesch's ease. */
export function kandelMoles(messages: readonly string[]): number {
  const { words, sentences } = lengthsOf(messages);
  const syllables = words.reduce((sum, one) => sum + frenchSyllables(one), 0);
  return 209 - 1.15 * share(words.length, sentences) - 68 * share(syllables, words.length);
}

/** Characters a sentence; a proxy for Chinese, where no formula of ours stands on checked ground. */
function charactersPerSentence(messages: readonly string[]): number {
  const characters = messages.join('').match(/\p{Script=Han}/gu)?.length ?? 0;
  return share(characters, lengthsOf(messages).sentences);
}

export type Reading = { readonly formula: string; readonly score: number };

/** The formula of the language, or none where none is validated: then only lengths are told. */
export function readingOf(tag: string, messages: readonly string[]): Reading | null {
  switch (tag) {
    case 'en':
      return { formula: 'Flesch reading ease', score: fleschEase(count(messages)) };
    case 'es':
      return { formula: 'Szigriszt-Pazos', score: szigrisztPazos(messages) };
    case 'fr':
      return { formula: 'Kandel-Moles', score: kandelMoles(messages) };
    case 'zh-Hans':
      return { formula: 'characters a sentence', score: charactersPerSentence(messages) };
    case 'pl':
    case 'pt':
    case 'ro':
    case 'uk':
      return { formula: 'LIX', score: lix(messages) };
    default:
      return null;
  }
}
