// In: one reading for every group that is still open. Out: only what holds for all of them.
import { patternProfiles, patternRules } from '../knowledge/pattern-rules.js';
import type { Pattern } from '../terms.js';
import type { GradedResult, PatternFound, Reason } from './interpretation.js';
import type { Reading } from './reading.js';
import { explainPattern } from './reasons.js';

/** A result as all readings see it; a position or level they do not share is none. */
export function mergeResults(first: Reading, others: readonly Reading[]): readonly GradedResult[] {
  return first.results.map((result) =>
    others
      .flatMap(({ results }) => results.filter(({ analyte }) => analyte === result.analyte))
      .reduce<GradedResult>(agree, result),
  );
}

function agree(kept: GradedResult, one: GradedResult): GradedResult {
  const spans = [kept, one]
    .flatMap(({ comparedWith, also }) => [comparedWith, ...also])
    .filter((span) => span !== null);
  const written = spans.map((span) => JSON.stringify(span));
  const once = spans.filter((_, at) => written.indexOf(written[at] ?? '') === at);
  const samePosition = kept.position === one.position;
  const comparedWith = samePosition ? kept.comparedWith : null;
  return {
    ...kept,
    position: samePosition ? kept.position : null,
    comparedWith,
    also: once.slice(comparedWith === null ? 0 : 1),
    level: kept.level === one.level ? kept.level : 'not-measured',
  };
}

/** The pattern all readings share, else 'unclear' with what each would say. */
export function mergePatterns(reading: Reading, more: readonly Reading[]): PatternFound {
  const first = explainPattern(reading);
  const others = more.map(explainPattern);
  const missing = [...new Set([first, ...others].flatMap((one) => one.missing))];
  if (others.every(({ main }) => main === first.main)) {
    const shared = (patterns: readonly Pattern[]) =>
      patterns.filter((one) => others.every(({ companions }) => companions.includes(one)));
    const supports = [first, ...others].flatMap((one) => one.supports);
    const byAll = ({ code }: Reason) =>
      [first, ...others].every((each) => each.supports.some((one) => one.code === code));
    return {
      main: first.main,
      companions: shared(first.companions),
      supports: uniqueReasons(supports).filter(byAll),
      against: uniqueReasons([first, ...others].flatMap(({ against }) => against)),
      missing,
    };
  }
  const against: readonly Reason[] = [reading, ...more].map(({ person, decision }) => ({
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
