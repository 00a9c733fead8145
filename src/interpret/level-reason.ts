// In: a reading and one test. Out: what was found of it, with the limits that decided and their rows.
import { saturationLimits } from '../knowledge/cut-offs.js';
import { limit } from '../knowledge/limit.js';
import type { TableTest } from '../knowledge/pattern-rules.js';
import type { Analyte, Level } from '../terms.js';
import type { Comparison, GradedResult, Reason } from './interpretation.js';
import { levelOf } from './position.js';
import type { Reading } from './reading.js';

/**
 * What was found of one test, as a code; null when nothing was. Facts `limit` (low, high) or `low` and `high`
 * (usual) are in the unit of the value; no rules mean that the laboratory's own interval decided.
 * @example levelReason(reading, 'haemoglobin', 'low')?.facts // { analyte: 'haemoglobin', value: 104, unit: 'g/L', limit: 120 }
 */
export function levelReason(reading: Reading, test: TableTest, level: Level): Reason | null {
  const { read, results } = reading;
  const graded = resultOf(results, test);
  if (graded === undefined) return null;
  const facts = valueFacts(graded);
  if (test === 'ferritin' && read.ferritin !== null) {
    const { reading: code, rules, low, high } = read.ferritin;
    const usual = code === 'ferritin-usual';
    return { code, facts: { ...facts, ...(usual ? ends(low, high) : at(low ?? high)) }, rules };
  }
  if (test === 'transferrin-saturation' && read.saturation !== null) {
    const { reading: code, rules } = read.saturation;
    const [low = null, high = null] = rules.flatMap(saturationValues);
    if (read.saturationSetAside)
      return {
        code: 'transferrin-saturation-not-used-alone',
        facts: { ...facts, ...at(low) },
        rules,
      };
    if (code === 'comparator-undecided') return { code, facts, rules };
    return { code, facts: { ...facts, ...(rules.length > 1 ? ends(low, high) : at(low)) }, rules };
  }
  if (level === 'not-measured') return null;
  if (test === 'crp') {
    const { id, value } = limit('crp-raised');
    const limits = level === 'high' ? at(value) : ends(null, value);
    return { code: `crp-${level}`, facts: { ...facts, ...limits }, rules: [id] };
  }
  return placed(graded, test, level);
}

/** MCH below its interval: paler cells, a hint that never decides. Null when it is not low. */
export function paleCells({ results }: Reading): Reason | null {
  const graded = results.find(({ analyte }) => analyte === 'mch');
  return graded?.level === 'low' ? placed(graded, 'mch', 'low') : null;
}

/** The value as it is printed, with its unit and, where the laboratory wrote one, its comparator. */
export function valueFacts(graded: GradedResult): Reason['facts'] {
  const { analyte, unit, comparator } = graded;
  const value = printedValue(graded);
  return { analyte, value, unit, ...(comparator === null ? {} : { comparator }) };
}

/** A computed value as it is printed, so that it is the same on every line; else two decimals. */
export function printedValue({ derived, copied, value }: GradedResult): number {
  return derived === null ? Math.round(value * 100) / 100 : Number(copied.value);
}

/** TIBC measures the same carriers, where transferrin is absent or cannot be placed. */
function resultOf(results: readonly GradedResult[], test: TableTest): GradedResult | undefined {
  const of = (analyte: Analyte) => results.find((one) => one.analyte === analyte);
  const own = of(test);
  if (test !== 'transferrin' || (own !== undefined && own.level !== 'not-measured')) return own;
  return of('tibc') ?? own;
}

/** Reticulocyte haemoglobin, low or usual: a hint that never decides. Null when it is neither. */
export function reticulocytes({ results }: Reading): Reason | null {
  const test = 'reticulocyte-haemoglobin';
  const graded = results.find(({ analyte }) => analyte === test);
  return graded !== undefined && ['low', 'usual'].includes(graded.level)
    ? placed(graded, test, graded.level)
    : null;
}

/** Haemoglobin is decided by the guideline first, other tests by the yardstick told to the patient. */
function placed(
  graded: GradedResult,
  test: TableTest | 'mch' | 'reticulocyte-haemoglobin',
  level: Level,
): Reason {
  // Stryker disable next-line ConditionalExpression,MethodExpression: what has a level has a yardstick.
  const spans = [graded.comparedWith, ...graded.also].filter((span) => span !== null);
  const agreeing = spans.filter(({ position }) => levelOf(position) === level);
  const guideline = agreeing.find(({ by }) => by === 'guideline');
  const span = (test === 'haemoglobin' && level !== 'high' ? guideline : undefined) ?? agreeing[0];
  const code = `${test}-${level}`;
  const facts = valueFacts(graded);
  // Stryker disable next-line all: a level always comes from one of the spans.
  if (span === undefined) return { code, facts, rules: [] };
  const limits =
    level === 'usual' ? ends(span.low, span.high) : at(level === 'low' ? span.low : span.high);
  return { code, facts: { ...facts, ...limits }, rules: rowsOf(span, level) };
}

function rowsOf({ rule, highRule }: Comparison, level: Level): readonly string[] {
  const rows = [level === 'high' ? null : rule, level === 'low' ? null : (highRule ?? rule)];
  return [...new Set(rows.filter((row) => row !== null))];
}

function saturationValues(id: string): readonly number[] {
  return saturationLimits.filter((row) => row.id === id).map(({ value }) => value);
}

function at(value: number | null): Reason['facts'] {
  // Stryker disable next-line ConditionalExpression: a limit that decided is there.
  return value === null ? {} : { limit: value };
}

function ends(low: number | null, high: number | null): Reason['facts'] {
  return { ...(low === null ? {} : { low }), ...(high === null ? {} : { high }) };
}
