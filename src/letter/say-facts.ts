// Facts of one reason arrive; each leaves in English words with its unit, ready to stand in a sentence.
import { rowById } from '../knowledge/row-index.js';
import type { Reason } from '../interpret/interpretation.js';
import type { Analyte } from '../terms.js';

type Facts = Reason['facts'];
type Words = (key: string, values?: Readonly<Record<string, string>>) => string;

/** What the words of a fact are made with: the catalogue and the dates of the language. */
export type Speaker = { readonly words: Words; readonly date: (iso: string) => string };

/** Facts that stand with another one: a unit and a comparator with their value, both ends in one range. */
const partsOfOthers = ['unit', 'comparator', 'low', 'high'];

/** Units of facts whose name says them; percentages have a space before the sign, as in print. */
const unitsByFact: Readonly<Record<string, string>> = {
  saturation: '%',
  printed: '%',
  computed: '%',
  share: '%',
  iron: 'umol/L',
  tibc: 'umol/L',
  ferritin: 'ug/L',
  crp: 'mg/L',
  from: 'g/L',
  to: 'g/L',
  rise: 'g/L',
  needed: 'g/L',
  added: 'g/L',
  who: 'g/L',
  bsh: 'g/L',
  mentzer: '1',
  found: '1',
};

/** Facts that count something; the catalogue has the word for one and for more. */
const spans = ['hours', 'days', 'weeks', 'months', 'metres'];

/** Groups of the catalogue for facts that are codes; several codes stand in one fact with spaces between. */
const catalogues: Readonly<Record<string, string>> = {
  pattern: 'pattern',
  level: 'level',
  severity: 'severity',
  group: 'group',
  bleeding: 'bleeding',
  symptom: 'symptom',
  condition: 'condition',
  conditions: 'condition',
  medicines: 'medicine',
  how: 'how',
  why: 'why',
  by: 'by',
  'rule-met': 'met',
};

/**
 * Every fact in words, with `range` for `low` and `high`, and `source` for the rows behind the reason.
 * Test names open a sentence as `analyte` and stand within one as `test`.
 * @example sayFacts({ analyte: 'ferritin', value: 4, unit: 'ug/L', limit: 15 }, ['ferritin-low-5-and-over'], speaker)
 *   // { analyte: 'Ferritin', value: '4 µg/L', limit: '15 µg/L', source: 'WHO 2020' }
 */
export function sayFacts(
  facts: Facts,
  rules: readonly string[],
  speaker: Speaker,
): Readonly<Record<string, string>> {
  const told = Object.entries(facts)
    .filter(([name]) => !partsOfOthers.includes(name))
    .map(([name, fact]) => [name, sayFact(name, fact, facts, speaker)] as const);
  const range = sayRange(
    numberOrNull(facts.low),
    numberOrNull(facts.high),
    String(facts.unit ?? ''),
    speaker.words,
  );
  return {
    ...Object.fromEntries(told),
    ...(range === null ? {} : { range }),
    source: sayRules(rules, speaker.words),
  };
}

function sayFact(name: string, fact: string | number, facts: Facts, speaker: Speaker): string {
  const { words, date } = speaker;
  const catalogue = catalogues[name];
  const unit = unitsByFact[name];
  if (catalogue !== undefined) return allOf(fact, (code) => words(`${catalogue}.${code}`), words);
  if (name === 'value') return `${facts.comparator ?? ''}${amount(fact, String(facts.unit ?? ''))}`;
  if (name === 'limit') return amount(fact, String(facts.unit ?? ''));
  if (name === 'collected') return date(String(fact));
  if (name === 'analyte') return words(`analyte.${fact}`);
  if (name === 'tests') return opening(allOf(fact, (test) => within(words, test), words));
  if (name === 'test' || (name === 'from' && typeof fact === 'string'))
    return allOf(fact, (test) => within(words, test), words);
  if (spans.includes(name) && typeof fact === 'number')
    return words(`count.${name}.${fact === 1 ? 'one' : 'more'}`, { count: String(fact) });
  return unit === undefined ? String(fact) : amount(fact, unit);
}

const numberOrNull = (fact: string | number | undefined) =>
  typeof fact === 'number' ? fact : null;

/**
 * An interval in words; null without an end.
 * @example sayRange(null, 165, 'g/L', words) // 'up to 165 g/L'
 */
export function sayRange(
  low: number | null,
  high: number | null,
  unit: string,
  words: Words,
): string | null {
  if (low !== null && high !== null)
    return words('range.both', { low: String(low), high: amount(high, unit) });
  if (low !== null) return words('range.low', { low: amount(low, unit) });
  return high === null ? null : words('range.high', { high: amount(high, unit) });
}

/** @example amount(4, 'ug/L') // '4 µg/L' */
export function amount(value: string | number, unit: string): string {
  return `${value} ${sayUnit(unit)}`.trim();
}

/** UCUM codes as they are printed on paper; a bare number has none. */
export function sayUnit(unit: string): string {
  const spoken: Readonly<Record<string, string>> = {
    '1': '',
    a: 'years',
    mo: 'months',
    wk: 'weeks',
    d: 'days',
    h: 'hours',
    times: '',
    '10*12/L': '×10¹²/L',
    'umol/g': 'µmol/g',
  };
  return spoken[unit] ?? unit.replace(/^u(?=g|mol)/, 'µ');
}

/** A test's name inside a sentence: small, unless it is an abbreviation. */
export function within(words: Words, analyte: string): string {
  const name = words(`analyte.${analyte satisfies string as Analyte}`);
  return /^[A-Z]{2}/.test(name) ? name : `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
}

const opening = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** Several codes stand in one fact with spaces between. */
function allOf(fact: string | number, say: (code: string) => string, words: Words): string {
  return listed(String(fact).split(' ').map(say), 'and', words);
}

/**
 * A list as English writes it, without a comma before its last word. Intl.ListFormat says the same, but a start
 * that has no other use for Intl is shorter by a tenth without it.
 * @example listed(['low', 'usual', 'high'], 'or', words) // 'low, usual or high'
 */
export function listed(names: readonly string[], last: 'and' | 'or', words: Words): string {
  const before = names.slice(0, -1).join(', ');
  const end = names.at(-1) ?? '';
  return before === '' ? end : words(`list.${last}`, { before, end });
}

/** Sources of some rows in short, each once; without a row the laboratory's own interval decided. */
function sayRules(rules: readonly string[], words: Words): string {
  const names = [...new Set(rules.map((rule) => shortSource(rowById(rule).source)))];
  return names.length === 0 ? words('source.laboratory') : names.join('; ');
}

/**
 * The name a source is known by: up to its year, else up to the first comma, bracket or description.
 * @example shortSource('WHO 2024 guideline on haemoglobin cutoffs to define anaemia') // 'WHO 2024'
 */
export function shortSource(source: string): string {
  const [first = source] = source.split(';');
  const dated = /^[^,(;]*?\b(?:19|20)\d\d\b/.exec(first)?.[0];
  const [plain = first] = (dated ?? first).split(/,| \(| page| as changed| on /);
  return plain.trim();
}
