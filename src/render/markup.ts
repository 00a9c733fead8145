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
    fill: (content) => {
      const text = fill(content, { partials: kitchen.partials });
      if (text.length > mostCharacters) throw new TooLarge();
      return text;
    },
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
  boundEach(kitchen);
  return kitchen;
}

/** A letter has some twenty thousand characters. More than this is a list repeated within lists. */
const mostCharacters = 1_000_000;
const mostRounds = 100_000;

class TooLarge extends Error {}

/** Lists within lists multiply: rounds over all lists of one content are bounded, and so are memory and time. */
function boundEach(kitchen: typeof Handlebars) {
  const each = kitchen.helpers.each;
  if (each === undefined) throw new Error('Handlebars has no each');
  const rounds = new WeakMap<object, number>();
  kitchen.registerHelper(
    'each',
    function (this: unknown, list: unknown, options: Handlebars.HelperOptions) {
      const root: object = options.data.root;
      let characters = 0;
      const fn: Handlebars.TemplateDelegate = (context, more) => {
        const text = options.fn(context, more);
        const done = (rounds.get(root) ?? 0) + 1;
        rounds.set(root, done);
        characters += text.length;
        if (characters > mostCharacters || done > mostRounds) throw new TooLarge();
        return text;
      };
      return each.call(this, list, { ...options, fn });
    },
  );
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
    if (error instanceof TooLarge)
      return faulty([
        markupProblem(
          template.file,
          1,
          'fill this template',
          `at most ${mostCharacters} characters; it repeats lists within lists`,
        ),
      ]);
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
