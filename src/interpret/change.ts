// In: a panel and up to six earlier ones. Out: for each test and date, whether it really changed.
import type { Panel, Result } from '../report/report.js';
import type { Change } from './interpretation.js';
import { changeLimit } from './variation.js';

/**
 * Changes against each earlier date, newest first within a test; a doubtful value or a comparator cannot tell.
 * @example changesSince(panel, previous)[0]?.verdict // 'about-the-same' for haemoglobin 112 then 121 g/L
 */
export function changesSince(panel: Panel, previous: readonly Panel[]): readonly Change[] {
  return panel.results.flatMap((now) =>
    previous.flatMap(({ collected, results }) =>
      results
        .filter(({ analyte }) => analyte === now.analyte)
        .map((then) => changeBetween(then, now, collected)),
    ),
  );
}

/** One test on two dates, per cent of the earlier value. */
function changeBetween(then: Result, now: Result, collected: string): Change {
  const earlier = { collected, copied: then.copied, value: then.quantity.value };
  const limits = changeLimit(now.analyte);
  const plain = [then, now].every(
    ({ doubt, quantity }) => doubt === null && quantity.comparator === null,
  );
  if (!plain || limits === null || then.quantity.value <= 0)
    return {
      analyte: now.analyte,
      earlier,
      verdict: 'cannot-tell',
      percent: null,
      limitUp: limits?.up ?? null,
      limitDown: limits?.down ?? null,
      rules: limits?.rules ?? [],
    };
  const percent = (100 * (now.quantity.value - then.quantity.value)) / then.quantity.value;
  // Stryker disable EqualityOperator: the limits hold a square root, which no share of two readings meets.
  const verdict =
    percent > limits.up
      ? 'has-gone-up'
      : percent < -limits.down
        ? 'has-gone-down'
        : 'about-the-same';
  // Stryker restore EqualityOperator
  return {
    analyte: now.analyte,
    earlier,
    verdict,
    percent,
    limitUp: limits.up,
    limitDown: limits.down,
    rules: limits.rules,
  };
}
