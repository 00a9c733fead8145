// The language of a letter and a style of its script arrive; the tag by which its faces are chosen leaves.

/** Hands in which a script is printed. The first is what its readers expect on paper. */
export const scriptStyles = ['nastaliq', 'naskh'] as const;
export type ScriptStyle = (typeof scriptStyles)[number];

/** Only Urdu is read in both: Nastaliq for the eye, Naskh where it must be small or read out by a machine. */
const tags: Readonly<Record<string, Readonly<Record<ScriptStyle, string>>>> = {
  ur: { nastaliq: 'ur', naskh: 'ur-Arab' },
};

/** True when text of the language can be set in more than one style. */
export function hasStyles(lang: string): boolean {
  return Object.hasOwn(tags, lang);
}

/**
 * What a template is filled with, its language named so that its faces follow the style. Other languages stay as they are.
 * @example inStyle({ lang: 'ur', dir: 'rtl' }, 'naskh') // { lang: 'ur-Arab', dir: 'rtl' }
 */
export function inStyle<T extends object>(content: T, style: ScriptStyle): T {
  const lang: unknown = 'lang' in content ? content.lang : null;
  return typeof lang === 'string' && hasStyles(lang)
    ? { ...content, lang: tags[lang]?.[style] ?? lang }
    : content;
}
