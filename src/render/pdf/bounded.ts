// Keys and values arrive; the most recent of them leave again, never more than a set number.

/** A memory with a limit: the oldest entry goes when a new one finds no room. */
export type Bounded<V> = {
  readonly get: (key: string) => V | undefined;
  readonly set: (key: string, value: V) => void;
  readonly size: () => number;
};

/**
 * Makes a memory of at most `limit` entries.
 * @example const words = bounded<number>(2); words.set('a', 1); words.get('a') // 1
 */
export function bounded<V>(limit: number): Bounded<V> {
  const entries = new Map<string, V>();
  return {
    get: (key) => entries.get(key),
    set: (key, value) => {
      if (entries.size >= limit) {
        for (const oldest of entries.keys()) {
          entries.delete(oldest);
          break;
        }
      }
      entries.set(key, value);
    },
    size: () => entries.size,
  };
}
