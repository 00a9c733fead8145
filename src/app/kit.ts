// What every letter of one run shares: templates compiled once, languages read once, faces opened once.
import { type Language, readLanguage } from '../letter/index.js';
import { type Problem, sayProblem } from '../problem.js';
import { openTemplate, type Template, type TemplateText } from '../render/markup.js';
import type { Fonts } from '../render/pdf/index.js';
import {
  fontFolder,
  languageTags,
  programVersion,
  readLanguageFiles,
  readTemplate,
} from './assets.js';
import { Stop, status } from './status.js';

/** Parts the templates may include. */
export const partialNames = ['help', 'paragraphs', 'results', 'step'] as const;

export type TemplateName =
  | 'letter'
  | 'easy-read'
  | 'reasoning'
  | 'calls'
  | 'review'
  | 'summary'
  | 'fridge';

export type Kit = {
  readonly version: string;
  readonly template: (name: TemplateName) => Promise<Template>;
  readonly language: (tag: string) => Promise<Language>;
  readonly fonts: () => Promise<Fonts>;
};

/** Nothing is read before it is asked for. Stops with a sentence when a template or language is faulty. */
export async function openKit(): Promise<Kit> {
  const templates = new Map<string, Promise<Template>>();
  const languages = new Map<string, Promise<Language>>();
  let fonts: Promise<Fonts> | null = null;
  return {
    version: await programVersion(),
    template: (name) => kept(templates, name, () => compile(name)),
    language: (tag) => kept(languages, tag, () => readTongue(tag)),
    fonts: () => {
      // The PDF half is half of the program's start-up: it waits until a PDF is asked for.
      fonts ??= import('../render/pdf/index.js').then(({ openFonts }) => openFonts(fontFolder));
      return fonts;
    },
  };
}

async function compile(name: string): Promise<Template> {
  const text = async (part: string): Promise<TemplateText> => ({
    name: part,
    file: `${part}.hbs`,
    text: await readTemplate(part),
  });
  const opened = openTemplate(await text(name), await Promise.all(partialNames.map(text)));
  if (!opened.ok) throw new Stop(status.badData, opened.problems.map(sayProblem));
  return opened.value;
}

async function readTongue(tag: string): Promise<Language> {
  const tags = await languageTags();
  if (!tags.includes(tag))
    throw new Stop(status.usage, [
      `--language: there is no language "${tag.slice(0, 20)}"; there are: ${tags.join(', ')}.`,
    ]);
  const read = readLanguage(tag, await readLanguageFiles(tag));
  if (!read.ok) throw new Stop(status.badData, read.problems.map(sayProblem));
  return read.value;
}

function kept<T>(store: Map<string, Promise<T>>, key: string, make: () => Promise<T>): Promise<T> {
  const found = store.get(key) ?? make();
  store.set(key, found);
  return found;
}

/** Problems as sentences for the operator, one each. */
export function sentences(problems: readonly Problem[]): string[] {
  return problems.map(sayProblem);
}
