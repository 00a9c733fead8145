// In: a report and one group. Out: all that grading needs to know of the person, gathered once.
import { limit } from '../knowledge/limit.js';
import type { Context, Patient, Result } from '../report/report.js';
import type { Analyte } from '../terms.js';
import { type Adjustment, adjustmentFor } from './adjust.js';
import type { Group } from './group.js';
import { above } from './measure.js';

type Inflammation = 'raised' | 'usual' | 'not-measured';

/** One person read as a member of one group. */
export type Person = {
  readonly group: Group;
  readonly patient: Patient;
  readonly context: Context;
  readonly adjustment: Adjustment;
  readonly inflammation: Inflammation;
  /** Results that may decide: present and without doubt. */
  readonly sure: ReadonlyMap<Analyte, Result>;
  /** Every result at face value, doubtful ones too: for alarms only. */
  readonly all: ReadonlyMap<Analyte, Result>;
};

/**
 * The person as one group sees them.
 * @example asPerson(group, patient, context, results).inflammation // 'raised' when CRP is over 5 mg/L
 */
export function asPerson(
  group: Group,
  patient: Patient,
  context: Context,
  results: readonly Result[],
): Person {
  const all = new Map(results.map((result) => [result.analyte, result]));
  const sure = new Map([...all].filter(([, { doubt }]) => doubt === null));
  const adjustment = adjustmentFor(patient);
  return { group, patient, context, adjustment, inflammation: inflamed(sure), sure, all };
}

function inflamed(sure: ReadonlyMap<Analyte, Result>): Inflammation {
  const crp = sure.get('crp');
  if (crp === undefined) return 'not-measured';
  const raised = above(crp.quantity, limit('crp-raised').value);
  if (raised === 'undecided') return 'not-measured';
  return raised === 'yes' ? 'raised' : 'usual';
}
