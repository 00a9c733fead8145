// In: a person with results. Out: combined indices: Mentzer (cells) and sTfR over ferritin. Hints that never decide.
import { limit } from '../knowledge/limit.js';
import type { Analyte } from '../terms.js';
import type { Person } from './person.js';

export type CombinedIndex = {
  readonly value: number;
  readonly low: boolean;
  readonly high: boolean;
  readonly rules: readonly string[];
};

/**
 * MCV (fL) / RBC (10*12/L); under 13 hints at thalassaemia trait. Misleads in iron-deficient polycythaemia.
 * Source: PMC4003757. Null when either is missing, doubtful or without a plain number.
 * @example mentzer(person) // MCV 63.3, RBC 5.66: { value: 11.2, low: true, … }
 */
export function mentzer(person: Person): CombinedIndex | null {
  const [mcv, rbc] = [plain(person, 'mcv'), plain(person, 'rbc')];
  const row = limit('mentzer');
  if (mcv === null || rbc === null || rbc === 0) return null;
  const exact = mcv / rbc;
  return {
    value: Math.round(exact * 10) / 10,
    low: exact < row.value,
    high: exact > row.value,
    rules: [row.id],
  };
}

/**
 * sTfR (mg/L) / log10 ferritin (ug/L); under 1 hints at inflammation, over 2 at deficiency.
 * Source: Weiss and Goodnough 2005; assays differ. Null when not computable (ferritin 1 or less).
 * @example stfrIndex(person) // sTfR 5, ferritin 30: { value: 3.4, high: true, … }
 */
export function stfrIndex(person: Person): CombinedIndex | null {
  const [stfr, ferritin] = [plain(person, 'stfr'), plain(person, 'ferritin') ?? 0];
  if (stfr === null || ferritin <= 1) return null;
  const [low, high] = [limit('stfr-index-inflammation'), limit('stfr-index-deficiency')];
  const exact = stfr / Math.log10(ferritin);
  return {
    value: Math.round(exact * 10) / 10,
    low: exact < low.value,
    high: exact > high.value,
    rules: [low.id, high.id],
  };
}

function plain(person: Person, analyte: Analyte): number | null {
  const quantity = person.sure.get(analyte)?.quantity;
  return quantity === undefined || quantity.comparator !== null ? null : quantity.value;
}
