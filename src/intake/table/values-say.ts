// The cells below one header arrive; what they can only be leaves, for a proposal that a person confirms.
import { plausibleLimits } from '../../knowledge/plausible.js';
import { unitsOf } from '../../knowledge/units.js';
import type { Analyte } from '../../terms.js';
import { needsOrder, readDate } from '../date-as-written.js';
import { sexLetter, sexOf } from '../names.js';
import { readNumberAsWritten } from '../number-as-written.js';

export type ValuesSay = 'dates' | 'sexes' | 'numbers' | 'nothing';

/** Enough rows to tell by; a longer file says no more. */
const mostLooked = 500;

/** @example valuesSay(['17.11.2026', '18.11.2026']) // 'dates' */
export function valuesSay(cells: readonly string[]): ValuesSay {
  const filled = cells.filter((cell) => cell !== '').slice(0, mostLooked);
  if (filled.length === 0) return 'nothing';
  if (filled.every((cell) => readDate(cell) !== null || needsOrder(cell))) return 'dates';
  const words = [...new Set(filled)];
  const letters = new Set(words.flatMap((word) => sexLetter(word) ?? []));
  if (words.every((word) => /^\p{L}+$/u.test(word) && sexOf(word, letters, '') !== null))
    return 'sexes';
  return filled.every((cell) => readNumberAsWritten(cell, ',').ok) ? 'numbers' : 'nothing';
}

/**
 * Units in which every value of a column would be plausible for the test: a hint to look at, never one to use.
 * @example unitsThatFit('haemoglobin', ['9.8', '13.1']) // ['g/dL', 'mmol/L']
 */
export function unitsThatFit(analyte: Analyte, cells: readonly string[]): readonly string[] {
  const limits = plausibleLimits.find((row) => row.analyte === analyte);
  const values = cells
    .filter((cell) => cell !== '')
    .slice(0, mostLooked)
    .flatMap((cell) => {
      const read = readNumberAsWritten(cell, ',');
      return read.ok ? [Number(read.value.replace(',', '.'))] : [];
    });
  if (limits === undefined || values.length === 0) return [];
  return unitsOf(analyte)
    .filter(({ times, over }) =>
      values.every((value) => {
        const ours = (value * Number(times)) / Number(over);
        return ours >= limits.askBelow && ours <= limits.askAbove;
      }),
    )
    .map(({ code }) => code);
}
