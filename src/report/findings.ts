// In: faults met while checking one report. Out: problems that refuse it, notes that do not.
import type { Place, Problem } from '../problem.js';

/** Collects everything wrong with one report, so that the operator sees it all at once. */
export type Findings = { readonly problems: Problem[]; readonly notes: Problem[] };

export const nothingFound = (): Findings => ({ problems: [], notes: [] });

/** A file may hold a value of any length; its problem need not. */
const longestFound = 80;

/**
 * A fault of the input; `found` must hold no name and no birth date.
 * @example fault('value-unread', place, 'cannot read the value', { found: '3O', expected: 'digits such as 30' })
 */
export function fault(
  code: string,
  place: Place,
  cannot: string,
  more: { found?: string | null; expected?: string | null; remedy?: string | null } = {},
): Problem {
  const { expected = null, remedy = null } = more;
  const found = more.found?.slice(0, longestFound) ?? null;
  return { code, place, cannot, found, expected, remedy };
}
