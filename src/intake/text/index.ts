// Pasted text arrives; one written report leaves, with every line understood, doubtful or passed over with why.
import { faulty, fine, type Problem } from '../../problem.js';
import { blankContext } from '../blank.js';
import { orderProvedBy } from '../date-as-written.js';
import { at, fault } from '../fault.js';
import { isPanelTitle } from '../names.js';
import { provesDecimalComma } from '../number-as-written.js';
import { orderPanels } from '../order-panels.js';
import { testHeader } from '../table/test-header.js';
import { whichAnalyte } from '../which-analyte.js';
import type { Intake } from '../written.js';
import { cellsOf, columnsOf } from './columns.js';
import { type DateBeside, dateBeside } from './date-beside.js';
import { factsOf } from './facts.js';
import { lineParts, severalResults } from './line.js';
import { logicalLines, mostLines } from './logical-lines.js';
import { Reading } from './reading.js';
import { readTableLine } from './table-line.js';
import { takeDay, takeFact } from './take-fact.js';
import { takeResult } from './take-result.js';

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
  const { facts, rest } = factsOf(line);
  if (facts.length > 0) {
    for (const fact of facts) takeFact(reading, fact, row);
    for (const stretch of rest) readLine(reading, stretch, row);
    return;
  }
  const columns = columnsOf(line, reading.order);
  if (columns !== null) {
    if (
      columns.some((column) => column.holds === 'value' && column.collected === null) &&
      /\d[/.-]\d/.test(line)
    )
      reading.askOrder(row);
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
  if (date === null) reading.askOrder(row);
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
