// Measured elements arrive; they leave with other glue or space at their ends.
import { moved, type Element, type Glue, type Strip } from './flow.js';

/** The glue that holds harder. */
export function strongest(a: Glue, b: Glue): Glue {
  return a > b ? a : b;
}

/** The same elements, the last with another glue to what follows. */
export function withLastGlue(elements: readonly Element[], glue: Glue): readonly Element[] {
  return elements.map((element, at) =>
    at === elements.length - 1 ? { ...element, glue } : element,
  );
}

/** The same elements, with other space before the first and after the last. */
export function withEnds(
  elements: readonly Element[],
  before: number,
  after: number,
): readonly Element[] {
  const last = elements.length - 1;
  return elements.map((element, at) => ({
    ...element,
    before: at === 0 ? before : element.before,
    after: at === last ? after : element.after,
  }));
}

/** The same strip with room above its line. */
export function lowered(strip: Strip, down: number): Strip {
  return {
    ...strip,
    height: strip.height + down,
    baseline: strip.baseline === null ? null : strip.baseline + down,
    ink: strip.ink.map((one) => moved(one, down)),
    grounds: strip.grounds.map((one) => moved(one, down)),
  };
}

type Column = readonly Element[];

/** Where columns open with lines of different sizes, these stand on one base line. */
export function onOneBaseline(columns: readonly Column[]): readonly Column[] {
  const lines = columns.map(([first]) => (first?.kind === 'strip' ? first.baseline : null));
  const lowest = Math.max(...lines.map((line) => line ?? Number.POSITIVE_INFINITY));
  if (!Number.isFinite(lowest)) return columns;
  return columns.map(([first, ...others]) =>
    first?.kind === 'strip' ? [lowered(first, lowest - (first.baseline ?? lowest)), ...others] : [],
  );
}
