// In: the written panels of a report. Out: one panel a date, newest first, at most one result a test.
import type { WrittenPanel } from '../intake/written.js';
import type { Place } from '../problem.js';
import { analytes } from '../terms.js';
import { readDate } from './date.js';
import { type Findings, fault } from './findings.js';
import type { Panel, Result } from './report.js';
import { checkResult, type StandingResult } from './result.js';

/** Earlier panels kept for the comparison over time. */
const keptEarlier = 6;

export type PanelsChecked = { readonly panel: Panel | null; readonly previous: readonly Panel[] };

/**
 * The panel of the sample and the earlier ones, newest first. Panels of one date become one.
 * Problems: no date, a future or impossible one, two values for one test, nothing left to tell.
 */
export function checkPanels(
  current: WrittenPanel,
  earlier: readonly WrittenPanel[],
  today: string,
  place: Place,
  into: Findings,
): PanelsChecked {
  const collected = checkCollected(current, 'collected', today, place, into);
  const measured = measuredResults(current, into);
  const dated = new Map<string, StandingResult[]>();
  earlier.forEach((panel, at) => {
    const field = `previous[${at}].collected`;
    const date = checkCollected(panel, field, today, place, into);
    const results = measuredResults(panel, into);
    if (date === null) return;
    if (date > (collected ?? date)) {
      const more = { found: date, expected: `a date up to ${collected}` };
      const cannot = 'an earlier panel is dated after the sample';
      into.problems.push(fault('previous-after-sample', { ...place, field }, cannot, more));
      return;
    }
    dated.set(date, [...(dated.get(date) ?? []), ...results]);
  });
  const sameDay = dated.get(collected ?? '') ?? [];
  const results = oneEach([...measured, ...sameDay], into);
  if (results.length === 0 && into.problems.length === 0)
    into.problems.push(
      fault('no-results', place, 'no result to tell', { expected: 'at least one iron result' }),
    );
  const previous = [...dated]
    .filter(([date]) => date !== collected)
    .sort(([one], [other]) => other.localeCompare(one))
    .map(([date, standing]) => ({ collected: date, results: oneEach(standing, into) }))
    .filter((panel) => panel.results.length > 0);
  if (previous.length > keptEarlier)
    into.notes.push(
      fault('previous-left-out', place, `kept the ${keptEarlier} latest earlier panels`, {
        found: `${previous.length} earlier panels`,
      }),
    );
  // Stryker disable next-line ConditionalExpression: without a date the report is refused, whatever is in the panel.
  const panel = collected === null ? null : { collected, results };
  return { panel, previous: previous.slice(0, keptEarlier) };
}

function measuredResults(panel: WrittenPanel, into: Findings): StandingResult[] {
  return panel.results
    .map((written) => checkResult(written, into))
    .filter((result) => result !== null);
}

function checkCollected(
  { collected }: WrittenPanel,
  field: string,
  today: string,
  place: Place,
  into: Findings,
): string | null {
  const at = { ...place, field };
  const expected = 'a date such as 2024-02-29';
  if (collected === null || collected.trim() === '') {
    into.problems.push(fault('date-missing', at, 'no date of the sample', { expected }));
    return null;
  }
  const date = readDate(collected);
  if (date === null) {
    const more = { found: collected, expected };
    into.problems.push(fault('date-unread', at, 'cannot read the date of the sample', more));
    return null;
  }
  if (date > today) {
    const more = { found: date, expected: `a date up to ${today}` };
    into.problems.push(fault('date-in-future', at, 'the sample is dated in the future', more));
    return null;
  }
  return date;
}

/** One result a test, in the order of the letter; a corrected one replaces, an identical one is the same. */
function oneEach(results: readonly StandingResult[], into: Findings): readonly Result[] {
  return analytes.flatMap((analyte) => {
    const same = results.filter(({ result }) => result.analyte === analyte);
    const [first] = same;
    if (first === undefined) return [];
    const settled = settle(same);
    if (settled !== null) {
      const took = `took one of ${same.length} values for ${analyte}`;
      if (same.length > 1)
        into.notes.push(fault('result-repeated', settled.place, took, { found: said(settled) }));
      return [settled];
    }
    const second = same.find(({ result }) => !sameQuantity(result, first.result)) ?? first;
    into.problems.push(
      fault('two-values', second.result.place, `two values for ${analyte} on one date`, {
        found: `${said(first.result)} and ${said(second.result)}`,
        expected: 'one value, or one marked corrected',
      }),
    );
    return [];
  });
}

/** The result that stands: the only one of the best status, or one of several that say the same. */
function settle(same: readonly StandingResult[]): Result | null {
  for (const standing of ['corrected', 'final', 'preliminary'] as const) {
    const best = same.filter((one) => one.standing === standing).map(({ result }) => result);
    const first = best[0];
    if (first === undefined) continue;
    return best.every((other) => sameQuantity(first, other)) ? first : null;
  }
  return null;
}

function sameQuantity(one: Result, other: Result): boolean {
  const [a, b] = [one.quantity, other.quantity];
  const near = Math.abs(a.value - b.value) <= 1e-9 * Math.max(a.value, b.value);
  return near && a.comparator === b.comparator;
}

function said({ copied }: Result): string {
  return `${copied.value} ${copied.unit}`;
}
