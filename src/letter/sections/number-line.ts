// A graded result arrives; the numbers and words of its line leave, or none where it lies nowhere.
import type { GradedResult } from '../../interpret/interpretation.js';
import type { NumberLine } from '../content.js';
import type { Voice } from '../say.js';
import { written, writtenInOurUnit } from './value-line.js';

export function numberLine({ say }: Voice, result: GradedResult): NumberLine | null {
  const { analyte, comparedWith, copied, doubt, position, value } = result;
  if (position === null || comparedWith === null || doubt !== null) return null;
  const { low, high } = comparedWith;
  return {
    kind: 'number-line',
    value,
    low,
    high,
    labels: {
      value: copied.value,
      ...endLabels(result),
      yours: say('line.yours'),
      usual: say('line.usual'),
    },
    title: say(`line.${analyte}.title`),
    description: say(`line.described.${position}`, { result: written(result) }),
  };
}

/** The ends as the laboratory printed them; a guideline's number only where the units are the same. */
function endLabels(result: GradedResult): { low: string | null; high: string | null } {
  const { comparedWith, copied } = result;
  if (comparedWith === null) return { low: null, high: null };
  const { low, high } = comparedWith;
  if (comparedWith.by === 'guideline') {
    const shown = (end: number | null) =>
      end === null || !writtenInOurUnit(result) ? null : String(end);
    return { low: shown(low), high: shown(high) };
  }
  const printed = copied.interval?.match(/\d+(?:[.,]\d+)?/g) ?? [];
  if (low !== null && high !== null) {
    return printed.length === 2
      ? { low: printed[0] ?? null, high: printed[1] ?? null }
      : { low: null, high: null };
  }
  const only = printed.length === 1 ? (printed[0] ?? null) : null;
  return { low: low === null ? null : only, high: high === null ? null : only };
}
