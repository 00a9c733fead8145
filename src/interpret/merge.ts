// In: one reading for every group that is still open. Out: only what holds for all of them.
import { patternProfiles, patternRules } from '../knowledge/pattern-rules.js';
import type { Pattern } from '../terms.js';
import type { GradedResult, PatternFound, Reason } from './interpretation.js';
import type { Reading } from './reading.js';
import { explainPattern } from './reasons.js';

/** A result as all readings see it; a position or level they do not share is none. */
export function mergeResults(readings: readonly Reading[]): readonly GradedResult[] {
  const [first, ...others] = readings;
  if (first === undefined) return [];
  return first.results.map((result) => {
    const same = others.map(({ results }) =>
      results.find(({ analyte }) => analyte === result.analyte),
    );
    return same.reduce<GradedResult>(
      (kept, one) => (one === undefined ? kept : agree(kept, one)),
      result,
    );
  });
}

function agree(kept: GradedResult, one: GradedResult): GradedResult {
  const known = [kept.comparedWith, ...kept.also].map((span) => JSON.stringify(span));
  const further = [one.comparedWith, ...one.also].filter(
    (span) => span !== null && !known.includes(JSON.stringify(span)),
  );
  const samePosition = kept.position === one.position;
  const also = [...kept.also, ...further.filter((span) => span !== null)];
  const level = kept.level === one.level ? kept.level : 'not-measured';
  if (samePosition) return { ...kept, level, also };
  const first = kept.comparedWith === null ? [] : [kept.comparedWith];
  return { ...kept, position: null, comparedWith: null, level, also: [...first, ...also] };
}

/** The pattern all readings share, else 'unclear' with what each would say. */
export function mergePatterns(readings: readonly Reading[]): PatternFound {
  const [first, ...others] = readings.map(explainPattern);
  if (first === undefined)
    return { main: 'unclear', companions: [], supports: [], against: [], missing: [] };
  const missing = [...new Set([first, ...others].flatMap((one) => one.missing))];
  if (others.every(({ main }) => main === first.main)) {
    const shared = (patterns: readonly Pattern[]) =>
      patterns.filter((one) => others.every(({ companions }) => companions.includes(one)));
    return {
      ...first,
      companions: shared(first.companions),
      against: uniqueReasons([first, ...others].flatMap(({ against }) => against)),
      missing,
    };
  }
  const against: readonly Reason[] = readings.map(({ person, decision }) => ({
    code: 'readings-differ',
    facts: { group: person.group.slug, pattern: decision.row.pattern },
    rules: [decision.row.id],
  }));
  return { main: 'unclear', companions: [], supports: [], against, missing };
}

/** The rows behind a merged pattern. */
export function patternRulesOf(readings: readonly Reading[], main: Pattern): readonly string[] {
  const decided = readings.flatMap(({ decision }) => [
    decision.row.id,
    ...decision.companions.map(({ id }) => id),
  ]);
  const unclear = main === 'unclear' ? patternRules.slice(-1) : [];
  const profile = patternProfiles.filter(({ pattern }) => pattern === main);
  return [...decided, ...[...unclear, ...profile].map(({ id }) => id)];
}

/** Each reason once, in order. */
export function uniqueReasons(reasons: readonly Reason[]): readonly Reason[] {
  const seen = new Set<string>();
  return reasons.filter((reason) => {
    const key = JSON.stringify([reason.code, reason.facts]);
    const isNew = !seen.has(key);
    seen.add(key);
    return isNew;
  });
}
