// In: ids of rows as they were used. Out: each once, with its number, source, place and how it was checked.
import { numberOf, rowById } from '../knowledge/row-index.js';
import type { SourceUsed } from './interpretation.js';

/**
 * Rows used, in order of first use.
 * @example sourcesOf(['crp-raised']) // [{ rule: 'crp-raised', number: '5 mg/L', source: 'PMC4785469', … }]
 */
export function sourcesOf(rules: readonly string[]): readonly SourceUsed[] {
  return [...new Set(rules)].map((rule) => {
    const row = rowById(rule);
    const { source, at, checked } = row;
    return { rule, source, at, checked, number: numberOf(row) };
  });
}
