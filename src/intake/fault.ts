// A place and a few words arrive; a Problem leaves. The one way intake writes a problem down.
import type { Place, Problem } from '../problem.js';

type More = Partial<Pick<Problem, 'found' | 'expected' | 'remedy'>>;

/**
 * Builds a Problem; parts not given are null.
 * @example fault('bad-number', place, 'cannot read this as a number', { found: '3O', expected: 'digits such as 30' })
 */
export function fault(code: string, place: Place, cannot: string, more: More = {}): Problem {
  const { found = null, expected = null, remedy = null } = more;
  return { code, place, cannot, found, expected, remedy };
}

/** A place inside one file. */
export function at(file: string, row: number | null, field: string | null = null): Place {
  return { file, row, field };
}
