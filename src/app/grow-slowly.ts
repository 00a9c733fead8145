// A run of many letters begins: the engine is told to clear up before it takes more memory, and not to hurry.
import { setFlagsFromString } from 'node:v8';

/**
 * Lets the heap grow by half at a time: by itself the engine takes more room the longer a run lasts, though no
 * letter leaves anything behind.
 */
export function growSlowly(): void {
  setFlagsFromString('--heap-growing-percent=50');
  // Counted in bytes of bytecode, 67,584 where nothing is said. Code optimised after a few letters meets in the next
  // ones what it did not allow for, and is thrown away and made anew: a seventh of the work of a thousand letters.
  setFlagsFromString('--interrupt-budget=300000');
}
