// Contents of letters arrive; the tree of every variable they have leaves: objects by name, lists with one row, null at the end.
import type { Shape } from '../../src/app/templates/shape.js';

const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);

export function shapeOf(value: unknown): Shape {
  if (isList(value)) return [value.map(shapeOf).reduce(joined, null)];
  if (typeof value !== 'object' || value === null) return null;
  return Object.fromEntries(Object.entries(value).map(([name, own]) => [name, shapeOf(own)]));
}

export function joined(one: Shape, other: Shape): Shape {
  if (one === null) return other;
  if (other === null) return one;
  if (isList(one) || isList(other)) {
    return [
      joined(isList(one) ? (one[0] ?? null) : null, isList(other) ? (other[0] ?? null) : null),
    ];
  }
  const names = [...new Set([...Object.keys(one), ...Object.keys(other)])].sort();
  return Object.fromEntries(
    names.map((name) => [name, joined(one[name] ?? null, other[name] ?? null)]),
  );
}
