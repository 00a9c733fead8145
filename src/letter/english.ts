// The English catalogue arrives; the list of keys every language must have leaves.
import easyRead from '../../locales/en/easy-read.json' with { type: 'json' };
import foods from '../../locales/en/foods.json' with { type: 'json' };
import fridge from '../../locales/en/fridge.json' with { type: 'json' };
import letter from '../../locales/en/letter.json' with { type: 'json' };
import reasoning from '../../locales/en/reasoning.json' with { type: 'json' };
import spoken from '../../locales/en/spoken.json' with { type: 'json' };

export const english = {
  letter,
  foods,
  fridge,
  'easy-read': easyRead,
  spoken,
  reasoning,
} as const;
export type Namespace = keyof typeof english;
export const patientNamespaces = ['letter', 'foods'] as const;
/** Files a language may lack: without them it has no week's sheet, easy-read form, script or clinician's sheet. */
export const optionalNamespaces = ['fridge', 'easy-read', 'spoken', 'reasoning'] as const;
/** Everything that a translator translates. */
export const translatedNamespaces = ['letter', 'foods', 'fridge', 'easy-read', 'spoken'] as const;

/** A key as it is asked for: without the ending that a child's letter or a plural form adds. */
type Asked<Key> = Key extends `${infer Base}_${'child' | 'one' | 'other'}` ? Base : Key;
export type LetterKey = Asked<keyof typeof letter>;
export type FridgeKey = Asked<keyof typeof fridge>;
export type EasyReadKey = Asked<keyof typeof easyRead>;
export type SpokenKey = Asked<keyof typeof spoken>;

const letterKeys: ReadonlySet<string> = new Set(Object.keys(letter));
export const isLetterKey = (key: string): key is LetterKey =>
  letterKeys.has(key) || letterKeys.has(`${key}_other`);

const fridgeKeys: ReadonlySet<string> = new Set(Object.keys(fridge));
export const isFridgeKey = (key: string): key is FridgeKey => fridgeKeys.has(key);

const spokenKeys: ReadonlySet<string> = new Set(Object.keys(spoken));
export const isSpokenKey = (key: string): key is SpokenKey => spokenKeys.has(key);
