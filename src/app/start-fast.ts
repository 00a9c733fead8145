// A command that draws a few pages and ends: the engine is told not to prepare for a long run.
import { setFlagsFromString } from 'node:v8';
import { z } from 'zod';

/**
 * Compiles WebAssembly with the quick compiler alone. The optimised code of the shaper would be ready
 * only after one letter is drawn, and the process would wait for it before it ends.
 */
export function startFast(): void {
  // Each schema is used once: writing a program for it takes longer than walking it.
  z.config({ jitless: true });
  // Compiled code that the build keeps is good for the engine's own settings only.
  if (process.env.IRONLEAF_KEEP_COMPILED !== undefined) return;
  setFlagsFromString('--liftoff-only');
}
