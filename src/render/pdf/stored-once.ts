// What several pages show arrives; each document stores it once, and its name in content streams leaves (ISO 32000-1, 8.8).
import type { Canvas, Reference } from './canvas.js';

const stored = new WeakMap<Canvas, Map<string, { name: string; object: Reference }>>();

/**
 * Makes the object known on the current page.
 * @param key says what it shows: the same key is the same object.
 */
export function storedOnce(canvas: Canvas, key: string, store: () => Reference): string {
  const objects = stored.get(canvas) ?? new Map<string, { name: string; object: Reference }>();
  stored.set(canvas, objects);
  const known = objects.get(key) ?? { name: `X${objects.size + 1}`, object: store() };
  objects.set(key, known);
  canvas.page.xobjects[known.name] = known.object;
  return known.name;
}
