// One pasted line arrives; what it says of the person and the day leaves, such as 'Sex: F', and what else stands in it.
import { readAge } from '../age-as-written.js';
import { needsOrder, readDate } from '../date-as-written.js';
import { type ColumnMeaning, meaningOfColumn, sexOf } from '../names.js';
import { whichAnalyte } from '../which-analyte.js';

/** `label`: the word before the text, as it was written. */
export type Fact = {
  readonly meaning: ColumnMeaning;
  readonly label: string;
  readonly text: string;
};

/** `rest`: stretches of a line with facts that are none themselves, such as a result beside a date. */
export type FactsOfLine = { readonly facts: readonly Fact[]; readonly rest: readonly string[] };

const wanted: ReadonlySet<ColumnMeaning> = new Set([
  'id',
  'name',
  'birthDate',
  'ageYears',
  'sex',
  'collected',
  'fasting',
  'sampleTime',
  'pregnancyWeeks',
  'pregnant',
]);

const pair = /^(\p{L}[\p{L} ./'-]{0,40}?)\s*[:=]\s*(\S.*)$/u;

/**
 * Facts written as 'word: text', several on a line with tabs, semicolons or wide gaps between them, or as two cells of
 * a sheet. One blank is enough where the fact before it is whole: 'Sex: F Collected: 2026-11-20'.
 * @example factsOf('Sex: F    DOB: 09/03/1984').facts.length // 2
 */
export function factsOf(line: string): FactsOfLine {
  const alone = twoCells(line) ?? weeksIn(line.trim());
  if (alone !== null) return { facts: [alone], rest: [] };
  const facts: Fact[] = [];
  const rest = [''];
  // What parts them stays, for a result keeps its columns.
  for (const part of line.split(/(\t|\s{2,}|;)/)) {
    const inside = factsIn(part.trim());
    if (inside === null) rest.push(`${rest.pop()}${part}`);
    else {
      facts.push(...inside.facts);
      rest.push(...inside.rest, '');
    }
  }
  const filled = rest.filter((stretch) => /[\p{L}\p{N}]/u.test(stretch));
  return { facts, rest: facts.length === 0 ? [] : filled };
}

/** Facts that follow each other from the start of a text; null where it begins with none. */
function factsIn(text: string): FactsOfLine | null {
  const [, word, said] = pair.exec(text) ?? [];
  if (word === undefined || said === undefined) return null;
  const meaning = meaningOfColumn(word);
  if (meaning === null || !wanted.has(meaning)) return null;
  const end = endOf(meaning, said);
  const fact = { meaning, label: word, text: said.slice(0, end).trim() };
  const behind = said.slice(end).trim();
  if (behind === '') return { facts: [fact], rest: [] };
  const more = factsIn(behind);
  return more === null
    ? { facts: [fact], rest: [behind] }
    : { facts: [fact, ...more.facts], rest: more.rest };
}

/** Where a fact ends: before a known word with a colon, if what stands until there is a whole fact. */
function endOf(meaning: ColumnMeaning, text: string): number {
  for (const { index } of text.matchAll(/\s/g)) {
    const word = pair.exec(text.slice(index + 1))?.[1];
    if (word !== undefined && isKnown(word) && isWhole(meaning, text.slice(0, index))) return index;
  }
  return text.length;
}

function isKnown(word: string): boolean {
  const meaning = meaningOfColumn(word);
  if (meaning !== null) return wanted.has(meaning);
  return whichAnalyte({ name: word, code: null, unit: null, specimen: null }).is === 'analyte';
}

/** A name may go on with any word, so it is never known to be whole. */
function isWhole(meaning: ColumnMeaning, text: string): boolean {
  switch (meaning) {
    case 'id':
      return /^\S+$/.test(text);
    case 'sex':
      return sexOf(text, new Set(), '') !== null;
    case 'birthDate':
    case 'collected':
      return readDate(text) !== null || needsOrder(text);
    case 'ageYears':
      return readAge(text) !== null;
    case 'sampleTime':
      return /^\d{1,2}:\d{2}$/.test(text);
    case 'fasting':
    case 'pregnant':
      return /^(?:y|yes|true|n|no|false)$/i.test(text);
    case 'pregnancyWeeks':
      return /^\d{1,2}(?:\s*w\p{L}*)?$/iu.test(text);
    default:
      return false;
  }
}

/** True where a fact seems to hold the next one too, such as 'Ida Tern DOB: 1984-03-09'. */
export function holdsAnother({ text }: Fact): boolean {
  return /\p{L}\s*[:=]\s*\S/u.test(text);
}

/** 'Gestation 20 weeks' and '20 weeks pregnant'. */
function weeksIn(line: string): Fact | null {
  const [, before, behind] =
    /^([\p{L} ]{1,40}?)\s+(\d{1,2}\s*w\S*(?:\s.{0,20})?)$/iu.exec(line) ?? [];
  const [, number, word] = /^(\d{1,2}\s*w\p{L}*)\s+(?:of\s+)?(\p{L}{1,20})$/iu.exec(line) ?? [];
  const label = before ?? word ?? '';
  const meaning = meaningOfColumn(label);
  const text = behind ?? number;
  return (meaning === 'pregnancyWeeks' || meaning === 'pregnant') && text !== undefined
    ? { meaning, label, text }
    : null;
}

/** 'Sex' beside 'F', as two cells copied from a sheet; two headers side by side are none. */
function twoCells(line: string): Fact | null {
  const [word = '', text = '', ...more] = line.split('\t').map((cell) => cell.trim());
  if (text === '' || more.some((cell) => cell !== '') || meaningOfColumn(text) !== null)
    return null;
  const label = word.replace(/\s*:$/, '');
  const meaning = meaningOfColumn(label);
  return meaning !== null && wanted.has(meaning) ? { meaning, label, text } : null;
}
