// The clinician's choices as typed arrive; steps with their dates and own words leave.
import type { Choices } from '../../advise/advice.js';
import { readDate } from '../../report/index.js';
import { type NextStep, nextSteps } from '../../terms.js';
import { Stop, status } from '../status.js';

type Steps = NonNullable<Choices['steps']>;

/**
 * Null when no step was chosen. Stops with status 64 for an unknown step, a date that is none, and words
 * for a step that was not chosen.
 * @param chosen Each `STEP` or `STEP=YYYY-MM-DD`.
 * @param words Each `STEP=WORDS`; with one step chosen, the words alone will do.
 * @example stepsOf(['referral=2026-12-09'], ['Bring your tablets.'])
 *   // [{ step: 'referral', by: '2026-12-09', words: 'Bring your tablets.' }]
 */
export function stepsOf(
  chosen: readonly string[] | undefined,
  words: readonly string[] | undefined,
): Choices['steps'] {
  const steps = chosen?.map(stepOf) ?? [];
  const own = (words ?? []).map((written) => wordsOf(written, steps));
  if (chosen === undefined) return null;
  return steps.map((step) => ({
    ...step,
    words:
      own
        .filter((each) => each.step === step.step)
        .map(({ text }) => text)
        .join(' ') || null,
  }));
}

function stepOf(written: string): Steps[number] {
  const [name = '', ...rest] = written.split('=');
  const step = nextSteps.find((each) => each === name);
  if (step === undefined)
    throw new Stop(status.usage, [`--next-step: expected one of ${nextSteps.join(', ')}.`]);
  const by = rest.length === 0 ? null : readDate(rest.join('='));
  if (by === null && rest.length > 0)
    throw new Stop(status.usage, ['--next-step: expected a date such as 2026-11-25 after =.']);
  return { step, by, words: null };
}

function wordsOf(
  written: string,
  steps: Steps,
): { readonly step: NextStep; readonly text: string } {
  const named = steps.find(({ step }) => written.startsWith(`${step}=`));
  const only = steps.length === 1 ? steps[0] : undefined;
  const step = (named ?? only)?.step;
  if (step === undefined)
    throw new Stop(status.usage, [
      '--words: expected STEP=WORDS with a step given by --next-step.',
    ]);
  const text = (named === undefined ? written : written.slice(step.length + 1)).trim();
  if (text === '') throw new Stop(status.usage, ['--words: expected words, found none.']);
  return { step, text };
}
