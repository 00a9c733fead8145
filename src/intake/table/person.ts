// One row arrives; what it says of the person and the sample leaves, with its problems.
import type { Problem } from '../../problem.js';
import { readAge } from '../age-as-written.js';
import { blankContext, blankPatient } from '../blank.js';
import { type DateAsWritten, readDate } from '../date-as-written.js';
import { at, fault } from '../fault.js';
import { type ColumnMeaning, sexOf } from '../names.js';
import type { WrittenPatient } from '../written.js';
import { cellOf, columnOf, type Proved } from './cells.js';
import type { Plan } from './plan.js';
import type { RowFacts } from './row-facts.js';
import type { TableRow } from './table.js';

/** Facts of a row without its results. Cells left empty are null. */
export function personOf(file: string, plan: Plan, proved: Proved, row: TableRow): RowFacts {
  const problems: Problem[] = [];
  const cell = (meaning: ColumnMeaning) => cellOf(plan, row, meaning);
  const refuse = (
    meaning: ColumnMeaning,
    cannot: string,
    expected: string,
    found: string | null,
  ) => {
    const field = columnOf(plan, meaning)?.header ?? meaning;
    problems.push(fault(`bad-${meaning}`, at(file, row.row, field), cannot, { expected, found }));
    return null;
  };
  const read = <T>(
    meaning: ColumnMeaning,
    reader: (text: string) => T | null,
    cannot: string,
    expected: string,
  ): T | null => {
    const text = cell(meaning);
    if (text === null) return null;
    const found = personal.has(meaning) ? null : text;
    return reader(text) ?? refuse(meaning, cannot, expected, found);
  };
  const list = (meaning: ColumnMeaning) =>
    (cell(meaning) ?? '')
      .split(/[;|]/)
      .map((word) => word.trim())
      .filter((word) => word !== '');
  const asDate = 'cannot read this as a date';
  const collected = read(
    'collected',
    (text) => readDate(text, proved.collected),
    asDate,
    'such as 2026-11-25',
  );
  const birth = read(
    'birthDate',
    (text) => readDate(text, proved.birthDate),
    asDate,
    'such as 1984-03-09',
  );
  const age = read(
    'ageYears',
    readAge,
    'cannot read this as an age',
    'whole years such as 34, or months such as 8 months',
  );
  const weeks = read('pregnancyWeeks', wholeNumber, notWhole, 'weeks such as 20');
  const pregnant = read('pregnant', yesOrNo, 'cannot tell yes from no', 'yes or no');
  const trimester = read('trimester', wholeNumber, notWhole, '1, 2 or 3');
  return {
    row: row.row,
    collected: collected?.date ?? null,
    language: cell('language'),
    results: [],
    patient: {
      ...blankPatient,
      id: cell('id'),
      name: nameOf(cell),
      birthDate: birth?.date ?? null,
      ageYears: age?.years ?? null,
      ageMonths: age?.months ?? null,
      sex: read(
        'sex',
        (word) => sexOf(word, proved.sexLetters, columnOf(plan, 'sex')?.header ?? ''),
        'cannot tell the sex from this word',
        'female, male or unknown',
      ),
      pregnancy:
        weeks === null && trimester === null && pregnant !== true ? null : { weeks, trimester },
      conditions: list('conditions'),
      medicines: list('medicines'),
    },
    context: {
      ...blankContext,
      symptoms: list('symptoms'),
      bleeding: list('bleeding'),
      fasting: read('fasting', yesOrNo, 'cannot tell yes from no', 'yes or no'),
      sampleTime:
        read('sampleTime', timeOfDay, 'cannot read this as a time', 'such as 08:40') ??
        timeIn(collected),
    },
    problems,
  };
}

const personal: ReadonlySet<ColumnMeaning> = new Set(['birthDate', 'name', 'ageYears']);
const notWhole = 'cannot read this as a whole number';

function timeIn(collected: DateAsWritten | null): string | null {
  return collected?.time ?? null;
}

function nameOf(cell: (meaning: ColumnMeaning) => string | null): WrittenPatient['name'] {
  const parts = [cell('givenName'), cell('surname')].filter((part) => part !== null);
  return cell('name') ?? (parts.length === 0 ? null : parts.join(' '));
}

function wholeNumber(text: string): number | null {
  return /^\d{1,3}$/.test(text) ? Number(text) : null;
}

function timeOfDay(text: string): string | null {
  const [, hour, minute] = /^([01]?\d|2[0-3]):([0-5]\d)(?::\d{2})?$/.exec(text) ?? [];
  return hour === undefined || minute === undefined ? null : `${hour.padStart(2, '0')}:${minute}`;
}

function yesOrNo(text: string): boolean | null {
  if (/^(?:y|yes|true|1)$/i.test(text)) return true;
  return /^(?:n|no|false|0)$/i.test(text) ? false : null;
}
