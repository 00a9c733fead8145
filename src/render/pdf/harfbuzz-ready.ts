// Nothing arrives; the moment from which HarfBuzz may be called leaves.

/**
 * Importing HarfBuzz waits for its WebAssembly, so here it is ready at once. The build, whose one script
 * cannot wait while it loads, puts HarfBuzz's own promise in this place.
 */
export const harfbuzzReady: Promise<unknown> = Promise.resolve();
