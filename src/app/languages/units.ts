// The shelf of a language arrives; everything a translator works on leaves, message by message.
import {
  expectedMessages,
  type Namespace,
  type ReviewState,
  stateOf,
  translatedNamespaces,
} from '../../letter/index.js';
import { limitFor, noteFor } from './notes.js';
import type { GlossaryTerm, Shelf } from './shelf.js';

export type Unit = {
  readonly namespace: Namespace;
  readonly key: string;
  readonly source: string;
  /** Empty where nobody has translated it yet. */
  readonly target: string;
  readonly state: ReviewState;
  readonly note: string | null;
  readonly limit: number | null;
  readonly terms: readonly GlossaryTerm[];
};

/** Every message the language needs, in the order of the English files. */
export function unitsOf({ locale, files, record, glossary }: Shelf): readonly Unit[] {
  return translatedNamespaces.flatMap((namespace) => {
    const texts = (files[namespace] ?? {}) as Record<string, string>;
    return [...expectedMessages(namespace, locale)].map(([key, source]): Unit => {
      const target = texts[key] ?? '';
      return {
        namespace,
        key,
        source,
        target,
        state: stateOf(record, { namespace, key, text: target }),
        note: noteFor(namespace, key),
        limit: limitFor(namespace, key),
        terms: glossary.filter((term) => holdsTerm(source, term.source)),
      };
    });
  });
}

/** Whole words, whatever their case. @example holdsTerm('Iron store (ferritin)', 'iron') // true */
function holdsTerm(text: string, term: string): boolean {
  const words = term.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`(?<![\\p{L}])${words}(?![\\p{L}])`, 'iu').test(text);
}
