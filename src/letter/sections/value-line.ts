// A graded result arrives; its value and the range it was laid beside leave as one line.
import type { GradedResult } from '../../interpret/interpretation.js';
import type { Said } from '../content.js';
import { type Inserted, ltr, type Voice } from '../say.js';

/** The laboratory's value and unit, byte for byte, in one isolate. */
export const written = ({ copied }: GradedResult): Inserted =>
  ltr(copied.unit === '' ? copied.value : `${copied.value} ${copied.unit}`);

/**
 * True when the laboratory wrote in our own unit, so that a guideline's number may stand beside its value.
 * @example writtenInOurUnit(result) // false for haemoglobin 10.8 g/dL, which we hold as 108 g/L
 */
export function writtenInOurUnit({ copied, value }: GradedResult): boolean {
  return Number(copied.value.replace(/^\s*[<>]=?\s*/, '').replace(',', '.')) === value;
}

export function valueLine({ say }: Voice, result: GradedResult): Said {
  const { copied, comparedWith } = result;
  const values = { result: written(result) };
  if (copied.interval !== null) {
    return say('value.with-interval', { ...values, interval: ltr(copied.interval) });
  }
  if (comparedWith?.by === 'guideline' && writtenInOurUnit(result)) {
    const { low, high } = comparedWith;
    if (low !== null && high !== null) {
      return say('value.guide-both', { ...values, low: ltr(`${low}`), high: ltr(`${high}`) });
    }
    if (low !== null) return say('value.guide-low', { ...values, low: ltr(`${low}`) });
    if (high !== null) return say('value.guide-high', { ...values, high: ltr(`${high}`) });
  }
  return say('value.without-interval', values);
}
