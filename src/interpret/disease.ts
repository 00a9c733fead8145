// In: a person with results. Out: whether a disease's own published rule of iron deficiency is met.
import { type DiseaseRow, diseaseRules } from '../knowledge/follow-up.js';
import type { Quantity } from '../report/report.js';
import type { Condition } from '../terms.js';
import type { GradedResult } from './interpretation.js';
import { above, below, perCent } from './measure.js';
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
  return person.patient.conditions
    .map((condition) => ({
      condition,
      rows: diseaseRules.filter((row) => row.condition === condition),
    }))
    .filter(({ rows }) => rows.length > 0)
    .map(({ condition, rows }) => {
      const met = rowsMet(rows, person, results);
      return { condition, met: met !== undefined, rules: (met ?? rows).map(({ id }) => id) };
    });
}

/** The rows of the first way that is met: all of its rows together; undefined when no way is. */
function rowsMet(
  rows: readonly DiseaseRow[],
  person: Person,
  results: readonly GradedResult[],
): readonly DiseaseRow[] | undefined {
  const ferritin = person.sure.get('ferritin')?.quantity ?? null;
  const saturation = saturationOf(person, results);
  const under = (quantity: Quantity | null, role: DiseaseRow['role']) =>
    rows.find(
      (row) => row.role === role && quantity !== null && below(quantity, row.value) === 'yes',
    );
  const atMost = (quantity: Quantity | null, role: DiseaseRow['role']) =>
    rows.find(
      (row) => row.role === role && quantity !== null && above(quantity, row.value) === 'no',
    );
  const active = person.inflammation === 'raised' ? ferritin : null;
  const ways = [
    [atMost(ferritin, 'ferritin-at-most'), atMost(saturation, 'saturation-at-most')],
    [under(ferritin, 'ferritin-below')],
    [under(active, 'ferritin-below-inflamed')],
    [under(ferritin, 'ferritin-below-with-saturation'), under(saturation, 'saturation-below')],
  ];
  return ways.find((way): way is DiseaseRow[] => way.every((row) => row !== undefined));
}

/** The saturation that is printed and sure, else the computed one: the only result that is derived. */
function saturationOf(person: Person, results: readonly GradedResult[]): Quantity | null {
  const printed = person.sure.get('transferrin-saturation');
  if (printed !== undefined) return printed.quantity;
  const computed = results.find(({ derived }) => derived !== null);
  return computed === undefined ? null : perCent(computed.value);
}
