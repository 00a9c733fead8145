// A misspelt word and a closed list arrive; the nearest word of the list leaves, or null.
// A slip in the first letter is rare, and leaving it out keeps long lists quick.

/**
 * Nearest member of a closed list by edits, when near enough to be a slip of the hand.
 * One edit is allowed for every `lettersAnEdit` letters, and always one.
 * @example nearest('feritin', analytes) // 'ferritin'
 */
export function nearest<T extends string>(
  word: string,
  list: readonly T[],
  lettersAnEdit = 3,
): T | null {
  if (word.length > longestWord) return null;
  const key = plain(word);
  const most = Math.max(1, Math.floor(key.length / lettersAnEdit));
  let best: { readonly member: T; readonly edits: number } | null = null;
  for (const member of list) {
    if (Math.abs(member.length - word.length) > most) continue;
    const other = plain(member);
    if (other[0] !== key[0]) continue;
    const edits = editsBetween(key, other, most);
    if (edits <= most && (best === null || edits < best.edits)) best = { member, edits };
  }
  return best === null ? null : best.member;
}

const longestWord = 60;
const plain = (word: string) => word.toLowerCase().replace(/[\s_]+/g, '-');

/** Levenshtein's distance, one row at a time; given up as soon as it must be over `most`. */
function editsBetween(a: string, b: string, most: number): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    if (next.every((edits) => edits > most)) return most + 1;
    row = next;
  }
  return row[b.length] ?? 0;
}
