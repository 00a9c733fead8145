// The text of a CSV file arrives; its rows of cells leave, or why the text cannot be cut.
import { type Checked, faulty, fine } from '../../problem.js';
import { markLength } from '../decode.js';
import { type Encoded, utf8 } from '../encoding.js';
import { at, fault } from '../fault.js';
import { inMemory } from '../large-file.js';
import { meaningOfColumn, meaningOfName } from '../names.js';
import type { Table, TableRow } from '../table/table.js';
import { testHeader } from '../table/test-header.js';
import { readRows, Uncut } from './read-rows.js';

const delimiters = ['\t', ';', ',', '|'] as const;

/**
 * Cuts a text into rows. One delimiter holds for the whole file, told from its header.
 * Problems: a quote left open, a quote inside a bare cell, no columns. Blank rows are passed over.
 */
export function splitRows(name: string, text: string): Checked<Table> {
  const file = inMemory({ name, bytes: new TextEncoder().encode(text) });
  try {
    const { header, rows } = openRows({ file, textOf: utf8, notes: [] });
    return fine({ file: name, header, rows: [...rows] });
  } catch (fault) {
    if (fault instanceof Uncut) return faulty([fault.problem]);
    throw fault;
  }
}

/** A table's header, and its rows as they are asked for. @throws Uncut */
export function openRows(encoded: Encoded) {
  const { from, delimiter } = beginningOf(encoded);
  const rows = readRows(encoded, from, delimiter);
  const header: TableRow | undefined = rows.next().value ?? undefined;
  if (header === undefined || header.cells.length < 2) {
    throw new Uncut(
      fault(
        'no-columns',
        at(encoded.file.name, header?.row ?? 1),
        'cannot find columns in the first row',
        {
          expected: 'names of columns with a comma, semicolon, tab or | between them',
        },
      ),
    );
  }
  return { header, rows, delimiter };
}

/** The first columns are enough to tell the delimiter. */
const longestHeader = 20_000;

/** Spreadsheets put a byte-order mark and 'sep=;' before the header; to every parser it would be data. */
function beginningOf({ file, textOf }: Encoded) {
  const head = file.read(0, Math.min(file.size, longestHeader));
  const marked = markLength(head);
  const text = textOf(head.subarray(marked));
  const [line, sign] = /^sep=(.)(?:\r\n|\r|\n)/i.exec(text) ?? [];
  if (line === undefined || sign === undefined)
    return { from: marked, delimiter: sniffDelimiter(text) };
  return { from: marked + new TextEncoder().encode(line).length, delimiter: sign };
}

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
