// A run of many letters begins: the engine is told to clear up before it takes more memory.
import { setFlagsFromString } from 'node:v8';

/**
 * Lets the heap grow by half at a time. By itself the engine takes more room the longer a run lasts, though no
 * letter leaves anything behind.
 */
export function growSlowly(): void {
  setFlagsFromString('--heap-growing-percent=50');
}
