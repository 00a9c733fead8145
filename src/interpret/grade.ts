// In: one result and a person. Out: the graded result: position told, yardsticks, level, rows used.
import type { Quantity, ReferenceInterval, Result } from '../report/report.js';
import type { Analyte, Level, Position } from '../terms.js';
import { bandLimit } from './haemoglobin.js';
import type { Comparison, GradedResult } from './interpretation.js';
import type { Person } from './person.js';
import { bandOf, positionIn } from './position.js';
import { yardsticksFor } from './yardstick.js';

/** A laboratory interval that can be used: not empty, not upside down, not zero to zero. */
export function usable(interval: ReferenceInterval | null): ReferenceInterval | null {
  if (interval === null || (interval.low === null && interval.high === null)) return null;
  const { low, high } = interval;
  return low !== null && high !== null && low >= high ? null : interval;
}

export type Laid = {
  readonly comparedWith: Comparison | null;
  /** On the first yardstick; null where there is none, or where a comparator leaves it open. */
  readonly position: Position | null;
  readonly also: readonly Comparison[];
  readonly rules: readonly string[];
};

/**
 * Lays every yardstick beside a quantity: the laboratory's own first, else the guideline's.
 * @example layBeside(woman, 'ferritin', quantity(22), { low: 20, high: 500 }).comparedWith?.position // 'in-range'
 */
export function layBeside(
  person: Person,
  analyte: Analyte,
  quantity: Quantity,
  interval: ReferenceInterval | null,
): Laid {
  const band = bandOf(analyte);
  const line = analyte === 'haemoglobin' ? bandLimit(person, 'moderate') : undefined;
  const place = (low: number | null, high: number | null) =>
    positionIn(quantity, { low, high }, band, line?.value ?? null);
  const guideline = yardsticksFor(person, analyte).map((one) => ({
    comparison: {
      by: 'guideline',
      low: one.low,
      high: one.high,
      source: one.source,
      rule: one.rules[0] ?? null,
      highRule: one.high === null ? null : (one.rules[1] ?? null),
      position: place(one.low, one.high),
    } as const,
    rules: one.rules,
  }));
  const own = usable(interval);
  const laboratory: readonly Comparison[] =
    own === null
      ? []
      : [
          {
            by: 'laboratory',
            ...own,
            source: "the laboratory's own interval",
            rule: null,
            highRule: null,
            position: place(own.low, own.high),
          },
        ];
  const [comparedWith = null, ...also] = [
    ...laboratory,
    ...guideline.map(({ comparison }) => comparison),
  ];
  const outside = [comparedWith, ...also].some(
    (one) => one !== null && one.position !== null && one.position !== 'in-range',
  );
  const bands = outside ? [band.id, ...(line === undefined ? [] : [line.row.id])] : [];
  const rules = [...guideline.flatMap((one) => one.rules), ...bands];
  return { comparedWith, position: comparedWith?.position ?? null, also, rules };
}

/** A graded result from its parts; a doubtful value has no position and decides nothing. */
export function graded(result: Result, laid: Laid, level: Level): GradedResult {
  const { analyte, quantity, copied, labFlag, doubt } = result;
  const position = doubt === null ? laid.position : null;
  return {
    analyte,
    value: quantity.value,
    unit: quantity.unit,
    comparator: quantity.comparator,
    copied,
    derived: null,
    position,
    comparedWith: laid.comparedWith,
    also: laid.also,
    level: doubt === null ? level : 'not-measured',
    labFlag,
    doubt: doubt === null ? null : { kind: doubt.kind, question: doubt.question },
  };
}
