// Nothing arrives; the tables of names leave, ready to be looked up: tests, look-alikes, columns, sexes.
import { z } from 'zod';
import { type Analyte, analytes, type Sex, sexes } from '../terms.js';
import { whenAsked } from '../when-asked.js';
import { nameKey, tightKey } from './name-key.js';
import rows from './names.json' with { type: 'json' };

const spellings = z.array(z.string().min(1));

/** What a column of a table may hold. */
export const columnMeanings = [
  'id',
  'name',
  'surname',
  'givenName',
  'birthDate',
  'ageYears',
  'sex',
  'collected',
  'test',
  'code',
  'value',
  'unit',
  'low',
  'high',
  'range',
  'flag',
  'status',
  'comparator',
  'pregnancyWeeks',
  'trimester',
  'pregnant',
  'specimen',
  'fasting',
  'sampleTime',
  'language',
  'symptoms',
  'bleeding',
  'conditions',
  'medicines',
] as const;
export type ColumnMeaning = (typeof columnMeanings)[number];

const schema = z.strictObject({
  source: z.string(),
  checked: z.literal('from-memory'),
  analytes: z.record(z.enum(analytes), spellings),
  lookAlikes: z.record(z.string(), spellings),
  otherTests: spellings,
  panels: spellings,
  columns: z.record(z.enum(columnMeanings), spellings),
  sexes: z.record(z.enum(sexes), spellings),
  ambiguousSexLetters: z.array(z.array(z.string())),
  /** Under a Spanish header M is masculino where F stands in the column too, and may be mujer where none does. */
  sexLettersToProve: z.array(
    z.strictObject({ under: z.string(), letter: z.string(), provedBy: z.string() }),
  ),
});
const table = whenAsked(() => schema.parse(rows));

/** What a test's name may mean. */
export type NameMeaning =
  | { readonly kind: 'analyte'; readonly analyte: Analyte }
  | { readonly kind: 'look-alike'; readonly what: string }
  | { readonly kind: 'other' };

type Spelt<T> = readonly (readonly [spelling: string, meaning: T])[];

const spelt = whenAsked(
  (): Spelt<NameMeaning> => [
    ...analytes.flatMap((analyte) =>
      [analyte, ...table().analytes[analyte]].map(
        (s) => [s, { kind: 'analyte', analyte }] as const,
      ),
    ),
    ...Object.entries(table().lookAlikes).flatMap(([what, list]) =>
      list.map((s) => [s, { kind: 'look-alike', what }] as const),
    ),
    ...table().otherTests.map((s) => [s, { kind: 'other' }] as const),
  ],
);

const byName = whenAsked(() => index(spelt(), nameKey));
const byTightName = whenAsked(() => index(spelt(), tightKey));
const byColumn = whenAsked(() =>
  index(
    columnMeanings.flatMap((meaning) =>
      [meaning, ...table().columns[meaning]].map((s) => [s, meaning] as const),
    ),
    tightKey,
  ),
);
const bySexWord = whenAsked(() =>
  index(
    sexes.flatMap((sex) => table().sexes[sex].map((s) => [s, sex] as const)),
    tightKey,
  ),
);
const doubtfulLetters = whenAsked(
  (): ReadonlySet<string> =>
    new Set([
      ...table().ambiguousSexLetters.flat(),
      ...table().sexLettersToProve.flatMap(({ letter, provedBy }) => [letter, provedBy]),
    ]),
);
const lookAlikeKeys = whenAsked(() =>
  Object.entries(table().lookAlikes).flatMap(([what, list]) =>
    list.map((s) => ({ key: ` ${nameKey(s)} `, what })),
  ),
);

/**
 * What a test's name means, by its exact spelling; null when no table has it.
 * @example meaningOfName('Ferritine') // { kind: 'analyte', analyte: 'ferritin' }
 * @example meaningOfName('HbA1c') // { kind: 'look-alike', what: 'glycated haemoglobin, a sugar test' }
 */
export function meaningOfName(name: string): NameMeaning | null {
  return byName().get(nameKey(name)) ?? byTightName().get(tightKey(name)) ?? null;
}

/** What a longer name holds, word for word, that only looks like one of our tests; null when nothing. */
export function lookAlikeInside(name: string): string | null {
  const key = ` ${nameKey(name)} `;
  return lookAlikeKeys().find((lookAlike) => key.includes(lookAlike.key))?.what ?? null;
}

const panelKeys = whenAsked((): ReadonlySet<string> => new Set(table().panels.map(tightKey)));

/** True for the title of a group of tests. @example isPanelTitle('Full blood count') // true */
export function isPanelTitle(title: string): boolean {
  return panelKeys().has(tightKey(title));
}

/** @example meaningOfColumn('Date of birth') // 'birthDate' */
export function meaningOfColumn(header: string): ColumnMeaning | null {
  return byColumn().get(tightKey(header)) ?? null;
}

/**
 * Sex by its word in many languages; `others` are the letters that stand elsewhere in the column (see `sexLetter`),
 * because M beside H is mujer, as it may be alone below a Spanish `header`.
 * @example sexOf('weiblich', new Set(), 'Geschlecht') // 'female'
 */
export function sexOf(word: string, others: ReadonlySet<string>, header: string): Sex | null {
  const key = tightKey(word);
  const { ambiguousSexLetters, sexLettersToProve } = table();
  const doubtful =
    doubtfulLetters().has(key) &&
    (ambiguousSexLetters.some(
      (letters) =>
        letters.includes(key) && letters.every((letter) => letter === key || others.has(letter)),
    ) ||
      sexLettersToProve.some(
        ({ under, letter, provedBy }) =>
          letter === key && under === tightKey(header) && !others.has(provedBy),
      ));
  return doubtful ? null : (bySexWord().get(key) ?? null);
}

/**
 * The letter a cell holds, where beside another letter it may mean another sex; null for any other word.
 * @example sexLetter('M') // 'm'
 */
export function sexLetter(word: string): string | null {
  const key = tightKey(word);
  return doubtfulLetters().has(key) ? key : null;
}

const spellingsByLetter = whenAsked(() => {
  const byLetter = new Map<string, string[]>();
  for (const key of new Set(spelt().map(([spelling]) => nameKey(spelling)))) {
    const letter = key[0] ?? '';
    byLetter.set(letter, [...(byLetter.get(letter) ?? []), key]);
  }
  return byLetter;
});

/** Spellings that begin with one letter, as keys, for finding the nearest to a misspelt name. */
export function spellingsFrom(letter: string): readonly string[] {
  return spellingsByLetter().get(letter) ?? [];
}

/** First meaning of a spelling wins only when all its rows agree; a spelling with two meanings is left out. */
function index<T>(list: Spelt<T>, key: (spelling: string) => string): ReadonlyMap<string, T> {
  const found = new Map<string, T>();
  const doubtful = new Set<string>();
  for (const [spelling, meaning] of list) {
    const name = key(spelling);
    const before = found.get(name);
    if (before !== undefined && JSON.stringify(before) !== JSON.stringify(meaning))
      doubtful.add(name);
    found.set(name, meaning);
  }
  for (const name of doubtful) found.delete(name);
  return found;
}
