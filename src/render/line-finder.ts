// Text arrives; a function from places in it to one-based line numbers leaves.

/** @example lineFinder('a\nb')(2) // 2 */
export function lineFinder(text: string): (index: number) => number {
  const starts = [0];
  for (const match of text.matchAll(/\n/g)) starts.push(match.index + 1);
  return (index) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((starts[middle] ?? 0) <= index) low = middle;
      else high = middle - 1;
    }
    return low + 1;
  };
}
