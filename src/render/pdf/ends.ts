// Measured elements arrive; they leave with other glue or space at their ends.
import type { Element, Glue } from './flow.js';

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
