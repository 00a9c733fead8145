// A report, its interpretation and advice arrive; a note for the patient's record leaves: found, said, planned.
import type { Advice, PlannedStep } from '../advise/advice.js';
import type { GradedResult, Interpretation } from '../interpret/interpretation.js';
import type { Report } from '../report/report.js';
import { type Explain, explainer } from './explain.js';
import { isHeld } from './held.js';
import type { Language } from './language.js';
import type { LetterOptions } from './letter-input.js';

/** A longer note is not read in a record. */
const mostNoteWords = 119;

export type NoteFacts = Pick<LetterOptions, 'checkedBy' | 'date' | 'released'> & {
  /** Tags of the letter's languages. */
  readonly languages: readonly string[];
};

/**
 * Says in under 120 words what was found, what the letter said and what is planned. Results outside the
 * range come first; what does not fit is counted, never dropped in silence.
 * @param language English with its reasoning file; the note has no other language.
 * @example composeChartNote(report, interpretation, advice, facts, english) // 'Found: iron tests of 2026-11-20: …'
 */
export function composeChartNote(
  report: Report,
  interpretation: Interpretation,
  advice: Advice,
  facts: NoteFacts,
  language: Language,
): string {
  const explain = explainer(language);
  const results = inNoteOrder(interpretation.results);
  const steps = advice.steps.filter(
    ({ step }) => step !== 'eat-for-iron' || advice.food.mode === 'raise-iron',
  );
  const sizes = [
    ...results.map((_, i) => [results.length - i, steps.length] as const),
    ...[...steps, null].map((_, i) => [0, steps.length - i] as const),
  ];
  const notes = sizes.map(([shownResults, shownSteps]) =>
    [
      found(explain, report, interpretation, results, shownResults),
      ...said(explain, advice, facts, interpretation),
      ...planned(explain, advice, steps, shownSteps, isHeld({ interpretation })),
    ].join('\n'),
  );
  return notes.find((note) => wordsIn(note) <= mostNoteWords) ?? notes.at(-1) ?? '';
}

function wordsIn(text: string): number {
  return text.split(/\s+/).filter((word) => word !== '').length;
}

/** Outside the range, then not placed, then inside it. */
function inNoteOrder(results: readonly GradedResult[]): readonly GradedResult[] {
  const rank = ({ position }: GradedResult) => (position === 'in-range' ? 2 : position ? 0 : 1);
  return [...results].sort((a, b) => rank(a) - rank(b));
}

function found(
  { words }: Explain,
  { panel }: Report,
  { pattern }: Interpretation,
  results: readonly GradedResult[],
  shown: number,
): string {
  const told = results.slice(0, shown).map(({ analyte, copied, position }) =>
    words('note.result', {
      test: words(`analyte.${analyte}`),
      value: `${copied.value} ${copied.unit}`.trim(),
      position: words(`position.${position ?? 'none'}`),
    }),
  );
  const rest = results.length - told.length;
  const all = [...told, ...(rest > 0 ? [words('note.more', { number: String(rest) })] : [])];
  return words('note.found', {
    date: panel.collected,
    results: all.join('; '),
    pattern: words(`pattern.${pattern.main}`),
  });
}

function said(
  { words }: Explain,
  { food }: Advice,
  { checkedBy, date, released, languages }: NoteFacts,
  { hold }: Interpretation,
): readonly string[] {
  const names = new Intl.DisplayNames('en', { type: 'language' });
  const letter = words('note.said', {
    date,
    languages: languages.map((tag) => names.of(tag) ?? tag).join(', '),
  });
  const checked =
    checkedBy === null
      ? words('note.not-checked')
      : words('note.checked', { name: inShort(checkedBy) });
  const held =
    released === null || released === undefined
      ? []
      : [words('note.released', { tier: hold.tier, done: inShort(released.done) })];
  return [[letter, words(`note.food.${food.mode}`), checked, ...held].join(' ')];
}

/** The clinician's own words, as many as a note has room for; the record of the release has them all. */
function inShort(text: string): string {
  const words = text.trim().replace(/\.$/, '').split(/\s+/);
  return words.length > mostOwnWords
    ? `${words.slice(0, mostOwnWords).join(' ')}…`
    : words.join(' ');
}

const mostOwnWords = 12;

function planned(
  { words }: Explain,
  { heardBy }: Advice,
  steps: readonly PlannedStep[],
  shown: number,
  urgent: boolean,
): readonly string[] {
  const told = steps.slice(0, shown).map(({ step, by }) => {
    const phrase = words(`note.step.${step}`);
    return by === null ? phrase : words('note.by', { step: phrase, date: by });
  });
  const rest = steps.length - told.length;
  const all = [...told, ...(rest > 0 ? [words('note.more', { number: String(rest) })] : [])];
  return [
    all.length === 0
      ? words('note.planned.none')
      : words('note.planned', { steps: all.join('; ') }),
    urgent ? words('note.heard-by.urgent') : words('note.heard-by', { date: heardBy }),
  ];
}
