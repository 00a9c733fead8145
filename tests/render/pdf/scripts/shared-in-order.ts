// Two texts arrive; the share of the first's characters that the second holds in the same order leaves.

/**
 * Longest common subsequence over the length of what was written, 0 to 1.
 * @example sharedInOrder('iron', 'irno') // 0.75
 */
export function sharedInOrder(written: string, read: string): number {
  const a = [...written];
  const b = [...read];
  let row = new Array<number>(b.length + 1).fill(0);
  for (const character of a) {
    const next = [0];
    b.forEach((other, at) => {
      const longer = Math.max(row[at + 1] ?? 0, next[at] ?? 0);
      next.push(character === other ? (row[at] ?? 0) + 1 : longer);
    });
    row = next;
  }
  return a.length === 0 ? 1 : (row.at(-1) ?? 0) / a.length;
}
