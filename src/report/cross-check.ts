// In: a panel. Out: values that cannot belong together (red-cell indices, TIBC beside transferrin).
import { type CrossRow, crossChecks } from '../knowledge/plausible.js';
import type { Analyte } from '../terms.js';
import type { Panel } from './report.js';

/** One check that failed: the ratio found, and the span in which it should lie. */
export type CrossFinding = {
  readonly rule: CrossRow['id'];
  readonly analytes: readonly Analyte[];
  readonly found: number;
  readonly low: number;
  readonly high: number;
};

/** Ratio of each check from values in our units; dimensionless but for MCHC (g/L) and TIBC over transferrin (umol/g). */
const ratios: Readonly<Record<CrossRow['id'], (of: (analyte: Analyte) => number) => number>> = {
  'haematocrit-from-mcv': (of) => (of('mcv') * of('rbc')) / 1000 / of('haematocrit'),
  'mch-from-haemoglobin': (of) => of('haemoglobin') / of('rbc') / of('mch'),
  mchc: (of) => of('haemoglobin') / of('haematocrit'),
  'tibc-over-transferrin': (of) => of('tibc') / of('transferrin'),
};

/**
 * Checks whose values are all measured, without comparator and without doubt, and that fail.
 * Spans and tolerances: src/knowledge/cross-checks.json.
 * @example crossCheck(panel) // haemoglobin 102, RBC 5.5, MCH 21: [{ rule: 'mch-from-haemoglobin', found: 0.883, … }]
 */
export function crossCheck(panel: Panel): readonly CrossFinding[] {
  return crossChecks.flatMap((row) => {
    const values = new Map(
      panel.results
        .filter(({ quantity, doubt }) => quantity.comparator === null && doubt === null)
        .map(({ analyte, quantity }) => [analyte, quantity.value] as const),
    );
    if (!row.analytes.every((analyte) => values.has(analyte))) return [];
    const found = ratios[row.id]((analyte) => values.get(analyte) ?? Number.NaN);
    if (found >= row.low && found <= row.high) return [];
    return [{ rule: row.id, analytes: row.analytes, found, low: row.low, high: row.high }];
  });
}
