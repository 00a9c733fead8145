// A file as handed in arrives; the format its content shows leaves, or why no reader can take it.
import type { Problem } from '../problem.js';
import { decode } from './decode.js';
import { at, fault } from './fault.js';
import { meaningOfColumn } from './names.js';
import type { LargeFile } from './large-file.js';
import type { Intake, InputFile } from './written.js';

/** Bytes of a file that is read as a whole, for one patient or to be looked over. */
export const largestFile = 8 * 1024 * 1024;
/** Bytes of a file read report by report. */
const largestEvening = 1024 * 1024 * 1024;

type Format = Intake['format'];

export type Sniffed =
  | { readonly format: Format; readonly text: string; readonly notes: readonly Problem[] }
  | { readonly problem: Problem };

const magic: readonly (readonly [signature: string, what: string, remedy: string | null])[] = [
  ['25504446', 'a PDF file', 'Open it, copy the results and paste them.'],
  ['d0cf11e0', 'an old Excel file (.xls)', 'Save it as .xlsx or .csv.'],
  ['1f8b', 'a compressed file', 'Unpack it first.'],
  ['89504e47', 'a picture', 'Copy the results as text.'],
  ['ffd8ff', 'a picture', 'Copy the results as text.'],
];

/**
 * Format by content first and by name where content fits several.
 * Problems: empty, too large, binary. Limits: 8 MB.
 */
export function sniff({ name, bytes }: InputFile): Sniffed {
  if (bytes.length > largestFile) return { problem: tooLarge(name, bytes.length, largestFile) };
  const start = formatOfStart(name, bytes);
  if (typeof start !== 'string') return { problem: start };
  if (start === 'xlsx') return { format: 'xlsx', text: '', notes: [] };
  const { text, notes } = decode(name, bytes);
  if (text.trim() === '') return { problem: empty(name) };
  return { format: formatOf(name, text), text, notes };
}

/** Format of a file too long to look at as a whole, from its first bytes. Problems: as `sniff`. */
export function sniffStart(file: LargeFile): Format | Problem {
  const { name, size, read } = file;
  if (size > largestEvening) return tooLarge(name, size, largestEvening);
  const bytes = read(0, Math.min(size, 4 * headLength));
  const start = formatOfStart(name, bytes);
  if (start !== 'text') return start;
  const { text } = decode(name, bytes);
  return text.trim() === '' ? empty(name) : formatOf(name, text);
}

function formatOfStart(name: string, bytes: Uint8Array): 'xlsx' | 'text' | Problem {
  const start = [...bytes.subarray(0, 4)]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
  if (start === '504b0304') return 'xlsx';
  const known = magic.find(([signature]) => start.startsWith(signature));
  if (known !== undefined) return notText(name, `cannot read ${known[1]}`, known[2]);
  return isBinary(bytes) ? notText(name, 'cannot read a binary file', null) : 'text';
}

function formatOf(name: string, text: string): Format {
  const head = text.slice(0, headLength).trimStart();
  if (/^\v?\s*(?:MSH|FHS|BHS)[^\w\s]/.test(text.slice(0, headLength))) return 'hl7v2';
  if (/^[{[]/.test(head) || /\.(?:json|ndjson|jsonl)$/i.test(name)) {
    return 'json';
  }
  if (/\.(?:csv|tsv)$/i.test(name) || /^sep=/i.test(head)) return 'csv';
  return headsTable(head) ? 'csv' : 'text';
}

/** Text without a telling name: a first line of columns we know, with commas or semicolons between them. */
function headsTable(head: string): boolean {
  const [first = '', second = ''] = head.split(/\r\n|\r|\n/);
  return [',', ';'].some((sign) => {
    const names = first.split(sign).map((cell) => cell.replaceAll('"', '').trim());
    const known = names.filter((name) => meaningOfColumn(name) !== null);
    return names.length > 2 && known.length * 2 >= names.length && second.includes(sign);
  });
}

const headLength = 4096;

/** Bytes that no text has: a NUL outside UTF-16, or many control signs. */
function isBinary(bytes: Uint8Array): boolean {
  const head = bytes.subarray(0, headLength);
  const marked = (head[0] === 0xff && head[1] === 0xfe) || (head[0] === 0xfe && head[1] === 0xff);
  if (marked) return false;
  const odd = head.filter((byte) => byte < 9 || (byte > 13 && byte < 27) || byte === 127);
  return bytes.subarray(0, headLength).includes(0) || odd.length * 20 > head.length;
}

function empty(name: string): Problem {
  return fault('empty-file', at(name, null), 'cannot read an empty file', { expected: 'a report' });
}

function notText(name: string, cannot: string, remedy: string | null): Problem {
  return fault('binary-file', at(name, null), cannot, {
    expected: 'JSON, CSV, XLSX, FHIR, HL7 v2 or plain text',
    remedy,
  });
}

/** @param largest bytes of a file of this kind. */
export function tooLarge(name: string, size: number, largest: number): Problem {
  const megabytes = (bytes: number) => Math.ceil(bytes / 1024 / 1024);
  return fault('too-large', at(name, null), `cannot read a file of ${megabytes(size)} MB`, {
    expected: `at most ${megabytes(largest)} MB`,
    remedy:
      largest === largestEvening
        ? 'Split it into several files.'
        : 'For many patients use ironleaf mailing, which reads CSV, HL7 v2, NDJSON and lists in JSON of any length.',
  });
}
