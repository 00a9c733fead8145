// A share such as 2/8 arrives; which reports are ours, and how our files are named apart, leaves.

/** Part `index` (from 1) of `count`; a run of its own is 1 of 1. */
export type Shard = { readonly index: number; readonly count: number };

export const whole: Shard = { index: 1, count: 1 };

/**
 * Reads `i/n`, from 1 to n; null when it is not that.
 * @example readShard('2/8') // { index: 2, count: 8 }
 */
export function readShard(text: string): Shard | null {
  const found = /^([1-9]\d{0,4})\/([1-9]\d{0,4})$/.exec(text);
  const [index, count] = [Number(found?.[1]), Number(found?.[2])];
  return found !== null && index <= count ? { index, count } : null;
}

/** Every report belongs to exactly one shard. @param number place in the file, from 1. */
export function isOurs({ index, count }: Shard, number: number): boolean {
  return (number - 1) % count === index - 1;
}

/** How many of `reports` are of this shard. */
export function shareOf({ index, count }: Shard, reports: number): number {
  return Math.max(0, Math.ceil((reports - index + 1) / count));
}

/**
 * Puts the share into a file's name, so that shards may write into one folder.
 * @example shardName('calls.csv', { index: 2, count: 8 }) // 'calls.2-of-8.csv'
 */
export function shardName(name: string, { index, count }: Shard): string {
  return count === 1 ? name : name.replace(/(\.[^.]+)?$/, `.${index}-of-${count}$1`);
}

/**
 * Whether a file is the list of a share of some run.
 * @example isNameOfShare('calls.2-of-8.csv', 'calls.csv') // true
 */
export function isNameOfShare(name: string, list: string): boolean {
  const whole = name.replace(/\.\d+-of-\d+(?=\.[^.]+$)/, '');
  return whole === list && whole !== name;
}
