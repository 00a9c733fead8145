// A unit as written arrives; what kind of quantity it measures leaves, or null when the unit is not known.
import { readUnit, unitsOf } from '../knowledge/units.js';
import type { Analyte } from '../terms.js';

export type UnitFamily =
  | 'mass in a volume'
  | 'amount in a volume'
  | 'percent or fraction'
  | 'volume'
  | 'mass of one cell'
  | 'amount of one cell'
  | 'count in a volume';

const shapes: readonly (readonly [RegExp, UnitFamily])[] = [
  [/^[munpk]?g\/[mudc]?L$/, 'mass in a volume'],
  [/^[munp]?mol\/[mudc]?L$/, 'amount in a volume'],
  [/^(?:%|1)$/, 'percent or fraction'],
  [/^(?:fL|um3)$/, 'volume'],
  [/^pg$/, 'mass of one cell'],
  [/^fmol$/, 'amount of one cell'],
  [/^10\*\d+\/[mu]?L$/, 'count in a volume'],
];

/**
 * Kind of quantity a unit measures. Null: a spelling the unit table does not have.
 * @example unitFamily('µg/L') // 'mass in a volume'
 */
export function unitFamily(unit: string): UnitFamily | null {
  const code = readUnit(unit) ?? unit.trim();
  return shapes.find(([shape]) => shape.test(code))?.[1] ?? null;
}

/** Kinds of quantity an analyte may be reported in. */
export function familiesOf(analyte: Analyte): readonly UnitFamily[] {
  const families = unitsOf(analyte).map(({ code }) => unitFamily(code));
  return [...new Set(families.filter((family) => family !== null))];
}
