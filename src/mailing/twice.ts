// All reports of a file arrive; which of them are of a patient who came before leaves.
import type { WrittenReport } from '../intake/written.js';
import type { Checked } from '../problem.js';

/** Indexes of reports of one patient, in the order of the file; only patients with more than one. */
export type Twice = ReadonlyMap<number, readonly number[]>;

/**
 * Same patient: same id, in whatever case; without ids the same name and birth date. One evening, one letter a
 * patient: which of two reports holds is a person's decision.
 * @example findTwice(reports).get(7) // [2, 7]
 */
export function findTwice(reports: readonly Checked<WrittenReport>[]): Twice {
  const seen = new Map<string, number[]>();
  reports.forEach((report, index) => {
    const who = report.ok ? whoOf(report.value) : null;
    if (who === null) return;
    const known = seen.get(who);
    if (known === undefined) seen.set(who, [index]);
    else known.push(index);
  });
  const groups = [...seen.values()].filter((group) => group.length > 1);
  return new Map(groups.flatMap((group) => group.map((index) => [index, group] as const)));
}

function whoOf({ patient }: WrittenReport): string | null {
  const plain = (text: string) => text.normalize('NFKC').trim().toLowerCase();
  if (patient.id !== null) return `id ${plain(patient.id)}`;
  if (patient.name === null || patient.birthDate === null) return null;
  return `person ${plain(patient.name)} ${plain(patient.birthDate)}`;
}
