// One letter arrives; its scores and everything a gate has against it leave.

import { plain, spokenProse } from '../letter/read-content.js';
import { count, fleschKincaid, sentencesOf, smog } from '../letter/readability.js';
import { lengthsOf, type Reading, readingOf } from './formulas.js';
import type { Letter } from './letters.js';
import { passagesOf } from './passages.js';
import { bannedWords, glosses, jargon, secondWords, terms } from './words.js';

export type Scores = {
  readonly words: number;
  readonly meanSentence: number;
  readonly longestSentence: number;
  readonly longestParagraph: number;
  readonly reading: Reading | null;
  /** English only: Flesch-Kincaid grade, the same without the terms that must stand, SMOG, share in active voice. */
  readonly english: {
    readonly grade: number;
    readonly gradeWithoutTerms: number;
    readonly smog: number;
    readonly active: number;
  } | null;
};

export type Verdict = {
  readonly name: string;
  readonly language: string;
  readonly scores: Scores;
  /** Empty when every gate is passed; languages other than English have no gate here. */
  readonly faults: readonly string[];
};

/**
 * Limits. Grade 6: American Family Physician 2015;92:118 (grade 5 to 6). Twenty words a sentence and three
 * sentences a paragraph: NHS digital service manual, content. Fifteen words in easy read: Department of Health,
 * Easy Read basics 2009. SMOG 9, the mean of twelve and four fifths in active voice (PEMAT-P, item 5) as a
 * number: this project's own proposals.
 */
export const limits = {
  grade: 6,
  smog: 9,
  meanSentence: 12,
  longestSentence: 20,
  easyRead: 15,
  paragraph: 3,
  active: 0.8,
} as const;

/** A form of 'be' and a participle after it; approximate, on the strict side. Common practice, no source. */
const passive =
  /\b(?:am|is|are|was|were|be|been|being)\s+(?:\w+ly\s+|not\s+)?(?:\w{2,}ed|known|taken|given|seen|held|made|done|found|told|sent|worn|lost|kept)\b/i;

export function judge(letter: Letter): Verdict {
  const prose = spokenProse(letter.content);
  const lengths = lengthsOf(prose);
  const passages = passagesOf(letter.document);
  const scores: Scores = {
    words: lengths.words.length,
    meanSentence: lengths.words.length / lengths.sentences,
    longestSentence: lengths.longest,
    longestParagraph: Math.max(...passages.map(({ unbold }) => sentencesOf(unbold).length)),
    reading: readingOf(letter.language, prose),
    english: letter.language === 'en' ? englishScores(prose) : null,
  };
  const faults =
    letter.language === 'en' ? [...overLimits(scores, letter), ...wordFaults(letter)] : [];
  return { name: letter.name, language: letter.language, scores, faults };
}

function englishScores(prose: readonly string[]) {
  const counts = count(prose);
  const required = new RegExp(`\\b(?:${terms.join('|')})\\b`, 'gi');
  const sentences = prose.flatMap(sentencesOf);
  return {
    grade: fleschKincaid(counts),
    gradeWithoutTerms: fleschKincaid(count(prose.map((text) => text.replace(required, '')))),
    smog: smog(counts),
    active: 1 - sentences.filter((sentence) => passive.test(sentence)).length / sentences.length,
  };
}

function overLimits(scores: Scores, { easyRead }: Letter): readonly string[] {
  const { english, longestParagraph, meanSentence: mean, longestSentence } = scores;
  const over = (name: string, value: number, most: number) =>
    value > most ? [`${name} ${Math.round(value * 10) / 10} is over ${most}`] : [];
  return [
    ...over('mean sentence', mean, limits.meanSentence),
    ...over(
      'longest sentence',
      longestSentence,
      easyRead ? limits.easyRead : limits.longestSentence,
    ),
    ...over('sentences in a paragraph', longestParagraph, limits.paragraph),
    ...over('grade', english?.grade ?? 0, limits.grade),
    ...over('SMOG', english?.smog ?? 0, limits.smog),
    ...(english !== null && english.active < limits.active
      ? [`active voice ${Math.round(english.active * 100)} % is under ${limits.active * 100} %`]
      : []),
  ];
}

function wordFaults(letter: Letter): readonly string[] {
  const texts = passagesOf(letter.document).map(({ text }) => plain(text));
  const own = (pattern: RegExp, says: string) =>
    texts.flatMap((text) => {
      const found = pattern.exec(text)?.[0];
      return found === undefined ? [] : [`${says} "${found}"`];
    });
  return [
    ...own(bannedWords, 'banned word'),
    ...own(jargon, 'jargon'),
    ...own(secondWords, 'second word for one thing'),
    ...unexplained(texts).map((term) => `"${term}" is not explained at first use`),
  ];
}

/** A term is explained when its first use stands in brackets after everyday words, or a gloss stands in its sentence. */
export function unexplained(texts: readonly string[]): readonly string[] {
  const whole = texts.join('\n');
  return terms.filter((term) => {
    const first = new RegExp(`(?<![\\w-])${term}(?![\\w-])`, 'i').exec(longerGone(whole, term));
    if (first === null) return false;
    const start = whole.lastIndexOf('\n', first.index) + 1;
    const line = whole.slice(start, whole.indexOf('\n', first.index) + 1 || undefined);
    const inBrackets = new RegExp(`\\p{L} \\(${term}\\)`, 'iu').test(line);
    return !inBrackets && glosses[term]?.test(line) !== true;
  });
}

/** 'Transferrin' inside 'transferrin saturation' is not the shorter term. */
function longerGone(text: string, term: string): string {
  return terms
    .filter((other) => other !== term && other.includes(term))
    .reduce(
      (rest, longer) => rest.replace(new RegExp(longer, 'gi'), (found) => '·'.repeat(found.length)),
      text,
    );
}
