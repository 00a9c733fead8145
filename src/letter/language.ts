// Catalogue files of one language arrive; a language that can say every message leaves, or every reason why not.
import { createInstance, type i18n } from 'i18next';
import { z } from 'zod';
import type { Direction } from '../direction.js';
import { type Checked, faulty, fine, type Problem } from '../problem.js';
import { compareCatalogue } from './compare-catalogue.js';
import { type Namespace, optionalNamespaces, patientNamespaces } from './english.js';
import { noRecord, type ReviewState, readRecord, stateOf } from './record.js';

/** Such as '{{day}} January {{year}}'. */
const dated = z
  .string()
  .refine((text) => /^[^{}]*\{\{(day|year)\}\}[^{}]*\{\{(?!\1)(day|year)\}\}[^{}]*$/.test(text), {
    error: 'a date with {{day}} and {{year}}, each once',
  });

export const metaFile = z.strictObject({
  tag: z.string().regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/),
  name: z.string().min(1),
  englishName: z.string().min(1),
  dir: z.enum(['ltr', 'rtl']),
  script: z.string().regex(/^[A-Z][a-z]{3}$/),
  /** Locale whose plural forms and weekdays are used, where it is not the tag itself. */
  intl: z.string().optional(),
  /** A date of each month from January on, the month in words. */
  dates: z.array(dated).length(12),
  reviewState: z.enum(['source', 'draft-machine', 'translated', 'revised', 'signed']),
});

/** A language ready to speak. There is no second language behind it: a missing message is an error. */
export type Language = {
  readonly tag: string;
  readonly name: string;
  readonly englishName: string;
  readonly dir: Direction;
  readonly script: string;
  /** Of its weakest message, as the language says itself; what a letter may claim goes message by message. */
  readonly reviewState: ReviewState;
  /** How far one message is checked, by its exact key such as 'gap.calcium_few'. */
  readonly stateOf: (namespace: Namespace, key: string) => ReviewState;
  readonly words: i18n;
  /** '2026-03-05' as '5 March 2026': Gregorian, Latin digits, month in words. */
  readonly date: (iso: string) => string;
};

/**
 * Reads the catalogue of one language.
 * @param tag Name of its folder, such as 'en' or 'zh-Hans'.
 * @param files Parsed JSON by file name without ending: meta, letter, foods; fridge, easy-read, spoken and
 *   record where the language has them; reasoning is English only.
 * @returns Problems for every missing or unknown key, plural form, variable and month, and for a language whose
 *   plurals Node does not know.
 * @example readLanguage('en', { meta, letter, foods, reasoning })
 */
export function readLanguage(tag: string, files: Record<string, unknown>): Checked<Language> {
  const read = metaFile.safeParse(files.meta);
  if (!read.success)
    return faulty([wrong(tag, 'meta', 'read the language', z.prettifyError(read.error))]);
  const meta = read.data;
  if (meta.tag !== tag) return faulty([wrong(tag, 'meta', 'use this tag', tag, meta.tag)]);
  const locale = meta.intl ?? tag;
  const problems = [...pluralProblems(tag, locale)];
  const catalogue: Partial<Record<Namespace, Record<string, string>>> = {};
  for (const namespace of namespacesOf(files)) {
    const messages = z.record(z.string(), z.string()).safeParse(files[namespace]);
    if (!messages.success) {
      problems.push(wrong(tag, namespace, 'read the messages', 'an object of texts'));
      continue;
    }
    catalogue[namespace] = messages.data;
    problems.push(...compareCatalogue(tag, namespace, messages.data, locale));
  }
  const record = 'record' in files ? readRecord(tag, files.record) : fine(noRecord);
  if (!record.ok) problems.push(...record.problems);
  if (problems.length > 0 || !record.ok) return faulty(problems);
  return fine({
    ...meta,
    stateOf: (namespace, key) =>
      isSource(meta)
        ? 'source'
        : stateOf(record.value, { namespace, key, text: catalogue[namespace]?.[key] ?? '' }),
    words: speak(tag, locale, catalogue),
    date: dateWords(meta.dates),
  });
}

/** Only English can be the source. */
function isSource({ tag, reviewState }: Pick<Language, 'tag' | 'reviewState'>): boolean {
  return reviewState === 'source' && tag.split('-')[0] === 'en';
}

function namespacesOf(files: Record<string, unknown>): readonly Namespace[] {
  return [...patientNamespaces, ...optionalNamespaces.filter((name) => name in files)];
}

function speak(
  tag: string,
  locale: string,
  catalogue: Partial<Record<Namespace, Record<string, string>>>,
): i18n {
  const words = createInstance();
  // Plural forms are chosen by the language i18next is set to, so it is set to the locale that Intl knows.
  void words.init({
    lng: locale,
    fallbackLng: false,
    load: 'currentOnly',
    initAsync: false,
    keySeparator: false,
    nsSeparator: false,
    defaultNS: 'letter',
    ns: Object.keys(catalogue),
    resources: { [locale]: catalogue },
    interpolation: { escapeValue: false, skipOnVariables: true },
    missingInterpolationHandler: (_text, match) => {
      throw new Error(`language ${tag}: no value for the variable ${String(match[1])}`);
    },
  });
  return words;
}

/** From the language's own words: Intl's differ with the release of Node or of a browser, and a letter should not. */
function dateWords(months: readonly string[]): (iso: string) => string {
  return (iso) => {
    const [year = '', month, day] = iso.slice(0, 10).split('-');
    return (months[Number(month) - 1] ?? '')
      .replace('{{day}}', String(Number(day)))
      .replace('{{year}}', year);
  };
}

/** Node quietly answers in English for a language it does not know. */
function pluralProblems(tag: string, locale: string): readonly Problem[] {
  const root = (name: string) => name.split('-')[0];
  const known = Intl.PluralRules.supportedLocalesOf(locale);
  if (known.some((name) => root(name) === root(locale))) return [];
  return [wrong(tag, 'meta', 'use plurals in this language', 'a locale this Node knows', locale)];
}

function wrong(
  tag: string,
  file: string,
  what: string,
  expected: string,
  found: string | null = null,
): Problem {
  return {
    code: 'language-file',
    place: { file: `locales/${tag}/${file}.json`, row: null, field: null },
    cannot: `cannot ${what}`,
    found,
    expected,
    remedy: null,
  };
}
