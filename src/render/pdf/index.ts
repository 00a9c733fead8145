// A letter's document model, a paper form and faces arrive; the bytes of a tagged PDF leave.
import { fine, type Checked } from '../../problem.js';
import type { LetterDocument, PageForm } from '../block.js';
import { closeSheets, drawLetter, openSheets, type Sheets } from './draw.js';
import type { Fonts } from './fonts.js';
import { languagesOf } from './languages.js';
import { layOut } from './layout.js';
import type { PlacedLetter } from './placed.js';

export { closeSheets, openSheets, type Sheets } from './draw.js';
export { faceFiles } from './faces.js';
export { openFonts, type Fonts } from './fonts.js';
export { layOut } from './layout.js';

/**
 * When and by what the file was made; both end in its metadata. `created` is an ISO 8601 date and time.
 * With a `password` (printable ASCII) the file is encrypted.
 */
export type PdfFacts = {
  readonly created: string;
  readonly producerVersion: string;
  readonly password?: string;
};

/**
 * Draws one letter as a tagged PDF/UA-1 file. The same letter, form, faces and facts give the same bytes.
 * @returns the file. Problems: `glyph-missing` (found: the code point), `too-tall`.
 * @example await drawPdf(letter, { paper: 'A4', size: 'standard' }, fonts, { created: '2026-01-05T00:00:00Z', producerVersion: '0.1.0' })
 */
export async function drawPdf(
  document: LetterDocument,
  form: PageForm,
  fonts: Fonts,
  facts: PdfFacts,
): Promise<Checked<Uint8Array>> {
  const placed = await layOutWhole(document, form, fonts);
  if (!placed.ok) return placed;
  const { lang, title } = document;
  const sheets = openSheets({ lang, title, ...facts }, fonts);
  drawLetter(sheets, placed.value);
  return fine(await closeSheets(sheets));
}

/** Opens the faces of the letter's languages, and those of other scripts where a name in it needs them. */
async function layOutWhole(
  document: LetterDocument,
  form: PageForm,
  fonts: Fonts,
): Promise<Checked<PlacedLetter>> {
  await fonts.load(languagesOf(document));
  const placed = layOut(document, form, fonts);
  if (placed.ok) return placed;
  const missing = placed.problems
    .filter(({ code }) => code === 'glyph-missing')
    .map(({ found }) => Number.parseInt(found?.slice(2) ?? '', 16));
  return missing.length > 0 && (await fonts.borrow(missing))
    ? layOut(document, form, fonts)
    : placed;
}

/**
 * Adds a letter to a document that is already open, for a print house that wants one file.
 * @returns how many pages were added. Problems as `drawPdf`; then nothing was added.
 * @example const pages = await addLetter(sheets, letter, form);
 */
export async function addLetter(
  sheets: Sheets,
  document: LetterDocument,
  form: PageForm,
): Promise<Checked<number>> {
  const placed = await layOutWhole(document, form, sheets.fonts);
  if (!placed.ok) return placed;
  drawLetter(sheets, placed.value);
  return fine(placed.value.pages.length);
}

/**
 * Draws a document that must stay on one page.
 * @returns the file, or null when it needs more pages in this size. Problems as `drawPdf`.
 * @example await drawOnePage(sheet, { paper: 'A4', size: 'large' }, fonts, facts)
 */
export async function drawOnePage(
  document: LetterDocument,
  form: PageForm,
  fonts: Fonts,
  facts: PdfFacts,
): Promise<Checked<Uint8Array | null>> {
  const placed = await layOutWhole(document, form, fonts);
  if (!placed.ok) return placed;
  if (placed.value.pages.length > 1) return fine(null);
  return drawPdf(document, form, fonts, facts);
}
