// An interpretation arrives; whether its results are too urgent for a letter to be the first word about them leaves.
import type { Interpretation } from '../interpret/interpretation.js';

/** True where a person must be phoned before any letter goes out. */
export function isHeld({ interpretation }: { readonly interpretation: Interpretation }): boolean {
  return interpretation.hold.tier === 'emergency' || interpretation.hold.tier === 'same-day';
}
