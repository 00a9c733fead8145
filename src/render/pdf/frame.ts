// Nothing arrives; what a block must know about where it stands leaves: column, direction, language, tags.
import type { Direction } from '../../direction.js';
import type { Run } from '../block.js';
import type { Fonts } from './fonts.js';
import type { Role, Tag } from './placed.js';

/** The column a block is laid out in. Lengths in points; `base` is the size of body text. */
export type Place = {
  readonly left: number;
  readonly width: number;
  readonly dir: Direction;
  readonly lang: string;
  readonly tag: number;
  readonly depth: number;
};

/** What one letter gathers while it is laid out. */
export type Bench = {
  readonly fonts: Fonts;
  readonly base: number;
  /** Most em of its own size that a line of running text takes. */
  readonly measure: number;
  readonly tags: Tag[];
  readonly missing: Set<number>;
};

/** Mirrors in right-to-left columns: the left edge of something `width` wide, `start` in from where reading begins. */
export function leftOf(place: Place, start: number, width: number): number {
  return place.dir === 'rtl' ? place.left + place.width - start - width : place.left + start;
}

/** The same column, narrower: `start` taken where reading begins, `end` where it ends. */
export function inset(place: Place, start: number, end: number): Place {
  const width = place.width - start - end;
  return { ...place, left: leftOf(place, start, width), width };
}

/** Adds a tag and returns its name. */
export function addTag(
  bench: Bench,
  parent: number | null,
  role: Role,
  facts: Partial<Omit<Tag, 'parent' | 'role'>> = {},
): number {
  const { lang = null, alt = null, scope = null, span = 1, numbering = null, href = null } = facts;
  bench.tags.push({ parent, role, lang, alt, scope, span, numbering, href });
  return bench.tags.length - 1;
}

/** A run of plain text. */
export function plainRun(text: string): Run {
  return { text, strong: false, lang: null, isolate: null, href: null };
}
