// A shelf and what a translator did arrive; the catalogue files and the record that are written leave.
import {
  type Act,
  entryOf,
  expectedMessages,
  groupActs,
  hashesOf,
  type Namespace,
  translatedNamespaces,
} from '../../letter/index.js';
import type { Shelf } from './shelf.js';
import type { Taken } from './take-in.js';

export type By = { readonly who: string; readonly credential: string; readonly date: string };
export type Kept = {
  /** Files that changed, whole, in the order of the English keys. */
  readonly files: Readonly<Partial<Record<Namespace, Readonly<Record<string, string>>>>>;
  readonly acts: readonly Act[];
};

export function keepTranslation(shelf: Shelf, taken: readonly Taken[], by: By): Kept {
  const files: Partial<Record<Namespace, Record<string, string>>> = {};
  for (const namespace of translatedNamespaces) {
    const own = taken.filter(({ unit }) => unit.namespace === namespace);
    if (own.length === 0) continue;
    const before = (shelf.files[namespace] ?? {}) as Record<string, string>;
    const after = new Map([
      ...Object.entries(before),
      ...own.map(({ unit, text }) => [unit.key, text] as const),
    ]);
    // A file that lacks nothing keeps its own order.
    const whole = own.every(({ unit }) => unit.key in before);
    const expected = whole ? [] : [...expectedMessages(namespace, shelf.locale).keys()];
    const order = [...expected, ...Object.keys(before)];
    files[namespace] = Object.fromEntries(
      order.flatMap((key) => {
        const text = after.get(key);
        return text === undefined ? [] : [[key, text]];
      }),
    );
  }
  const changed = new Set(taken.map(({ unit }) => `${unit.namespace} ${unit.key}`));
  const stays = shelf.texts.flatMap((placed) => {
    const entry = entryOf(shelf.record, placed.namespace, placed.key);
    if (entry === null || changed.has(`${placed.namespace} ${placed.key}`)) return [];
    const { sourceHash, targetHash, ...earlier } = entry;
    return [{ placed, by: earlier, hashes: `${sourceHash} ${targetHash}` }];
  });
  const now = taken.map(({ unit: { namespace, key }, text, state }) => ({
    placed: { namespace, key },
    by: { state, ...by },
    hashes: hashesOf({ namespace, key, text }),
  }));
  return { files, acts: groupActs([...stays, ...now]) };
}
