// An understood report and the operator's wishes in; the week's sheet of one language out.
import { advise } from '../advise/index.js';
import { type Clinic, composeFridgeSheet } from '../letter/index.js';
import { type Checked, faulty, fine, type Problem } from '../problem.js';
import type { LetterDocument, PageForm } from '../render/block.js';
import { writeHtml } from '../render/html.js';
import { renderMarkup } from '../render/markup.js';
import { readMarkup } from '../render/read-markup.js';
import { inStyle } from '../render/script-style.js';
import type { Kit } from './kit.js';
import type { MadeFile, Wishes } from './make-letter.js';
import type { Understood } from './understand.js';

/** Large type first; a page that would not hold it takes the next. */
const sizes = [
  'large',
  'ample',
  'standard',
  'compact',
] as const satisfies readonly PageForm['size'][];

/**
 * HTML and PDF of the week's meals, on one page unless large print was asked for, or null where no food may be
 * suggested. Writes nothing.
 * @param tag Language of the sheet.
 * Problems: a language without the words; a page that holds the sheet in no size.
 * @example await makeFridgeSheet(understood, clinic, wishes, 'en', kit) // endings fridge.html and fridge.pdf
 */
export async function makeFridgeSheet(
  { report, interpretation }: Understood,
  clinic: Clinic,
  wishes: Wishes,
  tag: string,
  kit: Kit,
): Promise<Checked<readonly MadeFile[] | null>> {
  const sheet = composeFridgeSheet({
    report,
    interpretation,
    advice: advise(report, interpretation, wishes.choices, wishes.date),
    clinic,
    language: await kit.language(tag),
    options: { ...wishes, released: null },
  });
  if (!sheet.ok || sheet.value === null) return sheet.ok ? fine(null) : sheet;
  const markup = renderMarkup(
    await kit.template('fridge'),
    inStyle(sheet.value, wishes.scriptStyle ?? 'nastaliq'),
  );
  const page = markup.ok ? readMarkup(markup.value, 'fridge.hbs') : markup;
  return page.ok ? draw(page.value, wishes, kit) : page;
}

async function draw(
  page: LetterDocument,
  { form, date }: Wishes,
  kit: Kit,
): Promise<Checked<readonly MadeFile[]>> {
  const { drawOnePage, drawPdf } = await import('../render/pdf/index.js');
  const facts = { created: `${date}T00:00:00Z`, producerVersion: kit.version };
  const filesOf = (size: PageForm['size'], pdf: Uint8Array): readonly MadeFile[] => [
    { ending: 'fridge.html', content: writeHtml(page, { ...form, size }) },
    { ending: 'fridge.pdf', content: pdf },
  ];
  // Who asked for large print turns the sheet over rather than read small type.
  if (form.size === 'large') {
    const pdf = await drawPdf(page, form, await kit.fonts(), facts);
    return pdf.ok ? fine(filesOf('large', pdf.value)) : pdf;
  }
  for (const size of sizes) {
    const pdf = await drawOnePage(page, { ...form, size }, await kit.fonts(), facts);
    if (!pdf.ok) return pdf;
    if (pdf.value !== null) return fine(filesOf(size, pdf.value));
  }
  return faulty([tooLong]);
}

const tooLong: Problem = {
  code: 'too-tall',
  place: { file: 'fridge.hbs', row: null, field: null },
  cannot: "cannot fit the week's sheet on one page",
  found: null,
  expected: 'a sheet that one page holds in 12 point type',
  remedy: 'Shorten what was added to the template.',
};
