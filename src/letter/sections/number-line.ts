// A graded result arrives; the numbers and words of its line leave, or none where it lies nowhere.
import type { GradedResult } from '../../interpret/interpretation.js';
import type { Position } from '../../terms.js';
import type { NumberLine, Said } from '../content.js';
import type { Voice } from '../say.js';
import { valueLine, written, writtenInOurUnit } from './value-line.js';

export function numberLine(voice: Voice, result: GradedResult): NumberLine | null {
  const { say } = voice;
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
    description: described(voice, result, position),
  };
}

/** Two whole sentences for whoever cannot see the line: where the result lies, and the usual range. */
function described(voice: Voice, result: GradedResult, position: Position): Said {
  const place = voice.say(`line.described.${position}`, { result: written(result) });
  return { ...place, text: `${place.text} ${valueLine(voice, result).text}` };
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
