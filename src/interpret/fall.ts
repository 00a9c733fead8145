// In: a panel and earlier ones. Out: the deepest fall of haemoglobin within the last months, if any.
import { limit } from '../knowledge/limit.js';
import { monthsBetween, type Panel } from '../report/index.js';
import { changeLimit } from './variation.js';

export type Fall = {
  /** g/L, then and now. */
  readonly from: number;
  readonly to: number;
  readonly collected: string;
  /** More than chance alone could make. */
  readonly proven: boolean;
  readonly rules: readonly string[];
};

/**
 * The deepest fall of haemoglobin since a test at most three months back; null without such a test.
 * Where it only rose, the smallest rise: `from` under `to`, never proven.
 * Face values: a doubtful fall is still one to ask about.
 * @example fallOfHaemoglobin(panel, previous) // { from: 140, to: 108, collected: '2026-09-01', proven: true, … }
 */
export function fallOfHaemoglobin(panel: Panel, previous: readonly Panel[]): Fall | null {
  const now = haemoglobinOf(panel);
  const within = limit('fall-within-months');
  if (now === undefined) return null;
  const falls = previous
    .filter(({ collected }) => lately(collected, panel.collected, within.value))
    .flatMap(({ collected, results }) =>
      results
        .filter(({ analyte }) => analyte === 'haemoglobin')
        .map(({ quantity }) => ({ from: quantity.value, to: now, collected })),
    );
  const deepest = falls.sort((one, other) => other.from - one.from)[0];
  const limits = changeLimit('haemoglobin');
  // Stryker disable next-line ConditionalExpression: haemoglobin has a row of variation.
  if (deepest === undefined || limits === null) return null;
  const percent = (100 * (deepest.from - deepest.to)) / deepest.from;
  // Stryker disable next-line EqualityOperator: the limit holds a square root, which no share of two readings meets.
  const proven = percent > limits.down;
  return { ...deepest, proven, rules: [within.id, ...limits.rules] };
}

function haemoglobinOf(panel: Panel): number | undefined {
  return panel.results.find(({ analyte }) => analyte === 'haemoglobin')?.quantity.value;
}

/** At most so many months back, to the day. */
function lately(from: string, to: string, months: number): boolean {
  const whole = monthsBetween(from, to);
  return whole < months || (whole === months && from.slice(8) === to.slice(8));
}
