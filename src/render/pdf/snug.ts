// Measured elements arrive; the same with less space between them leaves, for a letter that would need one more sheet.
import type { Element } from './flow.js';

/**
 * Takes spaces between elements down to a share; lines, boxes and pictures keep their size.
 * @param share 0 to 1.
 * @example snug(elements, 0.5) // half the space before and after everything
 */
export function snug(elements: readonly Element[], share: number): readonly Element[] {
  return elements.map((element): Element => {
    const spaces = { before: element.before * share, after: element.after * share };
    if (element.kind === 'frame') {
      return { ...element, ...spaces, children: snug(element.children, share) };
    }
    if (element.kind === 'columns') {
      return { ...element, ...spaces, columns: element.columns.map((one) => snug(one, share)) };
    }
    return { ...element, ...spaces };
  });
}
