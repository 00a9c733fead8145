// Judged reports arrive one by one; a compact page for the clinician who checks them leaves, and a seal for each.
import type { PlannedStep } from '../advise/advice.js';
import type { Explain } from '../letter/explain.js';
import type { Judged } from './judge.js';
import { sealOf } from './seal.js';
import words from './words.json' with { type: 'json' };

/** What a signature is given for: the letter's stem and the hash of all its words depend on. */
export type Seal = { readonly stem: string; readonly seal: string };

export type ReviewRow = Seal & {
  readonly cells: {
    readonly letter: string;
    readonly reading: string;
    readonly results: readonly { readonly test: string; readonly value: string }[];
    readonly steps: string;
  };
};

/** One row a letter; held and refused reports have their own lists and none here. */
export function reviewRow(
  judged: Judged,
  explain: Explain,
  steps: readonly PlannedStep[],
): ReviewRow | null {
  if (judged.kind !== 'letter') return null;
  const { stem, seal, language, approval, understood } = judged;
  const { pattern, results, flags } = understood.interpretation;
  const test = (analyte: string) => explain.words(`analyte.${analyte}`);
  const state =
    approval.done !== null
      ? words.review.released
      : approval.checkedBy === null
        ? words.review.open
        : words.review.signed;
  const patterns = [pattern.main, ...pattern.companions];
  const blurs = new Set(flags.map(({ flag }) => explain.words(`flag.${flag}`)));
  const cells = {
    letter: `${stem} (${language}), ${state}`,
    reading: [...patterns.map((each) => `${explain.words(`pattern.${each}`)}.`), ...blurs].join(
      ' ',
    ),
    results: results.map(({ analyte, copied }) => ({
      test: test(analyte),
      value: `${copied.value} ${copied.unit}`.trim(),
    })),
    steps: steps
      .map(({ step, by }) => [words.step[step], by].filter(Boolean).join(', '))
      .join('; '),
  };
  return { stem, seal, cells };
}

/** What templates/review.hbs is filled with; `run` is the hash of all seals in their order. */
export function reviewPage(rows: readonly ReviewRow[], date: string) {
  return {
    lang: 'en',
    title: words.review.title,
    intro: [words.review.intro, words.review.held],
    date: `${words.letters}: ${date}`,
    run: `${words.review.run}: ${runSeal(rows)}`,
    columns: words.review.columns,
    rows: rows.map(({ cells }) => cells),
  };
}

/** Sixteen digits that change when any letter of the page changes. */
export function runSeal(rows: readonly Seal[]): string {
  return sealOf(rows.map(({ stem, seal }) => [stem, seal])).slice(0, 16);
}

/** Which of the ids wished for may be signed: those whose letter is still what the page showed. */
export function signable(
  wished: readonly string[],
  shown: readonly Seal[],
  now: readonly Seal[],
): {
  readonly fit: readonly Seal[];
  readonly unknown: readonly string[];
  readonly changed: readonly string[];
} {
  const sealsOf = (seals: readonly Seal[]) => new Map(seals.map(({ stem, seal }) => [stem, seal]));
  const [before, after] = [sealsOf(shown), sealsOf(now)];
  const fit: Seal[] = [];
  const unknown: string[] = [];
  const changed: string[] = [];
  for (const stem of new Set(wished)) {
    const seal = before.get(stem);
    if (seal === undefined) unknown.push(stem);
    else if (after.get(stem) !== seal) changed.push(stem);
    else fit.push({ stem, seal });
  }
  return { fit, unknown, changed };
}
