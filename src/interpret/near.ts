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
  const said = new Set([decision.row, ...decision.companions].map(({ pattern }) => pattern));
  return nearMisses(situation, said).map(({ row, test }) => {
    // Stryker disable next-line OptionalChaining,ArrayDeclaration: a measured test always has a reason.
    const rules = levelReason(reading, test, read.levels[test])?.rules ?? [];
    return {
      code: 'pattern-nearly',
      facts: { pattern: row.pattern, test, level: read.levels[test] },
      rules: [row.id, ...rules],
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
        { end: low, row: rule },
        { end: high, row: highRule ?? rule },
      ].flatMap(({ end, row }) => {
        if (end === null || Math.abs(one.value - end) > (share.value / 100) * end) return [];
        const facts = {
          analyte: one.analyte,
          value: printedValue(one),
          unit: one.unit,
          limit: end,
          by,
          share: share.value,
        };
        const rules = row === null ? [share.id] : [row, share.id];
        return [{ code: 'limit-nearly', facts, rules }];
      }),
    );
  });
}
