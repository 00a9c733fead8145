// A FHIR Patient arrives; what it says of the person leaves.
import type { Problem } from '../../problem.js';
import { blankPatient } from '../blank.js';
import { readDate } from '../date-as-written.js';
import { at, fault } from '../fault.js';
import type { WrittenPatient } from '../written.js';
import { type Found, readAs } from './pool.js';
import { patientShape } from './resources.js';

/** Problems: a resource that does not fit, a person who has died. Notes: a birth date without day. */
export function patientOf(
  found: Found | null,
  file: string,
  problems: Problem[],
  notes: Problem[],
): WrittenPatient {
  const read = found === null ? null : readAs(found, patientShape, file, problems);
  if (found === null || read === null) return blankPatient;
  const place = (field: string) =>
    at(file, found.row, found.path === '' ? field : `${found.path}.${field}`);
  if (read.deceasedBoolean === true || read.deceasedDateTime !== undefined) {
    problems.push(
      fault(
        'deceased',
        place('deceased'),
        'cannot make a letter: the record says that this person has died',
      ),
    );
  }
  const birth = read.birthDate === undefined ? null : readDate(read.birthDate);
  if (read.birthDate !== undefined && birth === null) {
    notes.push(
      fault('birth-date-open', place('birthDate'), 'passed over a birth date without its day', {
        expected: 'such as 1984-03-09',
      }),
    );
  }
  const name = read.name?.find(({ use }) => use === 'official') ?? read.name?.[0];
  const spelt = [...(name?.given ?? []), name?.family].flatMap((part) => part ?? []).join(' ');
  return {
    ...blankPatient,
    id: read.identifier?.find(({ value }) => value !== undefined)?.value ?? read.id ?? null,
    name: name?.text ?? (spelt === '' ? null : spelt),
    birthDate: birth?.date ?? null,
    sex: sexOf(read.gender),
  };
}

/** 'other' and 'unknown' are both no sex a laboratory has intervals for. */
function sexOf(gender: string | undefined): string | null {
  if (gender === undefined) return null;
  return gender === 'female' || gender === 'male' ? gender : 'unknown';
}
