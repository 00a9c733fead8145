// Messages of one language arrive; every difference from the English list of keys and variables leaves.
import type { Problem } from '../problem.js';
import { english, type Namespace } from './english.js';
import { sourceOf } from './source-of.js';

const pluralEnding = /_(zero|one|two|few|many|other)$/;
/** As CLDR lists the plural categories. */
const order = ['zero', 'one', 'two', 'few', 'many', 'other'] as const;
const variable = /\{\{?[^{}]*\}\}?/g;

/** The variables of a message, sorted, such as ['{{date}}', '{{phone}}']. */
export function variablesOf(message: string): readonly string[] {
  return (message.match(variable) ?? []).map((name) => name.replace(/\s+/g, '')).sort();
}

const formsKnown = new Map<string, readonly string[]>();

/** The plural forms of a locale; every file of a language asks for the same ones. */
function formsOf(locale: string): readonly string[] {
  const known = formsKnown.get(locale);
  if (known !== undefined) return known;
  const own = new Intl.PluralRules(locale).resolvedOptions().pluralCategories;
  const forms = order.filter((form) => own.includes(form));
  formsKnown.set(locale, forms);
  return forms;
}

/**
 * Every message a language needs, with the English text each is translated from.
 * @param locale Decides the plural forms.
 * @example expectedMessages('letter', 'pl').get('gap.zinc_few') // 'Leave {{count}} hours between iron and zinc tablets.'
 */
export function expectedMessages(
  namespace: Namespace,
  locale: string,
): ReadonlyMap<string, string> {
  const source: Readonly<Record<string, string>> = english[namespace];
  const forms = formsOf(locale);
  const expected = new Map<string, string>();
  for (const [key, text] of Object.entries(source)) {
    if (!pluralEnding.test(key)) expected.set(key, text);
    else
      for (const form of forms) {
        const place = key.replace(pluralEnding, `_${form}`);
        expected.set(place, sourceOf(namespace, place) ?? text);
      }
  }
  return expected;
}

/**
 * Holds a catalogue to the English one: same keys, the language's own plural forms, same variables, no empty text.
 * @param locale Decides the plural forms.
 */
export function compareCatalogue(
  tag: string,
  namespace: Namespace,
  messages: Readonly<Record<string, string>>,
  locale: string,
): readonly Problem[] {
  const expected = expectedMessages(namespace, locale);
  const problem = (
    field: string,
    cannot: string,
    found: string | null,
    right: string,
  ): Problem => ({
    code: 'language-message',
    place: { file: `locales/${tag}/${namespace}.json`, row: null, field },
    cannot,
    found,
    expected: right,
    remedy: null,
  });
  const problems: Problem[] = [];
  for (const [key, text] of expected) {
    const message = messages[key];
    if (message === undefined || message.trim() === '') {
      problems.push(problem(key, 'cannot find the message', null, 'a text'));
      continue;
    }
    if (message === text) continue;
    const [have, want] = [variablesOf(message).join(' '), variablesOf(text).join(' ')];
    if (have !== want)
      problems.push(problem(key, 'cannot fill the message', have, want || 'no variable'));
  }
  for (const key of Object.keys(messages)) {
    if (!expected.has(key))
      problems.push(problem(key, 'cannot use the message', null, 'a key of the English file'));
  }
  return problems;
}
