// Content for one of the operator's own pages arrives; it leaves as HTML and PDF.
import { sayProblem } from '../problem.js';
import type { PageForm } from '../render/block.js';
import { writeHtml } from '../render/html.js';
import { renderMarkup } from '../render/markup.js';
import { readMarkup } from '../render/read-markup.js';
import type { Kit, TemplateName } from './kit.js';
import { Stop, status } from './status.js';

/** Stops with the template's line when the page cannot be made: a list that is missing must not go unnoticed. */
export async function operatorPage(
  name: TemplateName,
  content: object,
  kit: Kit,
  date: string,
  paper: PageForm['paper'],
  size: PageForm['size'] = 'compact',
): Promise<{ readonly html: string; readonly pdf: Uint8Array }> {
  const markup = renderMarkup(await kit.template(name), content);
  const page = markup.ok ? readMarkup(markup.value, `${name}.hbs`) : markup;
  if (!page.ok) throw new Stop(status.badData, page.problems.map(sayProblem));
  const form: PageForm = { paper, size };
  const { drawPdf } = await import('../render/pdf/index.js');
  const facts = { created: `${date}T00:00:00Z`, producerVersion: kit.version };
  const pdf = await drawPdf(page.value, form, await kit.fonts(), facts);
  if (!pdf.ok) throw new Stop(status.badData, pdf.problems.map(sayProblem));
  return { html: writeHtml(page.value, form), pdf: pdf.value };
}
