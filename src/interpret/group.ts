// In: a patient. Out: every group the person may belong to; one where sex, age and stage are known.
import { type GroupKind, groupsByAge } from '../knowledge/groups.js';
import type { Patient } from '../report/report.js';
import { trimesters } from '../terms.js';
import { limit } from '../knowledge/limit.js';

/** Whom a person is compared with. */
export type Group = {
  readonly slug: string;
  readonly sex: 'any' | 'female' | 'male';
  readonly kind: GroupKind;
  readonly rules: readonly string[];
};

/**
 * The groups that what is known leaves open: two when the sex is unknown, more without an age.
 * None for a child younger than 6 months.
 * Source: WHO 2024 haemoglobin guideline, Table 2; rows in src/knowledge/groups.json.
 * @example groupsFor(manOf40).map(({ slug }) => slug) // ['men-15-65']
 */
export function groupsFor(patient: Patient): readonly Group[] {
  if (patient.pregnancy !== null) {
    const { trimester } = patient.pregnancy;
    return trimesters
      .filter((one) => trimester === null || one === trimester)
      .map((one) => stage(`pregnant-trimester-${one}`, 'pregnant', []));
  }
  const until = limit('after-birth-until');
  if (patient.afterBirthWeeks !== null && patient.afterBirthWeeks <= until.value)
    return [stage('after-birth', 'after-birth', [until.id])];
  const { ageMonths, sex } = patient;
  return groupsByAge
    .filter(
      (row) =>
        (ageMonths === null ||
          (ageMonths >= row.fromMonths &&
            (row.belowMonths === null || ageMonths < row.belowMonths))) &&
        (sex === 'unknown' || row.sex === 'any' || row.sex === sex),
    )
    .map((row) => ({ slug: row.group, sex: row.sex, kind: row.kind, rules: [row.id] }));
}

function stage(slug: string, kind: GroupKind, rules: readonly string[]): Group {
  return { slug, sex: 'female', kind, rules };
}
