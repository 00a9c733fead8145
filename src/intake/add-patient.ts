// Reports and what the operator says of the person arrive; reports leave with the gaps filled.
import { type Checked, faulty } from '../problem.js';
import { fault } from './fault.js';
import type { Intake, WrittenPatient, WrittenReport } from './written.js';

/**
 * Fills what the file leaves open. The operator's facts belong to one person, so a file of several is refused.
 * Problems: a file of several people, a sex or birth date that the file says otherwise.
 * @example addPatient(intake, { sex: 'female' })
 */
export function addPatient(intake: Intake, facts: Partial<WrittenPatient>): Intake {
  const [only] = intake.reports;
  if (only === undefined || Object.keys(facts).length === 0) return intake;
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
  return { ...intake, reports: [filledIn(only, facts)] };
}

function filledIn(
  read: Checked<WrittenReport>,
  facts: Partial<WrittenPatient>,
): Checked<WrittenReport> {
  if (!read.ok) return read;
  const { patient, place } = read.value;
  const differs = (['id', 'sex', 'birthDate'] as const).filter((fact) => {
    const said = facts[fact] ?? null;
    return said !== null && patient[fact] !== null && patient[fact] !== said;
  });
  if (differs.length > 0) {
    return faulty(
      differs.map((fact) =>
        fault(
          'two-people',
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
  return { ...read, value: { ...read.value, patient: { ...patient, ...facts, ...known } } };
}
