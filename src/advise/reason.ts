// A code, its numbers and its rules arrive; one line of reasoning leaves.
import type { Reason } from '../interpret/interpretation.js';

/**
 * One line of reasoning.
 * @example reason('daily-need', { milligrams: 18 }, ['iom-female-19-50'])
 */
export function reason(
  code: string,
  facts: Reason['facts'] = {},
  rules: readonly string[] = [],
): Reason {
  return { code, facts, rules };
}
