// A position arrives; the side of the usual range it lies on leaves.
import type { Position } from '../../terms.js';

/** Same words as the levels of the decision table. */
export function sideOf(position: Position | null): 'low' | 'usual' | 'high' | null {
  if (position === null) return null;
  if (position === 'in-range') return 'usual';
  return position.endsWith('below') ? 'low' : 'high';
}
