// In: a person with results. Out: whether a disease's own published rule of iron deficiency is met.
import { type DiseaseRow, diseaseRules } from '../knowledge/follow-up.js';
import type { Quantity } from '../report/report.js';
import type { Condition } from '../terms.js';
import type { GradedResult } from './interpretation.js';
import { above, below } from './measure.js';
import type { Person } from './person.js';

export type DiseaseFinding = {
  readonly condition: Condition;
  readonly met: boolean;
  readonly rules: readonly string[];
};

/**
 * The published rule of each recorded disease, met or not; diseases without one give nothing.
 * Sources: CKD review (PubMed 30970355), ESC 2021, ECCO 2015; rows in src/knowledge/disease-rules.json.
 * @example diseaseFindings(person, results) // [{ condition: 'heart-failure', met: true, rules: ['heart-failure-ferritin'] }]
 */
export function diseaseFindings(
  person: Person,
  results: readonly GradedResult[],
): readonly DiseaseFinding[] {
  return person.patient.conditions.flatMap((condition) => {
    const rows = diseaseRules.filter((row) => row.condition === condition);
    if (rows.length === 0) return [];
    const met = rulesMet(rows, person, results);
    return [
      { condition, met: met.length > 0, rules: (met.length > 0 ? met : rows).map(({ id }) => id) },
    ];
  });
}

function rulesMet(
  rows: readonly DiseaseRow[],
  person: Person,
  results: readonly GradedResult[],
): readonly DiseaseRow[] {
  const ferritin = person.sure.get('ferritin')?.quantity ?? null;
  const saturation = saturationOf(person, results);
  const row = (role: DiseaseRow['role']) => rows.find((one) => one.role === role);
  const under = (quantity: Quantity | null, one: DiseaseRow | undefined) =>
    quantity !== null && one !== undefined && below(quantity, one.value) === 'yes';
  const atMost = (quantity: Quantity | null, one: DiseaseRow | undefined) =>
    quantity !== null && one !== undefined && above(quantity, one.value) === 'no';
  const both = (...some: readonly (DiseaseRow | undefined)[]) =>
    some.filter((one) => one !== undefined);
  const [ferritinMost, saturationMost] = [row('ferritin-at-most'), row('saturation-at-most')];
  if (atMost(ferritin, ferritinMost) && atMost(saturation, saturationMost))
    return both(ferritinMost, saturationMost);
  if (under(ferritin, row('ferritin-below'))) return both(row('ferritin-below'));
  const active = row('ferritin-below-inflamed');
  if (person.inflammation === 'raised' && under(ferritin, active)) return both(active);
  const [wide, narrow] = [row('ferritin-below-with-saturation'), row('saturation-below')];
  return under(ferritin, wide) && under(saturation, narrow) ? both(wide, narrow) : [];
}

function saturationOf(person: Person, results: readonly GradedResult[]): Quantity | null {
  const printed = person.sure.get('transferrin-saturation');
  if (printed !== undefined) return printed.quantity;
  const derived = results.find(
    ({ analyte, derived }) => analyte === 'transferrin-saturation' && derived !== null,
  );
  return derived === undefined ? null : { value: derived.value, unit: '%', comparator: null };
}
