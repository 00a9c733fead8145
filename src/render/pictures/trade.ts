// Nothing arrives; what a trade must know to draw its part of an analogy leaves, as a type.
import type { Shape } from '../block.js';

/** `outline` when measured, `missing` (dashed) when not. */
type FrameLook = 'outline' | 'missing';

export type Point = { readonly x: number; readonly y: number };

/** The four things of an analogy. Places are in units of the picture; y grows downwards. */
export type Trade = {
  /** One spare, about 10 by 10, around its centre. */
  readonly unit: (centre: Point) => Shape;
  /** Drawn once over all units, such as the holes of buttons. */
  readonly overUnits: (centres: readonly Point[]) => readonly Shape[];
  /** The store around a room of 96 by 52 whose upper left corner is given; it may add 18 below. */
  readonly store: (corner: Point, look: FrameLook) => readonly Shape[];
  /** A carrier in 50 by 24; its three places are 14 apart, the first 11 to the right and 8 down. */
  readonly carrier: (corner: Point, look: FrameLook) => readonly Shape[];
  /** One finished thing standing on `foot`, 34 wide and 36 high at size 1. */
  readonly good: (foot: Point, size: number, look: FrameLook) => readonly Shape[];
};
