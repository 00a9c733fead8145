// Reports and what the operator says of the person arrive; reports leave with the gaps filled.
import { type Checked, faulty } from '../problem.js';
import { fault } from './fault.js';
import { isOpen } from './pregnancy-as-written.js';
import type { Intake, WrittenPatient, WrittenReport } from './written.js';

/**
 * Fills what the file leaves open. The operator's facts belong to one person, so a file of several is refused.
 * Problems: a file of several people; a sex, birth date, pregnancy or day of the sample that the file says otherwise.
 * @param collected ISO day of the sample, or null where the operator says none.
 * @example addPatient(intake, { sex: 'female' }, '2026-11-20')
 */
export function addPatient(
  intake: Intake,
  facts: Partial<WrittenPatient>,
  collected: string | null,
): Intake {
  const [only] = intake.reports;
  if (only === undefined || (Object.keys(facts).length === 0 && collected === null)) return intake;
  if (intake.reports.length > 1) {
    const place = only.ok ? only.value.place : (only.problems[0]?.place ?? null);
    const many = fault(
      'several-people',
      { file: place?.file ?? null, row: null, field: null },
      'cannot give the facts of one person to a file of several',
      {
        expected: 'a file with one report',
      },
    );
    return { ...intake, reports: [faulty([many])] };
  }
  return { ...intake, reports: [filledIn(only, facts, collected)] };
}

const compared = ['id', 'sex', 'birthDate', 'ageYears', 'ageMonths', 'pregnancy'] as const;

function filledIn(
  read: Checked<WrittenReport>,
  facts: Partial<WrittenPatient>,
  collected: string | null,
): Checked<WrittenReport> {
  if (!read.ok) return read;
  const { panel, place } = read.value;
  const written = read.value.patient;
  const asks = isOpen(written.pregnancy) && (facts.pregnancy ?? null) !== null;
  const patient = asks ? { ...written, pregnancy: null } : written;
  const differs = compared.filter((fact) => differ(facts[fact] ?? null, patient[fact]));
  const wrong = [...differs, ...(differ(collected, panel.collected) ? ['collected'] : [])];
  if (wrong.length > 0) {
    return faulty(
      wrong.map((fact) =>
        fault(
          'said-otherwise',
          { ...place, field: fact },
          'cannot tell which holds: the file says something else',
          {
            expected: 'the same as in the file, or nothing',
          },
        ),
      ),
    );
  }
  const known = Object.fromEntries(
    Object.entries(patient).filter(
      ([, value]) => value !== null && !(Array.isArray(value) && value.length === 0),
    ),
  ) as Partial<WrittenPatient>;
  const value = {
    ...read.value,
    patient: { ...patient, ...facts, ...known },
    panel: { ...panel, collected: panel.collected ?? collected },
  };
  return { ...read, value };
}

/** Two things said of one fact; what is not said differs from nothing. */
function differ(said: unknown, written: unknown): boolean {
  if (said === null || written === null) return false;
  return JSON.stringify(said) !== JSON.stringify(written);
}
