// In: a number about a person. Out: the number, or a problem when it lies outside the span the program believes.
import { type SpanName, spanOf } from '../knowledge/plausible.js';
import type { Place } from '../problem.js';
import { type Findings, fault } from './findings.js';

/**
 * The number when it lies in the span, both ends included; null and a problem when not.
 * @example withinSpan(15, 'pregnancy-weeks', place, into) // 15
 */
export function withinSpan(
  value: number | null,
  name: SpanName,
  place: Place,
  into: Findings,
): number | null {
  if (value === null) return null;
  const { low, high, unit } = spanOf(name);
  if (Number.isFinite(value) && value >= low && value <= high) return value;
  into.problems.push(
    fault('out-of-span', place, `cannot take ${name.replaceAll('-', ' ')} at its word`, {
      found: String(value).slice(0, 20),
      expected: `${low} to ${high} ${unit}`,
    }),
  );
  return null;
}
