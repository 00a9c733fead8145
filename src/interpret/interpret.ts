// In: a report and today's date. Out: its interpretation; pure, every number from a row.
import type { Report } from '../report/report.js';
import { changesSince } from './change.js';
import { raiseFlags } from './flag/raise-flags.js';
import { groupsFor } from './group.js';
import { holdFor, holdWithoutGroup } from './hold.js';
import type { GroupUsed, Interpretation } from './interpretation.js';
import { mergePatterns, mergeResults, patternRulesOf, uniqueReasons } from './merge.js';
import { nearlyFired } from './near.js';
import { notesFor } from './notes.js';
import { asPerson } from './person.js';
import { readAs } from './reading.js';
import { sourcesOf } from './sources.js';

/**
 * Reads a report: positions, pattern, flags, hold, changes, with every row used.
 * Where sex, age or stage are not known, every group still open is read and only what holds for all is said.
 * `today` is an ISO date, for the age of the sample.
 * @example interpret(report, '2026-11-20').pattern.main // 'iron-deficiency-anaemia'
 */
export function interpret(report: Report, today: string): Interpretation {
  const { patient, context, panel, previous } = report;
  const readings = groupsFor(patient).map((group) =>
    readAs(asPerson(group, patient, context, panel.results), previous, panel),
  );
  const [first, ...others] = readings;
  if (first === undefined) return withoutGroup(report);
  const results = mergeResults(first, others);
  const pattern = mergePatterns(first, others);
  const flags = raiseFlags(readings, panel, today);
  const hold = holdFor(readings, panel, previous);
  const changes = changesSince(panel, previous);
  const nearMisses = uniqueReasons(readings.flatMap(nearlyFired));
  const clinicianNotes = uniqueReasons(readings.flatMap((one) => notesFor(one, report)));
  const groups: readonly GroupUsed[] = readings.map(({ person: { group, adjustment } }) => ({
    group: group.slug,
    rules: [...group.rules, ...adjustment.altitude.rules, ...adjustment.smoking.rules],
  }));
  const reasons = [
    ...pattern.supports,
    ...pattern.against,
    ...flags,
    ...hold.reasons,
    ...changes,
    ...nearMisses,
    ...clinicianNotes,
  ];
  const sources = sourcesOf([
    ...groups.flatMap(({ rules }) => rules),
    ...readings.flatMap(({ rules }) => rules),
    ...patternRulesOf(readings, pattern.main),
    ...reasons.flatMap(({ rules }) => rules),
  ]);
  return {
    collected: panel.collected,
    groups,
    results,
    pattern,
    flags,
    hold,
    changes,
    nearMisses,
    clinicianNotes,
    sources,
  };
}

/** Younger than 6 months: nothing is published, so nothing is said and a clinician is called. */
function withoutGroup({ panel }: Report): Interpretation {
  const reason = { code: 'under-six-months', facts: {}, rules: ['youngest-months'] };
  return {
    collected: panel.collected,
    groups: [],
    results: [],
    pattern: { main: 'unclear', companions: [], supports: [], against: [reason], missing: [] },
    flags: [],
    hold: holdWithoutGroup,
    changes: [],
    nearMisses: [],
    clinicianNotes: [],
    sources: sourcesOf(['youngest-months']),
  };
}
