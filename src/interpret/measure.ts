// In: a quantity, perhaps with a comparator, and a limit. Out: below, above, or honestly undecided.
import type { Quantity } from '../report/report.js';

export type Answer = 'yes' | 'no' | 'undecided';

/**
 * A plain number of per cent.
 * @example perCent(20) // { value: 20, unit: '%', comparator: null }
 */
export function perCent(value: number): Quantity {
  return { value, unit: '%', comparator: null };
}

/**
 * Whether a quantity lies under a limit, on its exact value.
 * @example below({ value: 5, unit: 'ug/L', comparator: '<' }, 30) // 'yes'
 * @example below({ value: 50, unit: 'ug/L', comparator: '<' }, 30) // 'undecided'
 */
export function below({ value, comparator }: Quantity, limit: number): Answer {
  // No test of this trade can fall under zero, so '<5' lies inside an interval from 0.
  if (limit <= 0) return 'no';
  switch (comparator) {
    case null:
      return value < limit ? 'yes' : 'no';
    case '<':
      return value <= limit ? 'yes' : 'undecided';
    case '<=':
      return value < limit ? 'yes' : 'undecided';
    case '>':
    case '>=':
      return value >= limit ? 'no' : 'undecided';
  }
}

/**
 * Whether a quantity lies over a limit, on its exact value.
 * @example above({ value: 45, unit: '%', comparator: '>' }, 45) // 'yes'
 * @example above({ value: 45, unit: '%', comparator: '>' }, 50) // 'undecided'
 */
export function above({ value, comparator }: Quantity, limit: number): Answer {
  switch (comparator) {
    case null:
      return value > limit ? 'yes' : 'no';
    case '>':
      return value >= limit ? 'yes' : 'undecided';
    case '>=':
      return value > limit ? 'yes' : 'undecided';
    case '<':
    case '<=':
      return value <= limit ? 'no' : 'undecided';
  }
}

/** Yes when one says yes; no only when all say no. */
export function either(...answers: readonly Answer[]): Answer {
  if (answers.includes('yes')) return 'yes';
  return answers.includes('undecided') ? 'undecided' : 'no';
}
