// A refused report arrives; the lines that say what to correct leave.
import { nowhere, type Problem } from '../problem.js';
import { csvLine } from './csv-line.js';

export const toFixColumns = csvLine([
  'report',
  'row',
  'id',
  'field',
  'what is wrong',
  'found',
  'what would be right',
  'what to do',
]);

/** One line a problem; the id leads back to the report, names stay in the file they came from. */
export function toFixLines(
  {
    number,
    row,
    id,
  }: { readonly number: number; readonly row: number | null; readonly id: string | null },
  problems: readonly Problem[],
): string {
  return problems
    .map(({ place, cannot, found, expected, remedy }) =>
      csvLine([
        number,
        place.row ?? row,
        id,
        place.field,
        cannot,
        found,
        expected,
        remedy ?? 'Correct it in the file and give the same command again.',
      ]),
    )
    .join('');
}

/** A letter whose making failed through a fault of the program or of a template: its kind, never its message. */
export function faultOfOurs(fault: unknown): Problem {
  const kind = fault instanceof Error ? fault.name : typeof fault;
  return {
    code: 'program-fault',
    place: nowhere,
    cannot: `cannot make this letter: a fault of the program or of a template (${kind})`,
    found: null,
    expected: null,
    remedy: 'Write to this patient by hand, and report the fault without the patient’s data.',
  };
}
