// What every letter of one run shares: templates compiled once, languages read once, faces opened once.
import { type Language, readLanguage } from '../letter/index.js';
import { sha256 } from '../mailing/seal.js';
import { type Problem, sayProblem } from '../problem.js';
import type { PageForm } from '../render/block.js';
import type { Template, TemplateText } from '../render/markup.js';
import type { Fonts } from '../render/pdf/index.js';
import {
  fontFolder,
  languageTags,
  programVersion,
  readLanguageFiles,
  readTemplate,
} from './assets.js';
import { shippedTemplates } from './shipped-templates.js';
import { Stop, status } from './status.js';
import type { OwnTemplates } from './templates/own-templates.js';

/** Parts the templates may include. */
export const partialNames = ['help', 'help-brief', 'paragraphs', 'results', 'step'] as const;

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

export const designs = ['full', 'short'] as const;

/** How letters are arranged: the design, and a clinic's own templates in place of shipped ones of the same name. */
export type Arrangement = {
  readonly design?: (typeof designs)[number] | undefined;
  readonly templates?: string | null | undefined;
};

/** 14 points, 18 in large print, 12 in the compact form and where all stands on one page. */
export function sizeOf({
  largePrint,
  design,
  compact,
}: Pick<Arrangement, 'design'> & {
  readonly largePrint: boolean;
  readonly compact: boolean;
}): PageForm['size'] {
  if (largePrint) return 'large';
  if (design === 'short') return 'compact';
  return compact ? 'smaller' : 'standard';
}

/** Nothing is read before it is asked for. Stops with a sentence when a template or language is faulty. */
export async function openKit({ design, templates: folder }: Arrangement = {}): Promise<Kit> {
  const own = folder === null || folder === undefined ? noneOwn : await ownTemplates(folder);
  const templates = new Map<string, Promise<Template>>();
  const languages = new Map<string, Promise<Language>>();
  let fonts: Promise<Fonts> | null = null;
  return {
    version: await programVersion(),
    template: (name) => {
      const drawn = name === 'letter' && design === 'short' ? 'short' : name;
      return kept(templates, drawn, () => compile(drawn, own));
    },
    language: (tag) => kept(languages, tag, () => readTongue(tag)),
    fonts: () => {
      // The PDF half is half of the program's start-up: it waits until a PDF is asked for.
      fonts ??= import('../render/pdf/index.js').then(({ openFonts }) => openFonts(fontFolder));
      return fonts;
    },
  };
}

const noneOwn: OwnTemplates = new Map();

/** Stops with everything that is wrong in them. */
export async function ownTemplates(folder: string): Promise<OwnTemplates> {
  const { readOwnTemplates } = await import('./templates/own-templates.js');
  const read = await readOwnTemplates(folder);
  if (!read.ok) throw new Stop(status.badData, read.problems.map(sayProblem));
  return read.value;
}

async function compile(name: string, own: OwnTemplates): Promise<Template> {
  const text = async (part: string): Promise<TemplateText> => ({
    name: part,
    file: `${part}.hbs`,
    text: own.get(part) ?? (await readTemplate(part)),
  });
  const [main, ...parts] = await Promise.all([text(name), ...partialNames.map(text)]);
  const shipped = shippedTemplates;
  const isShipped = ({ name: part, text }: TemplateText) => shipped?.seals[part] === sha256(text);
  if (shipped !== null && [main, ...parts].every(isShipped)) {
    const { reopenTemplate } = await import('../render/precompiled.js');
    return reopenTemplate(name, shipped.ahead, partialNames);
  }
  const { openTemplate } = await import('../render/markup.js');
  const opened = openTemplate(main, parts);
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
