// A language tag arrives; its English name for the clinic's own pages leaves.

const names = new Intl.DisplayNames('en', { type: 'language', fallback: 'code' });

/** A tag that is none stays as it was written. @example languageName('zh-Hans') // 'Simplified Chinese' */
export function languageName(tag: string): string {
  try {
    return names.of(tag) ?? tag;
  } catch {
    return tag;
  }
}
