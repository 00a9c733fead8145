// What a file says of a test arrives (name, code, unit, specimen); the analyte leaves, or the question to ask.
import type { Analyte } from '../terms.js';
import { loincRowOf } from './loinc.js';
import { nameKey } from './name-key.js';
import { lookAlikeInside, meaningOfName, type NameMeaning, spellingsFrom } from './names.js';
import { nearest } from './nearest.js';
import { familiesOf, unitFamily } from './unit-family.js';

/** The test as a file describes it; what the file does not say is null. */
export type SaidOfTest = {
  readonly name: string;
  readonly code: string | null;
  readonly unit: string | null;
  readonly specimen: string | null;
};

export type Which =
  | { readonly is: 'analyte'; readonly analyte: Analyte }
  /** Two things said of the test contradict each other. */
  | {
      readonly is: 'question';
      readonly cannot: string;
      readonly found: string | null;
      readonly expected: string;
    }
  /** A test this program does not read; `what` when its name could be taken for one. */
  | { readonly is: 'other'; readonly what: string | null }
  | { readonly is: 'unknown'; readonly near: Analyte | null };

/**
 * Which analyte a test is. Name, code, unit and specimen must agree; a contradiction is a question, never a guess.
 * @example whichAnalyte({ name: 'Ferritina', code: null, unit: 'ng/mL', specimen: null }) // { is: 'analyte', analyte: 'ferritin' }
 * @example whichAnalyte({ name: 'Transferrin', code: null, unit: '%', specimen: null }) // { is: 'question', … }
 */
export function whichAnalyte(whole: SaidOfTest): Which {
  const said = { ...whole, name: whole.name.slice(0, longestName) };
  const key = JSON.stringify([said.name, said.code, said.unit, said.specimen]);
  const before = told.get(key);
  if (before !== undefined) return before;
  if (told.size >= mostTold) told.clear();
  const which = tell(said);
  told.set(key, which);
  return which;
}

/** A file names the same few tests over and over. */
const told = new Map<string, Which>();
const mostTold = 2000;

function tell(said: SaidOfTest): Which {
  const { bare, specimen } = withoutSpecimen(said.name);
  const named =
    meaningOfName(said.name) ??
    insideLongName(said.name) ??
    meaningOfName(bare) ??
    saidTwice(said.name);
  const row = said.code === null ? null : loincRowOf(said.code);
  if (row !== null) {
    const coded = codeAgrees(row.analyte, named, said);
    if (coded !== null) return coded;
  }
  const analyte = named?.kind === 'analyte' ? named.analyte : (row?.analyte ?? null);
  if (named !== null && named.kind !== 'analyte')
    return { is: 'other', what: named.kind === 'look-alike' ? named.what : null };
  if (analyte === null) {
    if (row !== null) return { is: 'other', what: null };
    return { is: 'unknown', near: nearestTest(said.name) ?? besideBrackets(said.name) };
  }
  return (
    specimenDisagrees(analyte, said.specimen ?? specimen) ??
    unitDisagrees(analyte, said.unit, row === null ? null : row.family) ?? {
      is: 'analyte',
      analyte,
    }
  );
}

/** 'Haemoglobin (Hb)': both the name and the one in brackets mean the same. */
function saidTwice(name: string): NameMeaning | null {
  const [, outer, inner] = /^(.+?)\s*[([]([^()[\]]+)[)\]]$/.exec(name.trim()) ?? [];
  if (outer === undefined || inner === undefined) return null;
  const [a, b] = [meaningOfName(outer), meaningOfName(inner)];
  return a?.kind === 'analyte' && b?.kind === 'analyte' && a.analyte === b.analyte ? a : null;
}

/** 'Ferritin (SF)': what stands in the brackets may change the name before them, so it is asked about. */
function besideBrackets(name: string): Analyte | null {
  const outer = /^(.+?)\s*[([][^()[\]]+[)\]]$/.exec(name.trim())?.[1];
  const meaning = outer === undefined ? null : meaningOfName(outer);
  return meaning?.kind === 'analyte' ? meaning.analyte : null;
}

/** Names of three or four letters are all near to each other. */
const shortestSlip = 5;

/** The analyte a misspelt name is nearest to; null when it is nearer to another test. */
function nearestTest(name: string): Analyte | null {
  const key = nameKey(name);
  if (key.length < shortestSlip) return null;
  const before = nearestTo.get(key);
  if (before !== undefined) return before;
  const spelling = nearest(key, spellingsFrom(key[0] ?? ''), 5);
  const meaning = spelling === null ? null : meaningOfName(spelling);
  const near = meaning?.kind === 'analyte' ? meaning.analyte : null;
  if (nearestTo.size >= mostTold) nearestTo.clear();
  nearestTo.set(key, near);
  return near;
}

const nearestTo = new Map<string, Analyte | null>();

/** A longer name is none; expressions below would take long over it. */
const longestName = 200;

function insideLongName(name: string): NameMeaning | null {
  const what = lookAlikeInside(name);
  return what === null ? null : { kind: 'look-alike', what };
}

function codeAgrees(
  coded: Analyte | null,
  named: NameMeaning | null,
  said: SaidOfTest,
): Which | null {
  const byName = named?.kind === 'analyte' ? named.analyte : null;
  if (named === null) {
    if (coded === null || (said.unit !== null && unitFamily(said.unit) !== null)) return null;
    return {
      is: 'question',
      cannot: 'cannot trust a code alone: the name is not known and no known unit stands beside it',
      found: said.code,
      expected: `a name or a unit that fits the code's ${coded}`,
    };
  }
  if (coded === byName) return null;
  return {
    is: 'question',
    cannot: `cannot tell which test this is: the code says ${coded ?? 'another test'}, the name ${byName ?? 'another test'}`,
    found: said.code,
    expected: 'a code and a name that mean the same test',
  };
}

function unitDisagrees(analyte: Analyte, unit: string | null, coded: string | null): Which | null {
  const family = unit === null ? null : unitFamily(unit);
  if (family === null) return null;
  const fitting = familiesOf(analyte);
  if (fitting.includes(family) && (coded === null || coded === family)) return null;
  const wanted = coded !== null && fitting.includes(family) ? [coded] : fitting;
  return {
    is: 'question',
    cannot: `cannot tell which test this is: the ${coded !== null && fitting.includes(family) ? 'code' : 'name'} says ${analyte}, but the unit measures ${family}`,
    found: unit,
    expected: `a unit of ${wanted.join(' or ')}`,
  };
}

/** Words that say blood, or how a blood test was made, and change nothing of what was measured. */
const silentWords = new Set(
  'serum plasma blood venous capillary whole s p b fs fp vb cb ser plas bld suero sangre sang siero vollblut level calculated calc automated eclia clia cmia'.split(
    ' ',
  ),
);
const outside: readonly (readonly [RegExp, string])[] = [
  [/^(?:u|ur|urine|urinary|urin|orina|urina|harn|24h)$/, 'urine'],
  [/^(?:stool|faecal|fecal|faeces|feces|stl)$/, 'stool'],
  [/^(?:csf|cerebrospinal)$/, 'spinal fluid'],
  [/^(?:tissue|liver|marrow|tiss)$/, 'tissue'],
  [/^(?:fluid|pleural|ascitic|synovial|saliva|sweat|hair)$/, 'another fluid'],
];
/** A long LOINC name carries its property, specimen and method behind the test. */
const longName =
  /\s*(?:\[[^\]]*\]|\bin\s+(?:serum|blood|plasma|red|venous)\b.*|\bby\s+(?:automated|calculation)\b.*)/gi;

function withoutSpecimen(name: string): {
  readonly bare: string;
  readonly specimen: string | null;
} {
  const elsewhere = specimenIn(name);
  const words = nameKey(name.replace(longName, ' ')).split(' ');
  const bare = words.filter((word) => !silentWords.has(word) && outsideOf(word) === null).join(' ');
  const inBlood = nameKey(name)
    .split(' ')
    .filter((word) => /^(?:serum|plasma)$/.test(word));
  return { bare, specimen: elsewhere ?? inBlood[0] ?? null };
}

function outsideOf(word: string): string | null {
  return outside.find(([shape]) => shape.test(word))?.[1] ?? null;
}

function specimenIn(text: string): string | null {
  return (
    nameKey(text)
      .split(' ')
      .map(outsideOf)
      .find((place) => place !== null) ?? null
  );
}

function specimenDisagrees(analyte: Analyte, specimen: string | null): Which | null {
  if (specimen === null) return null;
  const elsewhere = specimenIn(specimen);
  if (elsewhere !== null) return { is: 'other', what: `${analyte} in ${elsewhere}, not in blood` };
  const cells: readonly Analyte[] = ['haemoglobin', 'haematocrit', 'rbc', 'mcv', 'mch'];
  const words = nameKey(specimen).split(' ');
  const noCells =
    words.some((word) => word === 'serum' || word === 'plasma') && !words.includes('blood');
  if (cells.includes(analyte) && noCells)
    return { is: 'other', what: `${analyte} in ${specimen}, not in whole blood` };
  return null;
}
