// Segments from a translator and the units they were made from arrive; what is taken in, and what is refused and why, leave.
import { type ReviewStep, reviewSteps, variablesOf } from '../../letter/index.js';
import type { Problem } from '../../problem.js';
import type { Segment } from './read-xliff.js';
import type { Unit } from './units.js';
import { segmentStates } from './write-xliff.js';

export type Taken = {
  readonly unit: Unit;
  readonly text: string;
  readonly state: Exclude<ReviewStep, 'draft-machine'>;
};
export type TakenIn = {
  readonly taken: readonly Taken[];
  /** Segments that are still as they were and that nobody says they worked on. */
  readonly untouched: number;
  readonly refused: readonly Problem[];
};

/**
 * Holds every segment to the English text of today, to its variables and to its limit.
 * A message is recorded in the state the translator's tool gave it, never in a higher one than `claim`; a text that
 * changed counts as translated at least.
 */
export function takeIn(
  file: string,
  segments: readonly Segment[],
  units: readonly Unit[],
  claim: Exclude<ReviewStep, 'draft-machine'>,
): TakenIn {
  const known = new Map(units.map((unit) => [`${unit.namespace} ${unit.key}`, unit]));
  const taken: Taken[] = [];
  const refused: Problem[] = [];
  let untouched = 0;
  for (const segment of segments) {
    const unit = known.get(`${segment.namespace} ${segment.key}`);
    const text = segment.target?.normalize('NFC') ?? '';
    const state = stateOf(segment, unit, text, claim);
    if (state === null) {
      untouched += 1;
      continue;
    }
    const wrong = faultOf(segment, unit, text);
    if (wrong !== null) refused.push(refusal(file, segment, wrong));
    else if (unit !== undefined) taken.push({ unit, text, state });
  }
  return { taken, untouched, refused };
}

/** Null for a draft that came back as it went. */
function stateOf(
  { state }: Segment,
  unit: Unit | undefined,
  text: string,
  claim: Taken['state'],
): Taken['state'] | null {
  const given = reviewSteps.find((step) => segmentStates[step] === state) ?? 'draft-machine';
  const changed = unit === undefined || unit.target !== text;
  if (!changed && given === 'draft-machine') return null;
  const worked = given === 'draft-machine' ? 'translated' : given;
  return reviewSteps.indexOf(worked) < reviewSteps.indexOf(claim) ? worked : claim;
}

type Wrong = { readonly cannot: string; readonly expected: string };

/** Characters that turn the order of what follows, or that nobody sees. */
const steering = /[\p{Cc}\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069\uFEFF]/u;

function faultOf(segment: Segment, unit: Unit | undefined, text: string): Wrong | null {
  if (unit === undefined)
    return { cannot: 'cannot place the message', expected: 'a message that the language needs' };
  if (segment.source !== unit.source)
    return {
      cannot: 'cannot take a translation of an older English text',
      expected: 'the English text of today; export again',
    };
  if (text.trim() === '') return { cannot: 'cannot take an empty text', expected: 'a translation' };
  const [have, want] = [variablesOf(text).join(' '), variablesOf(unit.source).join(' ')];
  if (have !== want) return { cannot: 'cannot fill the message', expected: want || 'no variable' };
  if (steering.test(text))
    return { cannot: 'cannot take control characters', expected: 'visible characters only' };
  if (unit.limit !== null && [...text].length > unit.limit)
    return { cannot: 'cannot fit the label', expected: `at most ${unit.limit} characters` };
  return null;
}

function refusal(file: string, { namespace, key }: Segment, wrong: Wrong): Problem {
  return {
    code: 'translation-refused',
    place: { file, row: null, field: `${namespace} ${key}` },
    ...wrong,
    found: null,
    remedy: null,
  };
}
