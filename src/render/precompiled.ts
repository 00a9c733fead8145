// Templates arrive as text where the program is at hand, and leave as code; as code they arrive in a page that may not compile, and leave ready to fill.
import Handlebars from 'handlebars';
import { type Checked, faulty, fine } from '../problem.js';
import { checkTemplate } from './check-template.js';
import { compileOptions, openKitchen, type Template, type TemplateText } from './markup.js';

/** What Handlebars makes of one template ahead of time: a plain object of functions. */
type Ahead = object;
export type AheadByName = Readonly<Record<string, Ahead>>;

/**
 * Compiles templates and partials to one JavaScript expression, an object by name.
 * Problems: as `openTemplate`.
 * @example precompileTemplates([{ name: 'letter', file: 'letter.hbs', text: '<p>{{x}}</p>' }])
 */
export function precompileTemplates(all: readonly TemplateText[]): Checked<string> {
  const names = all.map(({ name }) => name);
  const problems = all.flatMap((template) => checkTemplate(template, names));
  if (problems.length > 0) return faulty(problems);
  const rows = all.map(
    ({ name, text }) =>
      `${JSON.stringify(name)}:${String(Handlebars.precompile(text, compileOptions))}`,
  );
  return fine(`({${rows.join(',')}})`);
}

/**
 * A template whose code was made by `precompileTemplates`; needs only the runtime half of Handlebars.
 * @example reopenTemplate('letter', ahead, ['help', 'results', 'step']).fill(content)
 */
export function reopenTemplate(
  name: string,
  ahead: AheadByName,
  partials: readonly string[],
): Template {
  const kitchen = openKitchen();
  for (const partial of partials)
    kitchen.registerPartial(partial, kitchen.template(ahead[partial] ?? {}));
  const fill = kitchen.template<object>(ahead[name] ?? {});
  return {
    file: `${name}.hbs`,
    fill: (content) => fill(content, { partials: kitchen.partials }),
  };
}
