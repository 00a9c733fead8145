// A template, opened once, and the content of a letter arrive; markup leaves, escaped once.
import Handlebars from 'handlebars';
import { type Checked, type Problem, faulty, fine } from '../problem.js';
import { checkTemplate } from './check-template.js';
import { helpers } from './helpers.js';
import { markupProblem } from './parse-markup.js';

/** A template as a file holds it; `name` is how other templates include it. */
export type TemplateText = { readonly name: string; readonly file: string; readonly text: string };

/** A template ready to be filled. */
export type Template = { readonly file: string; readonly fill: (content: object) => string };

/**
 * Compiles a template once, with the partials it may include. Only the helpers of this folder are known,
 * every variable must exist, and nothing can be printed unescaped.
 * Problems: a syntax error, an unknown helper, partial, tag, class or attribute, raw output; each with its line.
 * @example openTemplate({ name: 'letter', file: 'letter.hbs', text: '<p>{{title.text}}</p>' }, [])
 */
export function openTemplate(
  main: TemplateText,
  partials: readonly TemplateText[] = [],
): Checked<Template> {
  const names = partials.map(({ name }) => name);
  const problems = [main, ...partials].flatMap((template) => checkTemplate(template, names));
  if (problems.length > 0) return faulty(problems);
  const kitchen = openKitchen();
  for (const partial of partials) {
    kitchen.registerPartial(partial.name, kitchen.compile(partial.text, compileOptions));
  }
  const fill = kitchen.compile(main.text, compileOptions);
  return fine({
    file: main.file,
    fill: (content) => fill(content, { partials: kitchen.partials }),
  });
}

/** One way to compile, at once or ahead of time. */
export const compileOptions = {
  strict: true,
  knownHelpersOnly: true,
  knownHelpers: {
    ...Object.fromEntries(Object.keys(helpers).map((name) => [name, true])),
    log: false,
  },
  preventIndent: true,
};

const kept = ['each', 'if', 'unless', 'with', 'lookup', 'helperMissing', 'blockHelperMissing'];

/** Handlebars with our helpers and the few of its own that only choose or repeat. */
export function openKitchen(): typeof Handlebars {
  const kitchen = Handlebars.create();
  for (const name of Object.keys(kitchen.helpers)) {
    if (!kept.includes(name)) kitchen.unregisterHelper(name);
  }
  kitchen.registerHelper(helpers);
  return kitchen;
}

/**
 * Fills a template with the content of one letter or sheet.
 * Problems: a variable the content does not have, with the line of the template.
 * @example renderMarkup(template, content) // '<article lang="en" dir="ltr" …'
 */
export function renderMarkup(template: Template, content: object): Checked<string> {
  try {
    return fine(template.fill(content));
  } catch (error) {
    const problem = missingVariable(template.file, error);
    if (problem === null) throw error;
    return faulty([problem]);
  }
}

/** Strict mode names the variable and its place in the message: '"x" not defined in [object Object] - 3:4'. */
function missingVariable(file: string, error: unknown): Problem | null {
  if (!(error instanceof Error)) return null;
  const found = /^"([\w-]+)" not defined in .* - (\d+):\d+$/s.exec(error.message);
  if (found === null) return null;
  return markupProblem(
    file,
    Number(found[2]),
    `find the variable ${JSON.stringify(found[1])}`,
    'a variable listed in templates/README.md',
  );
}
