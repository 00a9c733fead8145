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
  const letters = lettersOf(key);
  for (const { member, plain: other, letters: others } of prepared(list)) {
    if (Math.abs(member.length - word.length) > most || other[0] !== key[0]) continue;
    // One edit takes away one letter and brings another at most.
    if (bits(letters ^ others) > 2 * most) continue;
    const edits = editsBetween(key, other, best === null ? most : best.edits - 1);
    if (edits !== null) best = { member, edits };
  }
  return best === null ? null : best.member;
}

const longestWord = 60;

type Prepared<T> = { readonly member: T; readonly plain: string; readonly letters: number };
const known = new WeakMap<readonly string[], readonly Prepared<string>[]>();

function prepared<T extends string>(list: readonly T[]): readonly Prepared<T>[] {
  const before = known.get(list);
  if (before !== undefined) return before as readonly Prepared<T>[];
  const now = list.map((member) => {
    const other = plain(member);
    return { member, plain: other, letters: lettersOf(other) };
  });
  known.set(list, now);
  return now;
}

/** Which letters a word holds, a bit for each; signs that share a bit only make the filter let more through. */
function lettersOf(word: string): number {
  let letters = 0;
  for (let i = 0; i < word.length; i++) letters |= 1 << (word.charCodeAt(i) & 31);
  return letters;
}

function bits(number: number): number {
  let count = 0;
  for (let left = number; left !== 0; left &= left - 1) count++;
  return count;
}

function plain(word: string): string {
  return /^[a-z0-9-]*$/.test(word) ? word : word.toLowerCase().replace(/[\s_]+/g, '-');
}

/**
 * Levenshtein's distance, one row at a time and only beside the diagonal, where it can be `most` or less; null where
 * it is more. A table of unknown names asks for it a million times.
 */
function editsBetween(a: string, b: string, most: number): number | null {
  let [row, next] = [new Array<number>(b.length + 1), new Array<number>(b.length + 1)];
  for (let j = 0; j <= b.length; j++) row[j] = j;
  for (let i = 1; i <= a.length; i++) {
    const [from, to] = [Math.max(1, i - most), Math.min(b.length, i + most)];
    next.fill(most + 1);
    if (from === 1) next[0] = i;
    let least = next[from - 1] ?? 0;
    for (let j = from; j <= to; j++) {
      const swap = (row[j - 1] ?? 0) + (a.charCodeAt(i - 1) === b.charCodeAt(j - 1) ? 0 : 1);
      const edits = Math.min(swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1);
      next[j] = edits;
      if (edits < least) least = edits;
    }
    if (least > most) return null;
    [row, next] = [next, row];
  }
  const edits = row[b.length] ?? 0;
  return edits > most ? null : edits;
}
