// A name as some file spells it arrives; the key it is looked up by leaves.

/**
 * Spelling without case, accents or punctuation; words stay apart, because 'hemoglobin A' is not 'hemoglobina'.
 * @example nameKey('Ferritine_(S)') // 'ferritine s'
 */
export function nameKey(name: string): string {
  const cut = name.slice(0, longest);
  const plain = /^[ -~]*$/.test(cut)
    ? cut
    : cut
        .normalize('NFKD')
        .replace(/[\u0300-\u036F]/g, '')
        .normalize('NFC');
  return plain
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}%]+/gu, ' ')
    .trim();
}

/** The same without spaces, for 'Hb A1c' beside 'HbA1c'. */
export function tightKey(name: string): string {
  return nameKey(name).replaceAll(' ', '');
}

const longest = 120;
