// In: the id of any row interpretation may use. Out: the row with its number in words of figures and units.
import { altitudes, groupsByAge, haemoglobinLimits, smokings } from './groups.js';
import { ferritinLimits, positionBands, saturationLimits, usualIntervals } from './cut-offs.js';
import { allPathways, diseaseRules, holdRules, holdSigns, variations } from './follow-up.js';
import { limits } from './limit.js';
import { companionRules, patternProfiles, patternRules } from './pattern-rules.js';
import { crossChecks, intervalWindows, plausibleLimits, unitSlips } from './plausible.js';
import type { Row } from './row.js';

const tables: readonly (readonly Row[])[] = [
  altitudes,
  groupsByAge,
  haemoglobinLimits,
  smokings,
  ferritinLimits,
  positionBands,
  saturationLimits,
  usualIntervals,
  allPathways,
  diseaseRules,
  holdRules,
  holdSigns,
  variations,
  limits,
  patternRules,
  companionRules,
  patternProfiles,
  crossChecks,
  intervalWindows,
  plausibleLimits,
  unitSlips,
];

const byId: ReadonlyMap<string, Row> = new Map(
  tables.flatMap((table) => table.map((row) => [row.id, row] as const)),
);

/** Ids of all rows; more rows than ids would mean that two tables share one. */
export const rowCount = tables.reduce((sum, table) => sum + table.length, 0);
export const rowIds: readonly string[] = [...byId.keys()];

/** The row of that id; an unknown id is our bug, so it throws. */
export function rowById(id: string): Row {
  const row = byId.get(id);
  if (row === undefined) throw new Error(`knowledge: no row called ${id}`);
  return row;
}

/**
 * The number a row carries, with its unit; null for a row without one.
 * @example numberOf(rowById('who-2024-haemoglobin-women-15-65-anaemia')) // '120 g/L'
 */
export function numberOf(row: Row): string | null {
  const { value, low, high, unit, within, analytical, wellBelow, wellAbove } = row as Row &
    Readonly<Record<string, unknown>>;
  const measured = typeof unit === 'string' && unit !== '1' ? ` ${unit}` : '';
  if (typeof value === 'number') return `${value}${measured}`;
  if (typeof low === 'number' && typeof high === 'number') return `${low} to ${high}${measured}`;
  if (typeof low === 'number') return `from ${low}${measured}`;
  if (typeof high === 'number') return `up to ${high}${measured}`;
  if (typeof within === 'number') return `CVi ${within} %, CVa ${analytical} %`;
  if (typeof wellBelow === 'number') return `x ${wellBelow} and x ${wellAbove}`;
  return null;
}
