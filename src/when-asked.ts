// A way to make a value arrives; the value leaves, made when somebody first asks and then kept.

/**
 * For what few commands need and every start would otherwise pay for.
 * @example const table = whenAsked(() => parse(rows)); table() // parses now; the next call does not
 */
export function whenAsked<T>(make: () => T): () => T {
  let kept: { readonly value: T } | null = null;
  return () => {
    kept ??= { value: make() };
    return kept.value;
  };
}
