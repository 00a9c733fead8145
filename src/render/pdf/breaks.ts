// A paragraph's text arrives; the places where a line may or must end leave (Unicode Standard Annex 14).
import LineBreaker from 'linebreak';

export type BreakPlace = { readonly at: number; readonly must: boolean };

/** Scripts written without spaces, whose words only a dictionary knows (line breaking class SA). */
const spaceless =
  /[\p{Script=Thai}\p{Script=Lao}\p{Script=Khmer}\p{Script=Myanmar}\p{Script=Tai_Le}\p{Script=New_Tai_Lue}]/u;
const clings = /^[\p{P}\p{M}]/u;

/**
 * Where lines may end, in order; the last is the end of the text. Words are never hyphenated.
 * @param lang BCP 47 tag, for the word lists of Thai, Lao, Khmer and Burmese.
 * @example breakPlaces('iron rich', 'en') // [{ at: 5, must: false }, { at: 9, must: false }]
 */
export function breakPlaces(text: string, lang: string): readonly BreakPlace[] {
  const places = new Map<number, boolean>();
  const breaker = new LineBreaker(text);
  for (let next = breaker.nextBreak(); next !== null; next = breaker.nextBreak()) {
    places.set(next.position, next.required && next.position < text.length);
  }
  if (spaceless.test(text)) {
    for (const { index } of new Intl.Segmenter(lang, { granularity: 'word' }).segment(text)) {
      if (index > 0 && !places.has(index) && betweenWords(text, index)) places.set(index, false);
    }
  }
  places.set(text.length, false);
  for (const at of places.keys()) if (insideRange(text, at)) places.delete(at);
  return [...places].sort(([a], [b]) => a - b).map(([at, must]) => ({ at, must }));
}

/** A range such as 120–160 or a date such as 2026-01-05 is never divided: half of one misleads. */
function insideRange(text: string, at: number): boolean {
  return /\p{N}[-\u2010-\u2014/]$/u.test(text.slice(0, at)) && /^\p{N}/u.test(text.slice(at));
}

function betweenWords(text: string, at: number): boolean {
  const after = text.slice(at, at + 2);
  return spaceless.test(text.charAt(at - 1)) && spaceless.test(after) && !clings.test(after);
}
