// The ids of the rows that were used arrive; each row's source, place and check leave.
import type { SourceUsed } from '../interpret/interpretation.js';
import { absorptionRows } from '../knowledge/absorption.js';
import { foodPicks } from '../knowledge/food-picks.js';
import { foods } from '../knowledge/foods.js';
import { heardByRows } from '../knowledge/heard-by.js';
import { helpSignRows } from '../knowledge/help-signs.js';
import { letterCautionRows } from '../knowledge/letter-cautions.js';
import { medicineGaps } from '../knowledge/medicine-gaps.js';
import { needFactors } from '../knowledge/need-factors.js';
import { needs } from '../knowledge/needs.js';
import { stepDefaults } from '../knowledge/next-step-defaults.js';
import type { Row } from '../knowledge/row.js';
import { type SwapRow, swapRows } from '../knowledge/swaps.js';
import { tabletPointRows } from '../knowledge/tablet-points.js';

/** Every row this room may cite; an id stands in one table only. */
export const citable: readonly (readonly [row: Row, number: string | null])[] = [
  ...foods.map((row) => [row, `${row.portionIron.low} to ${row.portionIron.high} mg`] as const),
  ...swapRows.map((row) => [row, changeOf(row)] as const),
  ...needs.map((row) => [row, `${row.milligrams} mg/d`] as const),
  ...needFactors.map((row) => [row, `${row.low} to ${row.high} ${row.unit}`] as const),
  ...absorptionRows.map((row) => [row, `${row.value} ${row.unit}`] as const),
  ...medicineGaps.map((row) => [row, row.hours === null ? null : `${row.hours} h`] as const),
  ...stepDefaults.map((row) => [row, row.days === null ? null : `${row.days} d`] as const),
  ...heardByRows.map((row) => [row, `${row.days} d`] as const),
  ...[...foodPicks, ...tabletPointRows, ...helpSignRows, ...letterCautionRows].map(
    (row) => [row, null] as const,
  ),
];

const byId = new Map(citable.map(([row, number]) => [row.id, { row, number }]));

/**
 * Where each rule stands, once each, in the order of use.
 * @throws when a rule has no row: our bug.
 * @example sourcesOf(['gap-calcium'])[0]?.number // '2 h'
 */
export function sourcesOf(rules: readonly string[]): readonly SourceUsed[] {
  return [...new Set(rules)].map((rule) => {
    const found = byId.get(rule);
    if (found === undefined) throw new Error(`advise: no knowledge row ${rule}`);
    const { source, at, checked } = found.row;
    return { rule, source, at, checked, number: found.number };
  });
}

function changeOf({ changePercent }: SwapRow): string | null {
  if (changePercent === null) return null;
  const { low, high } = changePercent;
  return low === high ? `${low} %` : `${low} to ${high} %`;
}
