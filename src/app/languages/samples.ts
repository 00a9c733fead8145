// A message with variables arrives; the message as it might stand in a letter leaves.
import type { Language } from '../../letter/index.js';

/** Invented, like the example clinic. */
const words: Readonly<Record<string, string>> = {
  name: 'Noor Castellane',
  phone: '555-0142',
  emergency: '555-0199',
  clinic: 'Saltmarsh Bay Health Centre',
  website: 'https://saltmarsh-bay.example',
  hours: '8:00–18:00',
  who: '555-0117',
  by: 'Dr Imre Vale',
  done: '555-0142, 10:20',
  dose: '1 × 1',
  id: 'SB-2001',
  result: '12.5 µg/L',
  interval: '30–400',
  low: '15',
  high: '150',
  points: '3',
  number: '12',
  whole: '12',
  digits: '5',
  page: '1',
  pages: '2',
};
const counts = [0, 1, 2, 3, 5, 11, 21, 100, 1.5, 1_000_000];

/**
 * Fills in samples; a count is the first that takes this plural form in the language.
 * @example fillSamples(polish, 'gap.zinc_few', '… {{count}} …') // '… 2 …'
 */
export function fillSamples(
  { date, words: { language } }: Pick<Language, 'date' | 'words'>,
  key: string,
  text: string,
): string {
  const form = /_(zero|one|two|few|many|other)$/.exec(key)?.[1];
  const rules = new Intl.PluralRules(language);
  const count = counts.find((number) => rules.select(number) === form) ?? 2;
  const samples: Readonly<Record<string, string>> = {
    ...words,
    date: date('2026-03-05'),
    count: String(count),
  };
  return text.replace(/\{\{?\s*(\w+)\s*\}\}?/g, (whole, name: string) =>
    samples[name] === undefined ? whole : `\u2066${samples[name]}\u2069`,
  );
}
