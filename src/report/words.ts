// In: words of a file (sex, conditions, symptoms …). Out: members of the closed lists in terms, or a problem naming the list.
import type { Place } from '../problem.js';
import type { Sex } from '../terms.js';
import { type Findings, fault } from './findings.js';

/** Spellings of sex; HL7 table 0001 and FHIR administrative-gender among them. */
const sexSpellings: Readonly<Record<Sex, readonly string[]>> = {
  female: ['female', 'f', 'woman', 'girl'],
  male: ['male', 'm', 'man', 'boy'],
  unknown: ['unknown', 'u', 'unk', 'other', 'o', 'ambiguous', 'a', 'n', 'x', 'not-applicable'],
};

/**
 * Sex as one of three; 'other' is read with both yardsticks, as 'unknown' is.
 * @example readSex('F') // 'female'
 */
export function readSex(written: string): Sex | null {
  const word = slug(written);
  const all = Object.keys(sexSpellings) as Sex[];
  return all.find((sex) => sexSpellings[sex].includes(word)) ?? null;
}

/**
 * Words narrowed to a closed list, each once, in the list's order. A word outside it is a problem, never passed over.
 * @example readWords(['Kidney disease'], conditions, 'patient.conditions', place, into) // ['kidney-disease']
 */
export function readWords<T extends string>(
  written: readonly string[],
  list: readonly T[],
  field: string,
  place: Place,
  into: Findings,
): readonly T[] {
  const known = new Set<T>();
  for (const word of written) {
    const member = list.find((one) => one === slug(word));
    if (member !== undefined) known.add(member);
    else
      into.problems.push(
        fault('word-unknown', { ...place, field }, 'cannot use this word', {
          found: word,
          expected: `one of ${list.join(', ')}`,
        }),
      );
  }
  return list.filter((one) => known.has(one));
}

function slug(written: string): string {
  return written
    .normalize('NFKC')
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');
}
