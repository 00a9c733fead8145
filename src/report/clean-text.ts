// In: free text of a file (a name, a note). Out: the same text without characters that steer a terminal or a page.

/** Directional marks, embeddings, overrides and isolates (Unicode UAX 9, section 2). */
const steering = /[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/gu;
/** Other invisible format characters, except the joiners that Persian, Urdu and Indic names need. */
const invisible = /(?![\u200C\u200D])[\p{Cf}\p{Co}\p{Cs}\p{Cn}]/gu;
const breaks = /[\p{Cc}\p{Zl}\p{Zp}\s]+/gu;

/**
 * One line of text: direction controls and invisible characters gone, breaks and runs of space made one space, trimmed.
 * @example cleanText('Amina\u202E  Diallo\n') // 'Amina Diallo'
 */
export function cleanText(text: string): string {
  return text
    .normalize('NFC')
    .replace(steering, '')
    .replace(/[\p{Cc}]/gu, ' ')
    .replace(invisible, '')
    .replace(breaks, ' ')
    .trim();
}

/**
 * Text to copy as the laboratory wrote it, trimmed; cleaned only when it holds more than visible characters and spaces.
 * @example copiedText(' 30  - 400 ') // '30  - 400'
 */
export function copiedText(text: string): string {
  const trimmed = text.trim();
  return /[\p{C}\p{Zl}\p{Zp}]/u.test(trimmed) ? cleanText(trimmed) : trimmed;
}
