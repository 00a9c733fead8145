// One pasted line arrives; if a date stands at its start or end, the date and the other words leave.
import { type DateAsWritten, type DateOrder, readDate } from '../date-as-written.js';
import { isPanelTitle } from '../names.js';

/** `date` is null where day and month may be taken for each other. */
export type DateBeside = { readonly date: DateAsWritten | null; readonly text: string };

const day = String.raw`(?:\d{4}-\d{2}-\d{2}|\d{1,2}([./-])\d{1,2}\KEY\d{4}|\d{1,2}[ -]\p{L}{3,9}\.?,?[ -]\d{4})`;
const time = String.raw`(?:[ ,]+(?:at\s+)?\d{1,2}:\d{2}(?::\d{2})?)?`;
const before = new RegExp(
  String.raw`^(${day.replace('KEY', '2')}${time})[\s:,|\u2013-]+(\p{L}.*)$`,
  'u',
);
const behind = new RegExp(
  String.raw`^(\p{L}.*?)[\s:,(|\u2013-]+(${day.replace('KEY', '3')}${time})\)?$`,
  'u',
);
const longest = 300;

/**
 * A date before a result, or before or behind the title of a group of tests.
 * @example dateBeside('17-Nov-2026 Serum ferritin 9 ug/L', null) // { date: { date: '2026-11-17', time: null }, text: 'Serum ferritin 9 ug/L' }
 */
export function dateBeside(line: string, order: DateOrder | null): DateBeside | null {
  const text = line.trim();
  if (text.length > longest) return null;
  const [, first, , rest] = before.exec(text) ?? [];
  if (first !== undefined && rest !== undefined)
    return { date: readDate(first, order), text: rest };
  const [, title, last] = behind.exec(text) ?? [];
  if (title === undefined || last === undefined || !isPanelTitle(title)) return null;
  return { date: readDate(last, order), text: title };
}
