// Keys and values arrive; the most recent of them leave again, never more than a set number.

/** A memory with a limit: what nobody asked for in a while goes when new entries need the room. */
export type Bounded<V> = {
  readonly get: (key: string) => V | undefined;
  readonly set: (key: string, value: V) => void;
  readonly size: () => number;
};

/**
 * Makes a memory of at most `limit` entries. When half of them are new, the older half goes but for what was
 * asked for since: cheaper than keeping an order.
 * @example const words = bounded<number>(2); words.set('a', 1); words.get('a') // 1
 */
export function bounded<V>(limit: number): Bounded<V> {
  const half = Math.max(1, Math.floor(limit / 2));
  let older = new Map<string, V>();
  let newer = new Map<string, V>();
  const set = (key: string, value: V) => {
    if (newer.size >= half) {
      older = newer;
      newer = new Map();
    }
    newer.set(key, value);
  };
  return {
    get: (key) => {
      const value = newer.get(key);
      if (value !== undefined) return value;
      const old = older.get(key);
      if (old !== undefined) set(key, old);
      return old;
    },
    set,
    size: () => older.size + newer.size,
  };
}
