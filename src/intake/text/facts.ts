// One pasted line arrives; what it says of the person and the day leaves, such as 'Sex: F' or 'Collected: 2026-11-20'.
import { type ColumnMeaning, meaningOfColumn } from '../names.js';

export type Fact = { readonly meaning: ColumnMeaning; readonly text: string };

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

/**
 * Facts written as 'word: text', several on a line with tabs or wide gaps between them, or as two cells of a sheet.
 * @example factsOf('Sex: F    DOB: 09/03/1984')
 */
export function factsOf(line: string): readonly Fact[] {
  const pair = twoCells(line);
  if (pair !== null) return [pair];
  const weeks = weeksIn(line.trim());
  if (weeks !== null) return [weeks];
  return line.split(/\t|\s{2,}|;/).flatMap((part) => {
    const [, word, text] =
      /^([\p{L}][\p{L} ./'-]{0,40}?)\s*[:=]\s*(\S.*)$/u.exec(part.trim()) ?? [];
    if (word === undefined || text === undefined) return [];
    const meaning = meaningOfColumn(word);
    return meaning !== null && wanted.has(meaning) ? [{ meaning, text: text.trim() }] : [];
  });
}

/** 'Gestation 20 weeks' and '20 weeks pregnant'. */
function weeksIn(line: string): Fact | null {
  const [, before, behind] =
    /^([\p{L} ]{1,40}?)\s+(\d{1,2}\s*w\S*(?:\s.{0,20})?)$/iu.exec(line) ?? [];
  const [, number, word] = /^(\d{1,2}\s*w\p{L}*)\s+(?:of\s+)?(\p{L}{1,20})$/iu.exec(line) ?? [];
  const meaning = meaningOfColumn(before ?? word ?? '');
  const text = behind ?? number;
  return (meaning === 'pregnancyWeeks' || meaning === 'pregnant') && text !== undefined
    ? { meaning, text }
    : null;
}

/** 'Sex' beside 'F', as two cells copied from a sheet; two headers side by side are none. */
function twoCells(line: string): Fact | null {
  const [word = '', text = '', ...more] = line.split('\t').map((cell) => cell.trim());
  if (text === '' || more.some((cell) => cell !== '') || meaningOfColumn(text) !== null)
    return null;
  const meaning = meaningOfColumn(word.replace(/\s*:$/, ''));
  return meaning !== null && wanted.has(meaning) ? { meaning, text } : null;
}
