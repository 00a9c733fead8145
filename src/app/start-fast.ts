// A command that draws a few pages and ends: the engine is told not to prepare for a long run.
import { setFlagsFromString } from 'node:v8';

/**
 * Optimised code would be ready only after one letter is drawn: the shaper's WebAssembly is compiled by the quick
 * compiler alone, and a function must run fifteen times as long as usual before it is compiled anew. A file of some
 * hundred reports still gets there, sooner than with much code optimised too early.
 */
export function startFast(): void {
  // Compiled code that the build keeps is good for the engine's own settings only.
  if (process.env.IRONLEAF_KEEP_COMPILED !== undefined) return;
  setFlagsFromString('--liftoff-only');
  // Counted in bytes of bytecode; 67,584 where nothing is said.
  setFlagsFromString('--interrupt-budget=1000000');
}
