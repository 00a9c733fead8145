// An age as somebody wrote it arrives; whole years or months leave, or null where it is none.

export type AgeAsWritten = { readonly years: number | null; readonly months: number | null };

const years = String.raw`y|yr|yrs|year|years|a|a\u00F1os?|ans?|jahre?|j|\u0633\u0646\u0629|\u0633\u0646\u0648\u0627\u062A|\u0639\u0627\u0645|\u0935\u0930\u094D\u0937|\u0938\u093E\u0932`;
const months = String.raw`mo|mon|mos|mth|mths|month|months|mes|meses|mois|monate?|\u0634\u0647\u0631\u064B?\u0627?\u064B?|\u0623\u0634\u0647\u0631|\u0634\u0647\u0648\u0631|\u092E\u0939\u0940\u0928\u093E|\u092E\u0939\u0940\u0928\u0947|\u092E\u093E\u0939`;
const shape = /^(\d{1,4})\s*([\p{L}\p{M}]*)\.?$/u;
const inYears = new RegExp(`^(?:${years})?$`, 'iu');
const inMonths = new RegExp(`^(?:${months})$`, 'iu');

/**
 * Years where no word says otherwise; months in the languages of the page and a few more.
 * @example readAge('34') // { years: 34, months: null }
 * @example readAge('8 months') // { years: null, months: 8 }
 */
export function readAge(text: string): AgeAsWritten | null {
  const [, digits, word = ''] = shape.exec(text.trim()) ?? [];
  if (digits === undefined) return null;
  if (inYears.test(word)) return { years: Number(digits), months: null };
  return inMonths.test(word) ? { years: null, months: Number(digits) } : null;
}
