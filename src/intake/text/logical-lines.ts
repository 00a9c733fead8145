// The lines of a pasted text arrive; logical lines leave: a result copied over several lines is one again.
import { readUnit } from '../../knowledge/units.js';
import { needsOrder, readDate } from '../date-as-written.js';
import { whichAnalyte } from '../which-analyte.js';

export type LogicalLine = { readonly text: string; readonly row: number };

/** Filled lines of a paste; more are no results of one person. */
export const mostLines = 20_000;

/** A name, then value, unit, interval and mark each on a line of its own. */
const mostBehind = 4;

/** What the line above left open. */
type Open = 'a name' | 'a value' | null;

/**
 * Joins a test's name that stands alone with the lines below it, as far as they hold its value, unit, interval and mark.
 * Null: too many lines. Names above names, or values above names, are left as they are: whose value is whose cannot be told.
 * @example logicalLines('Ferritin\n9 ug/L (30 - 400)') // [{ text: 'Ferritin  9 ug/L (30 - 400)', row: 1 }]
 */
export function logicalLines(text: string): readonly LogicalLine[] | null {
  const lines = text
    .split(/\r\n|\r|\n/)
    .map((line, i) => ({ text: line, row: i + 1 }))
    .filter((line) => line.text.trim() !== '');
  if (lines.length > mostLines) return null;
  const joined: LogicalLine[] = [];
  let open: Open = null;
  for (let i = 0; i < lines.length; i++) {
    const line = lines[i];
    if (line === undefined) break;
    const alone = isNameAlone(line.text);
    const behind: readonly LogicalLine[] =
      alone && open === null ? valuesBehind(lines.slice(i + 1, i + 1 + mostBehind)) : [];
    joined.push(
      behind.length === 0
        ? line
        : { text: [line, ...behind].map((each) => each.text.trim()).join('  '), row: line.row },
    );
    i += behind.length;
    open =
      behind.length > 0 ? null : alone ? 'a name' : beginsWithValue(line.text) ? 'a value' : null;
  }
  return joined;
}

/** Lines that go on with a result: a number first, or its unit and then the number. */
function valuesBehind(lines: readonly LogicalLine[]): readonly LogicalLine[] {
  const unitFirst = readUnit(lines[0]?.text.trim() ?? '') !== null ? 1 : 0;
  if (!beginsWithValue(lines[unitFirst]?.text ?? '')) return [];
  const end = lines.findIndex((line, i) => i > unitFirst && !goesOn(line.text));
  return end < 0 ? lines : lines.slice(0, end);
}

const longestName = 60;

function isNameAlone(line: string): boolean {
  const name = line.trim().replace(/\s*:$/, '');
  if (name.length > longestName || /[\t|\d]/.test(name.replace(/B12/i, ''))) return false;
  const which = whichAnalyte({ name, code: null, unit: null, specimen: null });
  return which.is === 'analyte' || which.is === 'other';
}

function beginsWithValue(line: string): boolean {
  const [word = ''] = line.trim().split(/\s+/);
  return /^[<>\u2264\u2265]?=?\s*[+-]?\d/.test(line.trim()) && !isDate(word);
}

function isDate(word: string): boolean {
  return readDate(word) !== null || needsOrder(word) || /^\d+([./-])\d+\1\d+$/.test(word);
}

/** A unit, an interval, or a mark alone. */
function goesOn(line: string): boolean {
  const text = line.trim();
  return (
    readUnit(text) !== null ||
    /^[([{]?\s*(?:ref\w*\.?\s*:?\s*)?[<>\u2264\u2265]?=?\s*\d+(?:[.,]\d+)?\s*(?:$|[-\u2010-\u2014\u2212)\]}]|to\s|a\s|\u00E0\s|bis\s)/iu.test(
      text,
    ) ||
    /^(?:\(?[HL]{1,2}\)?|\*{1,2}|low|high|normal|[\u2191\u2193])$/iu.test(text)
  );
}
