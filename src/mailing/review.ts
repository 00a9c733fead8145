// Judged reports arrive one by one; a compact page for the clinician who checks them leaves, and a seal for each.
import type { PlannedStep } from '../advise/advice.js';
import type { Explain } from '../letter/explain.js';
import type { Position } from '../terms.js';
import type { Judged } from './judge.js';
import { languageName } from './language-name.js';
import { sealOf } from './seal.js';
import words from './words.json' with { type: 'json' };

/** What a signature is given for: the letter's stem and the hash of all its words depend on. */
export type Seal = { readonly stem: string; readonly seal: string };

export type ReviewRow = Seal & {
  /** Signed or released. */
  readonly settled: boolean;
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
  const state =
    approval.done !== null
      ? words.review.released
      : approval.checkedBy === null
        ? null
        : words.review.signed;
  const patterns = [pattern.main, ...pattern.companions];
  const blurs = new Set(flags.map(({ flag }) => explain.words(`flag.${flag}`)));
  const cells = {
    letter: [stem, languageName(language), state].filter((each) => each !== null).join(', '),
    reading: [...patterns.map((each) => `${explain.words(`pattern.${each}`)}.`), ...blurs].join(
      ' ',
    ),
    results: results.map(({ analyte, copied, position }) => ({
      test: words.analyte[analyte],
      value: `${copied.value} ${copied.unit} ${markOf(position)}`.trim(),
    })),
    steps: steps
      .map(({ step, by }) => [words.step[step], by].filter(Boolean).join(', '))
      .join('; '),
  };
  return { stem, seal, settled: state !== null, cells };
}

/** As laboratories mark a result: L and H of HL7 v2, table 0078. */
function markOf(position: Position | null): string {
  if (position === null || position === 'in-range') return '';
  return position.endsWith('below') ? '(L)' : '(H)';
}

/** What templates/review.hbs is filled with; `run` is the hash of all seals in their order. */
export function reviewPage(rows: readonly ReviewRow[], date: string) {
  return {
    lang: 'en',
    title: words.review.title,
    intro: [words.review.intro, words.review.sign, words.review.held],
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

/**
 * The ids that wait for a signature, one a line, for a clinician to shorten.
 * @param rows of the page; those signed or released are left out.
 */
export function idsToSign(rows: readonly ReviewRow[]): string {
  const open = rows.filter(({ settled }) => !settled).map(({ stem }) => stem);
  return ['# Delete the line of every letter that you do not agree with.', ...open, ''].join('\n');
}

/** The ids of such a file. @example readIds('# remark\nSB-1\n') // ['SB-1'] */
export function readIds(text: string): readonly string[] {
  const lines = text.split(/\r?\n/).map((line) => line.trim());
  return lines.filter((line) => line !== '' && !line.startsWith('#'));
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
