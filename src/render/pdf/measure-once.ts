// A block of an earlier letter arrives; what was measured of it then leaves, under the tags of this letter.
import type { Block } from '../block.js';
import { metBefore } from '../met-before.js';
import type { Element } from './flow.js';
import type { Bench, Place } from './frame.js';
import type { Tag } from './placed.js';

/** Tags are named from 1 here; 0 is the tag the block stands in. */
export type Measured = { readonly elements: readonly Element[]; readonly tags: readonly Tag[] };

type Measure = (block: Block, place: Place, bench: Bench) => readonly Element[];

/** Measures a block unless it was measured before at such a place; blocks met for the first time are not kept. */
export function measureOnce(
  block: Block,
  place: Place,
  bench: Bench,
  measure: Measure,
): readonly Element[] {
  if (!metBefore(block)) return measure(block, place, bench);
  const { measured } = bench.fonts;
  const places = measured.get(block) ?? new Map<string, Measured>();
  measured.set(block, places);
  const key = placeKey(place, bench);
  const known = places.get(key);
  if (known !== undefined) return placed(known, place, bench);
  const missing = new Set<number>();
  const around = bench.tags[place.tag];
  const tags = around === undefined ? [] : [around];
  const elements = measure(block, { ...place, tag: 0 }, { ...bench, tags, missing });
  const made = { elements, tags: tags.slice(1) };
  // A face may still be borrowed for what is missing.
  if (missing.size === 0) places.set(key, made);
  for (const point of missing) bench.missing.add(point);
  return placed(made, place, bench);
}

/** All that measuring looks at beside the block. */
function placeKey({ left, width, dir, lang, tag, depth }: Place, bench: Bench): string {
  const role = bench.tags[tag]?.role ?? '';
  return `${left} ${width} ${dir} ${lang} ${depth} ${role} ${bench.base} ${bench.measure}`;
}

function placed({ elements, tags }: Measured, place: Place, bench: Bench): readonly Element[] {
  const from = bench.tags.length - 1;
  const name = (tag: number) => (tag === 0 ? place.tag : from + tag);
  for (const tag of tags) {
    bench.tags.push({ ...tag, parent: tag.parent === null ? null : name(tag.parent) });
  }
  return elements.map((element) => renamed(element, name));
}

/** Heads of tables that are repeated on later pages belong to no tag. */
function renamed(element: Element, name: (tag: number) => number): Element {
  switch (element.kind) {
    case 'strip':
      return { ...element, ink: element.ink.map((one) => ({ ...one, tag: name(one.tag) })) };
    case 'frame':
      return { ...element, children: element.children.map((child) => renamed(child, name)) };
    case 'columns': {
      const columns = element.columns.map((column) => column.map((one) => renamed(one, name)));
      return { ...element, columns };
    }
    case 'break':
      return element;
  }
}
