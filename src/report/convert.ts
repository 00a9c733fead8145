// In: an analyte, a number, a UCUM code. Out: the number in our unit, or ours in another unit.
import { type UnitRow, unitsOf } from '../knowledge/units.js';
import type { Analyte } from '../terms.js';
import { scale } from './decimal.js';

/**
 * Our unit for an analyte, a UCUM code.
 * @example canonicalUnit('haemoglobin') // 'g/L'
 */
export function canonicalUnit(analyte: Analyte): string {
  const first = unitsOf(analyte)[0];
  // Stryker disable next-line all: every analyte has a unit, so only a broken table comes here.
  if (first === undefined) throw new Error(`knowledge table units: nothing for ${analyte}`);
  return first.code;
}

/**
 * Units accepted for an analyte, UCUM codes, our own first.
 * @example acceptedUnits('mcv') // ['fL', 'um3']
 */
export function acceptedUnits(analyte: Analyte): readonly string[] {
  return unitsOf(analyte).map((row) => row.code);
}

/**
 * Unit in an operator's sentence: the code, and a word for the unit that has none.
 * @example sayUnit('1') // 'as a fraction'
 */
export function sayUnit(code: string): string {
  return code === '1' ? 'as a fraction' : code;
}

/**
 * Value in our unit. Throws for a unit not accepted for the analyte: check it first.
 * Factors and their sources: src/knowledge/units.json.
 * @example convert('haemoglobin', 12.1, 'g/dL') // 121
 * @example convert('serum-iron', 100, 'ug/dL') // 17.9067…
 */
export function convert(analyte: Analyte, value: number, fromUnit: string): number {
  const row = rowOf(analyte, fromUnit);
  return scale(value, row.times, row.over);
}

/**
 * Value of our unit expressed in another accepted unit; the reverse of `convert`.
 * @example express('haemoglobin', 121, 'g/dL') // 12.1
 */
export function express(analyte: Analyte, value: number, unit: string): number {
  const row = rowOf(analyte, unit);
  return scale(value, row.over, row.times);
}

function rowOf(analyte: Analyte, code: string): UnitRow {
  const row = unitsOf(analyte).find((known) => known.code === code);
  if (row === undefined) throw new Error(`no unit '${code}' for ${analyte}`);
  return row;
}
