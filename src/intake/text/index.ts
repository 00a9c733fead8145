// Pasted text arrives; one written report leaves, with every line understood, doubtful or passed over with why.
import { faulty, fine, type Problem } from '../../problem.js';
import { blankContext } from '../blank.js';
import { type DateAsWritten, orderProvedBy, readDate } from '../date-as-written.js';
import { at, fault } from '../fault.js';
import { readInterval } from '../interval-as-written.js';
import { isPanelTitle, sexOf } from '../names.js';
import { provesDecimalComma } from '../number-as-written.js';
import { orderPanels } from '../order-panels.js';
import { isOpen, openPregnancy, saysYes, weeksOfPregnancy } from '../pregnancy-as-written.js';
import { readAge } from '../table/person.js';
import { testHeader } from '../table/test-header.js';
import { whichAnalyte } from '../which-analyte.js';
import type { Intake, WrittenPatient } from '../written.js';
import { cellsOf, columnsOf, type TextColumn } from './columns.js';
import { type DateBeside, dateBeside } from './date-beside.js';
import { type Fact, factsOf } from './facts.js';
import { lineParts, severalResults } from './line.js';
import { logicalLines, mostLines } from './logical-lines.js';
import { filledUp, isPlainResult, valueCell } from './table-cells.js';
import { Reading, takeResult } from './take-result.js';

/**
 * Reads text copied from a record or a letter: lines with a test, a value, a unit, an interval and a mark,
 * tables with a column for each date, and facts such as 'Sex: F'. The sex may be missing.
 * @example readText('pasted text', 'Ferritin   9 ug/L  (30 - 400)  L').reports
 */
export function readText(name: string, text: string): Intake {
  const lines = logicalLines(text);
  if (lines === null) return { format: 'text', reports: [faulty([tooLong(name)])], ignored: [] };
  const dates = text.match(/(?<![\d/.-])\d{1,2}([/.-])\d{1,2}\1\d{4}(?!\d)/g) ?? [];
  const numbers = text.match(/(?<![\d.,])\d+,\d+(?![\d.,])/g) ?? [];
  const reading = new Reading(name, orderProvedBy(dates), numbers.some(provesDecimalComma));
  for (const line of lines) readLine(reading, line.text, line.row);
  const report = reportOf(reading);
  const partly = report.ok ? [] : reading.dated.map(({ result }) => result);
  return { format: 'text', reports: [report], ignored: reading.ignored, partly };
}

function tooLong(name: string): Problem {
  return fault('too-many', at(name, null), 'cannot read a text of so many lines', {
    expected: `at most ${mostLines}`,
    remedy: 'For many patients use a table, FHIR or HL7 v2.',
  });
}

function readLine(reading: Reading, line: string, row: number): void {
  const facts = factsOf(line);
  if (facts.length > 0) {
    for (const fact of facts) takeFact(reading, fact, row);
    return;
  }
  const columns = columnsOf(line, reading.order);
  if (columns !== null) {
    if (
      columns.some((column) => column.holds === 'value' && column.collected === null) &&
      /\d[/.-]\d/.test(line)
    )
      reading.problems.push(dayOrMonth(reading.file, row));
    reading.columns = columns;
    return;
  }
  if (reading.columns !== null && readTableLine(reading, line, row, reading.columns)) return;
  const dated = dateBeside(line, reading.order);
  if (dated === null) readPlainLine(reading, line, row);
  else readDatedLine(reading, dated, row);
}

/** A result with its day before it, or a title with its day: the results below are of that day. */
function readDatedLine(reading: Reading, { date, text }: DateBeside, row: number): void {
  if (date === null) reading.problems.push(dayOrMonth(reading.file, row));
  else if (isPanelTitle(text)) takeDay(reading, date);
  else readPlainLine(reading, text, row, date.date);
}

function readPlainLine(
  reading: Reading,
  line: string,
  row: number,
  collected: string | null = reading.collected,
): void {
  const pieces = severalResults(line);
  if (pieces !== null) {
    for (const piece of pieces) readPlainLine(reading, piece, row, collected);
    return;
  }
  const parts = lineParts(line);
  if (parts === null) {
    const { name } = testHeader(cellsOf(line)[0] ?? '');
    const which = whichAnalyte({ name, code: null, unit: null, specimen: null });
    const ours = which.is === 'analyte';
    reading.pass(
      row,
      ours
        ? `cannot find a value of ${which.analyte} in this line`
        : 'cannot find a test with a value in this line',
    );
    return;
  }
  const status = statusIn(parts.leftOver);
  if (status === 'void') {
    reading.pass(row, 'passed over: the line says that its result does not stand');
    return;
  }
  const taken = takeResult(reading, { ...parts, status }, collected, row);
  if (!taken || parts.leftOver === '') return;
  if (/\d/.test(parts.leftOver)) {
    reading.problems.push(
      fault(
        'doubtful-line',
        at(reading.file, row, parts.name),
        'cannot tell what the other numbers of this line are',
        {
          found: parts.leftOver,
          expected: 'a test, its value, its unit and its interval',
        },
      ),
    );
  } else reading.pass(row, 'passed over the words behind the result');
}

/** What the words behind a result say of it. */
function statusIn(words: string): 'void' | 'corrected' | 'preliminary' | null {
  if (
    /\b(?:cancell?ed|withdrawn|deleted|voided|rejected|entered[\s-]+in[\s-]+error)\b/i.test(words)
  )
    return 'void';
  if (/\b(?:corrected|amended|revised)\b/i.test(words)) return 'corrected';
  return /\b(?:preliminary|provisional|interim)\b/i.test(words) ? 'preliminary' : null;
}

/** A line of the table headed above; false when it does not fit the header. */
function readTableLine(
  reading: Reading,
  line: string,
  row: number,
  columns: readonly TextColumn[],
): boolean {
  const cells = filledUp(cellsOf(line), columns, line.includes('\t'));
  if (cells.every((cell) => /^[-:=]+$/.test(cell))) return true;
  if (cells.length !== columns.length) {
    if (isPlainResult(cells, columns)) return false;
    if (cells.length > 2) reading.columns = null;
    if (
      cells.length < 2 ||
      whichAnalyte({ name: cells[0] ?? '', code: null, unit: null, specimen: null }).is !==
        'analyte'
    )
      return false;
    reading.problems.push(
      fault('ragged-row', at(reading.file, row), 'cannot tell which cell belongs to which column', {
        found: `${cells.length} cells`,
        expected: `${columns.length}, as in the header above`,
      }),
    );
    reading.columns = columns;
    return true;
  }
  const cell = (wanted: TextColumn['holds']) => {
    const text = cells[columns.findIndex(({ holds }) => holds === wanted)] ?? '';
    return text === '' ? null : text;
  };
  const header = testHeader(cell('test') ?? '');
  const day = cell('collected');
  const own = day === null ? null : readDate(day, reading.order);
  if (day !== null && own === null) {
    reading.problems.push(dayOrMonth(reading.file, row));
    return true;
  }
  const [low, high] = [cell('low'), cell('high')];
  columns.forEach((column, i) => {
    if (column.holds !== 'value') return;
    const inside = valueCell(cells[i] ?? '');
    const unit = cell('unit') ?? inside.unit ?? header.unit;
    const printed = readInterval(cell('range'), unit);
    const interval = printed ?? (low === null && high === null ? null : { low, high, text: null });
    const { value } = inside;
    const said = {
      name: header.name,
      value,
      unit,
      interval,
      flag: inside.flag ?? cell('flag'),
      status: cell('status'),
      specimen: cell('specimen'),
    };
    const collected = column.collected ?? own?.date ?? reading.collected;
    if (value !== '') takeResult(reading, said, collected, row);
  });
  return true;
}

function takeFact(reading: Reading, { meaning, text }: Fact, row: number): void {
  const refuse = (cannot: string, expected: string) =>
    reading.problems.push(
      fault(`bad-${meaning}`, at(reading.file, row, meaning), cannot, { expected }),
    );
  const set = (facts: Partial<WrittenPatient>) => {
    for (const [key, value] of Object.entries(facts)) {
      const said = reading.patient[key as keyof WrittenPatient];
      const before = key === 'pregnancy' && isOpen(reading.patient.pregnancy) ? null : said;
      if (before !== null && value !== null && JSON.stringify(before) !== JSON.stringify(value))
        refuse(
          'cannot tell whose results these are: the text says something else above',
          'the results of one person',
        );
    }
    reading.patient = { ...reading.patient, ...facts };
  };
  if (meaning === 'pregnancyWeeks' || meaning === 'pregnant') {
    if (/^(?:no|n|false)$/i.test(text)) return;
    const weeks = weeksOfPregnancy(/^\d{1,2}$/.test(text) ? `${text} weeks` : text, null);
    if (weeks !== null) set({ pregnancy: { weeks, trimester: null } });
    else if (meaning === 'pregnant' && saysYes(text)) set({ pregnancy: openPregnancy });
    else refuse('cannot read the weeks of the pregnancy', 'weeks such as 20');
  }
  if (meaning === 'id') set({ id: text });
  if (meaning === 'name') set({ name: text });
  if (meaning === 'sex') {
    const sex = sexOf(text, new Set());
    if (sex === null) refuse('cannot tell the sex from this word', 'female, male or unknown');
    else set({ sex });
  }
  if (meaning === 'ageYears') {
    const age = readAge(text);
    if (age === null) refuse('cannot read this as an age', 'whole years such as 34');
    else set({ ageYears: age.years, ageMonths: age.months });
  }
  if (meaning === 'fasting')
    reading.fasting = /^(?:y|yes|true)$/i.test(text)
      ? true
      : /^(?:n|no|false)$/i.test(text)
        ? false
        : null;
  if (meaning !== 'birthDate' && meaning !== 'collected') return;
  const date = readDate(text, reading.order);
  if (date === null)
    refuse('cannot read this as a date, or tell the day from the month', 'such as 2026-11-25');
  else if (meaning === 'birthDate') set({ birthDate: date.date });
  else takeDay(reading, date);
}

function takeDay(reading: Reading, { date, time }: DateAsWritten): void {
  reading.collected = date;
  if (time !== null) reading.times.set(date, time);
}

function dayOrMonth(file: string, row: number): Problem {
  return fault('day-or-month', at(file, row), 'cannot tell the day from the month in these dates', {
    expected: 'dates such as 2026-11-25',
  });
}

function reportOf(reading: Reading) {
  if (reading.problems.length > 0) return faulty<never>(reading.problems);
  if (reading.dated.length === 0) {
    return faulty<never>([
      fault('no-results', at(reading.file, null), 'cannot find an iron result in this text', {
        expected: "a line such as 'Ferritin   9 ug/L  (30 - 400)  L'",
      }),
    ]);
  }
  const { panel, previous } = orderPanels(reading.dated);
  const sampleTime = reading.times.get(panel.collected) ?? null;
  return fine({
    place: at(reading.file, reading.dated[0]?.result.place.row ?? null),
    patient: reading.patient,
    panel,
    context: { ...blankContext, fasting: reading.fasting, sampleTime },
    previous,
    wishes: null,
  });
}
