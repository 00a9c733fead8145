// All reports of a file arrive; which of them are of a patient who came before leaves.
import type { ReportSource } from '../intake/index.js';
import type { WrittenReport } from '../intake/written.js';
import type { Checked, Problem } from '../problem.js';

/** Indexes of reports of one patient, in the order of the file; only patients with more than one. */
export type Twice = ReadonlyMap<number, readonly number[]>;

/**
 * Same patient: same id, in whatever case; without ids the same name and birth date. One evening, one letter a
 * patient: which of two reports holds is a person's decision.
 * @example findTwice(reports).get(7) // [2, 7]
 */
function findTwice(reports: Iterable<Checked<WrittenReport>>): Twice {
  const first = new Map<string, number>();
  const more = new Map<string, number[]>();
  let index = 0;
  for (const report of reports) {
    const who = report.ok ? whoOf(report.value) : null;
    const before = who === null ? undefined : first.get(who);
    if (who !== null && before === undefined) first.set(who, index);
    if (who !== null && before !== undefined)
      more.set(who, [...(more.get(who) ?? [before]), index]);
    index += 1;
  }
  const groups = [...more.values()];
  return new Map(groups.flatMap((group) => group.map((index) => [index, group] as const)));
}

function whoOf({ patient }: WrittenReport): string | null {
  const plain = (text: string) => text.normalize('NFKC').trim().toLowerCase();
  if (patient.id !== null) return `id ${plain(patient.id)}`;
  if (patient.name === null || patient.birthDate === null) return null;
  return `person ${plain(patient.name)} ${plain(patient.birthDate)}`;
}

/** What one reading of the whole file shows: patients who come twice, and what was passed over. */
export type Survey = {
  readonly twice: Twice;
  /** The first of them; a log is not a second file. */
  readonly ignored: readonly Problem[];
  readonly ignoredInAll: number;
};

const mostNotes = 500;

export function survey(source: ReportSource): Survey {
  const ignored: Problem[] = source.ignored.slice(0, mostNotes);
  let ignoredInAll = source.ignored.length;
  function* reports() {
    for (let index = 0; index < source.count; index += 1) {
      const read = source.read(index);
      ignored.push(...read.ignored.slice(0, Math.max(0, mostNotes - ignored.length)));
      ignoredInAll += read.ignored.length;
      yield read.report;
    }
  }
  const twice = findTwice(reports());
  return { twice, ignored, ignoredInAll };
}
