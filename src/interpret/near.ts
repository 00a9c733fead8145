// In: a reading. Out: rules that nearly fired: a pattern one test away, a value just beside a limit.
import { limit } from '../knowledge/limit.js';
import { nearMisses } from './decide.js';
import type { Reason } from './interpretation.js';
import type { Reading } from './reading.js';
import { levelReason, printedValue } from './level-reason.js';

/**
 * Near misses for the clinician: which pattern one level would have changed to, which value lies near its limit.
 * @example nearlyFired(reading)[0] // { code: 'pattern-nearly', facts: { pattern: 'iron-deficiency-anaemia', test: 'haemoglobin', … }, … }
 */
export function nearlyFired(reading: Reading): readonly Reason[] {
  return [...patternsNearby(reading), ...limitsNearby(reading)];
}

function patternsNearby(reading: Reading): readonly Reason[] {
  const { decision, facts, read } = reading;
  const situation = { levels: read.levels, facts: new Set(facts.keys()) };
  const named = new Set([decision.row, ...decision.companions].map(({ pattern }) => pattern));
  const near = nearMisses(situation, decision.row.pattern).filter(
    ({ row }) => !named.has(row.pattern),
  );
  const once = near.filter(
    ({ row, test }, at) =>
      near.findIndex((one) => one.row.pattern === row.pattern && one.test === test) === at,
  );
  return once.map(({ row, test }) => {
    const reason = levelReason(reading, test, read.levels[test]);
    return {
      code: 'pattern-nearly',
      facts: { pattern: row.pattern, test, level: read.levels[test] },
      rules: [row.id, ...(reason?.rules ?? [])],
    };
  });
}

function limitsNearby({ results }: Reading): readonly Reason[] {
  const share = limit('near-limit-share');
  return results.flatMap((one) => {
    if (one.comparator !== null || one.doubt !== null) return [];
    const spans = [one.comparedWith, ...one.also].filter((span) => span !== null);
    return spans.flatMap(({ by, low, high, rule, highRule }) =>
      [
        ...(low === null ? [] : [{ end: low, row: rule }]),
        ...(high === null ? [] : [{ end: high, row: highRule ?? rule }]),
      ]
        .filter(({ end }) => Math.abs(one.value - end) <= (share.value / 100) * end)
        .map(({ end, row }) => ({
          code: 'limit-nearly',
          facts: {
            analyte: one.analyte,
            value: printedValue(one),
            unit: one.unit,
            limit: end,
            by,
            share: share.value,
          },
          rules: [...(row === null ? [] : [row]), share.id],
        })),
    );
  });
}
