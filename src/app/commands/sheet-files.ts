// A sheet for the clinician or the operator arrives; the files of it that were asked for leave, printable.
import type { ReasoningContent } from '../../letter/index.js';
import type { PageForm } from '../../render/block.js';
import type { Format } from '../formats.js';
import type { Kit } from '../kit.js';
import type { OutputFile } from '../output.js';

type Print = {
  readonly formats: readonly Format[];
  /** ISO date, printed at the foot of every page. */
  readonly date: string;
  readonly paper: PageForm['paper'];
  /** `dense` for a sheet to look up, `compact` for one to read from. */
  readonly size: PageForm['size'];
};

/**
 * HTML and PDF of one sheet; formats that are not on paper give nothing.
 * @example (await sheetFiles(sheet, 'heavy-periods.reasoning', print, kit)).map(({ name }) => name)
 *   // ['heavy-periods.reasoning.html', 'heavy-periods.reasoning.pdf']
 */
export async function sheetFiles(
  sheet: ReasoningContent,
  stem: string,
  { formats, date, paper, size }: Print,
  kit: Kit,
): Promise<readonly OutputFile[]> {
  const wanted = formats.filter((format) => format === 'html' || format === 'pdf');
  if (wanted.length === 0) return [];
  // Who reads the sheet on the screen does not wait for what prints it.
  const { operatorPage } = await import('../operator-page.js');
  const made = (await kit.language('en')).date(date);
  const page = await operatorPage('reasoning', { ...sheet, date: made }, kit, date, paper, size);
  return wanted.map((format) => ({ name: `${stem}.${format}`, content: page[format] }));
}
