// The text of a CSV file arrives; its rows of cells leave, or why the text cannot be cut.
import { CsvError, parse } from 'csv-parse/sync';
import { type Checked, faulty, fine } from '../../problem.js';
import { at, fault } from '../fault.js';
import { meaningOfColumn, meaningOfName } from '../names.js';
import type { Table, TableRow } from '../table/table.js';
import { testHeader } from '../table/test-header.js';

const delimiters = ['\t', ';', ',', '|'] as const;

/**
 * Cuts a text into rows. One delimiter holds for the whole file, told from its header.
 * Problems: a quote left open, a quote inside a bare cell, no columns. Blank rows are passed over.
 */
export function splitRows(name: string, text: string): Checked<Table> {
  const { body, delimiter, skipped } = withoutSepLine(text);
  const rows: TableRow[] = [];
  let lastGood = 0;
  try {
    parse(body, {
      delimiter: delimiter ?? sniffDelimiter(body),
      relax_column_count: true,
      onRecord: (cells, { lines }) => {
        lastGood = lines;
        if (cells.some((cell) => cell.trim() !== '')) rows.push({ row: lines + skipped, cells });
        return null;
      },
    });
    const [header, ...rest] = rows;
    if (header === undefined || header.cells.length < 2) {
      const none = fault(
        'no-columns',
        at(name, header?.row ?? 1),
        'cannot find columns in the first row',
        {
          expected: 'names of columns with a comma, semicolon, tab or | between them',
        },
      );
      return faulty([none]);
    }
    return fine({ file: name, header, rows: rest });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return faulty([quoteProblem(name, error, lastGood + 1 + skipped, skipped)]);
  }
}

function quoteProblem(name: string, error: CsvError, opened: number, skipped: number) {
  if (error.code === 'CSV_QUOTE_NOT_CLOSED')
    return fault('open-quote', at(name, opened), 'cannot find the end of a quoted cell', {
      expected: 'a closing "',
    });
  const lines: unknown = error.lines;
  const row = typeof lines === 'number' ? lines + skipped : opened;
  return fault('stray-quote', at(name, row), 'cannot read a quote in the middle of a cell', {
    expected: 'the whole cell in quotes, and "" for a quote inside it',
  });
}

/** Spreadsheets put 'sep=;' before the header; to every parser it would be data. */
function withoutSepLine(text: string) {
  const plain = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const [line, sign] = /^sep=(.)(?:\r\n|\r|\n)/i.exec(plain) ?? [];
  if (line === undefined) return { body: plain, delimiter: null, skipped: 0 };
  return { body: plain.slice(line.length), delimiter: sign ?? null, skipped: 1 };
}

/** The first columns are enough to tell the delimiter. */
const longestHeader = 20_000;

/** The sign that cuts the header into the most names we know, then into the most names. */
function sniffDelimiter(text: string): string {
  const line = /^[^\r\n]*\S[^\r\n]*/m.exec(text.slice(0, longestHeader))?.[0] ?? '';
  const outside = line.replace(/"[^"]*"/g, (quoted) => quoted.replace(/[\t;,|]/g, ' '));
  const scored = delimiters.map((delimiter) => {
    const names = outside.split(delimiter).map((name) => name.replaceAll('"', '').trim());
    const known = names.filter(
      (name) => meaningOfColumn(name) !== null || meaningOfName(testHeader(name).name) !== null,
    );
    return { delimiter, known: names.length > 1 ? known.length : 0, count: names.length };
  });
  return scored.reduce((best, one) =>
    one.known > best.known || (one.known === best.known && one.count > best.count) ? one : best,
  ).delimiter;
}
