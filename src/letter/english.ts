// The English catalogue arrives; the list of keys every language must have leaves.
import foods from '../../locales/en/foods.json' with { type: 'json' };
import letter from '../../locales/en/letter.json' with { type: 'json' };
import reasoning from '../../locales/en/reasoning.json' with { type: 'json' };

export const english = { letter, foods, reasoning } as const;
export type Namespace = keyof typeof english;
export const patientNamespaces = ['letter', 'foods'] as const;

/** A key as it is asked for: without the ending that a child's letter or a plural form adds. */
type Asked<Key> = Key extends `${infer Base}_${'child' | 'one' | 'other'}` ? Base : Key;
export type LetterKey = Asked<keyof typeof letter>;

const letterKeys: ReadonlySet<string> = new Set(Object.keys(letter));
export const isLetterKey = (key: string): key is LetterKey =>
  letterKeys.has(key) || letterKeys.has(`${key}_other`);
