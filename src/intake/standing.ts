// Results of one person arrive, some of them replaced by later ones; those that stand leave.
import type { Problem } from '../problem.js';
import { fault } from './fault.js';
import type { DatedResult } from './order-panels.js';

const rank = (status: string | null) =>
  status === 'corrected' ? 2 : status === 'preliminary' ? 0 : 1;

/**
 * Of several results of one test and day, a corrected one replaces the others and a final one a preliminary.
 * Two of the same standing both stay, for the next room to ask about. Each one left out gets a note.
 */
export function standing(dated: readonly DatedResult[], notes: Problem[]): readonly DatedResult[] {
  const keyOf = ({ collected, result }: DatedResult) => `${collected} ${result.analyte}`;
  const best = new Map<string, number>();
  for (const one of dated) {
    best.set(keyOf(one), Math.max(best.get(keyOf(one)) ?? 0, rank(one.result.status)));
  }
  return dated.filter((one) => {
    const stays = rank(one.result.status) === best.get(keyOf(one));
    if (!stays) {
      notes.push(
        fault('replaced', one.result.place, 'passed over: a later version replaces this result', {
          found: one.result.status,
        }),
      );
    }
    return stays;
  });
}
