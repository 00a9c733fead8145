// The page's own messages in one language arrive; a function that says them leaves.
import english from '../../locales/en/page.json' with { type: 'json' };
import type { Direction } from '../direction.js';
import { embeddedJson } from './embedded.js';

export type PageKey = keyof typeof english;
export type Say = (key: PageKey, values?: Readonly<Record<string, string>>) => string;

export type PageTongue = {
  readonly tag: string;
  readonly name: string;
  readonly dir: Direction;
  /** No trained person has checked these texts. */
  readonly draft: boolean;
  readonly say: Say;
};

type Files = {
  readonly meta: { readonly name: string; readonly dir: Direction };
  readonly page?: Readonly<Record<string, string>>;
};

/** Null where this language has letters but no page of its own. */
export function pageTongue(tag: string): PageTongue | null {
  const { meta, page } = embeddedJson(`locale:${tag}`) as Files;
  if (page === undefined) return null;
  return { tag, name: meta.name, dir: meta.dir, draft: tag !== 'en', say: speaker(page) };
}

/** @throws for a message the language lacks: the parity test should have caught it. */
function speaker(messages: Readonly<Record<string, string>>): Say {
  return (key, values = {}) => {
    const text = messages[key];
    if (text === undefined) throw new Error(`the page has no words for ${key}`);
    return text.replace(/\{\{([\w-]+)\}\}/g, (_, name: string) => values[name] ?? '');
  };
}

/** A value or a name within a sentence of any direction (Unicode Bidirectional Algorithm, 2.4: isolates). */
export const isolated = (text: string): string => `\u2068${text}\u2069`;

/**
 * Several things in a row, as the language joins them.
 * @example listed('ar', ['هيموغلوبين', 'فيريتين']) // joined by the Arabic word, not by a Latin comma
 */
export const listed = (tag: string, parts: readonly string[]): string =>
  new Intl.ListFormat(tag, { type: 'unit', style: 'short' }).format(parts);

/** A member of a closed list in words, where the page has some. */
export function sayMember(say: Say, group: string, member: string): string {
  return say(`${group}.${member}` as PageKey);
}
