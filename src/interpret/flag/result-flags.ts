// In: a reading and its panel. Out: flags of single results: doubts, comparators, limits, what the laboratory said.
import { crossCheck, type LabFlag, type Panel, type Result } from '../../report/index.js';
import type { Comparison, FlagRaised, GradedResult } from '../interpretation.js';
import { usable } from '../grade.js';
import { above, below } from '../measure.js';
import { levelOf } from '../position.js';
import type { Reading } from '../reading.js';
import { raise } from './raise.js';

/** Flags of single results. */
export function resultFlags(reading: Reading, panel: Panel): readonly FlagRaised[] {
  const single = panel.results.flatMap((result) =>
    reading.results
      .filter(({ analyte }) => analyte === result.analyte)
      .flatMap((graded) => flagsOf(result, graded)),
  );
  const cross = crossCheck(panel).map(({ rule, analytes, found }) =>
    raise('indices-disagree', {
      facts: { tests: analytes.join(' '), found: Math.round(found * 100) / 100 },
      rules: [rule],
    }),
  );
  return [
    ...single,
    ...reading.results.filter(({ derived }) => derived).flatMap(limitFlags),
    ...cross,
  ];
}

function flagsOf(result: Result, graded: GradedResult): readonly FlagRaised[] {
  const { analyte, doubt, preliminary } = result;
  const sure = doubt === null;
  return [
    ...(sure ? [] : [raise(`${doubt.kind}-doubtful`, { analyte, rules: [doubt.rule] })]),
    ...(preliminary ? [raise('preliminary-result', { analyte })] : []),
    ...(sure && undecided(graded) ? [raise('comparator-undecided', { analyte })] : []),
    ...(sure && labDisagrees(result)
      ? [raise('lab-flag-disagrees', { analyte, facts: { flag: result.labFlag ?? '' } })]
      : []),
    ...(sure ? guidelineFlags(graded) : []),
    ...(sure ? limitFlags(graded) : []),
  ];
}

function undecided({ comparator, position, comparedWith, level }: GradedResult): boolean {
  return (
    comparator !== null && comparedWith !== null && (position === null || level === 'not-measured')
  );
}

const sides: Readonly<Record<LabFlag, 'low' | 'high' | 'usual' | 'any'>> = {
  N: 'usual',
  L: 'low',
  LU: 'low',
  LL: 'low',
  H: 'high',
  HU: 'high',
  HH: 'high',
  A: 'any',
  AA: 'any',
};

/** The laboratory's mark against the laboratory's own interval. */
function labDisagrees({ labFlag, interval, quantity }: Result): boolean {
  const own = usable(interval);
  // Stryker disable next-line ConditionalExpression: without a mark there is no side to disagree with.
  if (labFlag === null) return false;
  if (own === null) return false;
  // Nothing lies under zero, so an interval without a lower end begins there.
  const low = below(quantity, own.low ?? 0);
  const high = own.high === null ? 'no' : above(quantity, own.high);
  switch (sides[labFlag]) {
    case 'low':
      return low === 'no';
    case 'high':
      return high === 'no';
    case 'usual':
      return low === 'yes' || high === 'yes';
    case 'any':
      return low === 'no' && high === 'no';
  }
}

function guidelineFlags(graded: GradedResult): readonly FlagRaised[] {
  const { analyte, comparedWith, also, level } = graded;
  if (comparedWith === null) return [];
  const guidelines = [comparedWith, ...also].filter(({ by }) => by === 'guideline');
  const seen = new Set(guidelines.map(levelBy).filter((one) => one !== 'not-measured'));
  const rules = rowsBehind(guidelines);
  const own = levelBy(comparedWith);
  const decided = level === 'not-measured' ? own : level;
  const differs =
    comparedWith.by === 'laboratory' &&
    own !== 'not-measured' &&
    (decided !== own || [...seen].some((one) => one !== own));
  return [
    ...(differs ? [raise('lab-and-guideline-disagree', { analyte, rules })] : []),
    ...(seen.size > 1 ? [raise('guidelines-disagree', { analyte, rules })] : []),
  ];
}

function levelBy({ position }: Comparison) {
  return levelOf(position);
}

function limitFlags(graded: GradedResult): readonly FlagRaised[] {
  const { analyte, value, unit, comparator, comparedWith, also } = graded;
  if (comparator !== null || comparedWith === null) return [];
  const met = [comparedWith, ...also].filter(({ low, high }) => value === low || value === high);
  const facts = { value, unit };
  return met.length === 0
    ? []
    : [raise('at-the-limit', { analyte, facts, rules: rowsBehind(met) })];
}

/** A laboratory's own interval has no row. */
function rowsBehind(spans: readonly Comparison[]): readonly string[] {
  return spans.map(({ rule }) => rule).filter((rule) => rule !== null);
}
