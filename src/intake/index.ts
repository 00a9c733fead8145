// Any file arrives; written reports leave, each on its own. The door of the room.
import { faulty, type Problem } from '../problem.js';
import { readCsv } from './csv/index.js';
import { addPatient } from './add-patient.js';
import { csvSource } from './csv/source.js';
import { readFhir } from './fhir/index.js';
import { isResource } from './fhir/whose.js';
import { encodingOf } from './encoding.js';
import { decodeMessage, encodedMessages } from './hl7v2/charset.js';
import { readHl7 } from './hl7v2/index.js';
import { hl7Source } from './hl7v2/source.js';
import { fromParts, jsonParts } from './json/index.js';
import { fillPart } from './json/fill-part.js';
import { jsonSource } from './json/source.js';
import { inWindows, type LargeFile } from './large-file.js';
import { type ReportSource, refusedSource, sourceOf } from './report-source.js';
import { largestFile, sniff, sniffStart, tooLarge } from './sniff.js';
import type { ColumnMap } from './table/column-map.js';
import { readText } from './text/index.js';
import type { InputFile, Intake, WrittenPatient } from './written.js';

export type { LargeFile } from './large-file.js';
export type { ReportRead, ReportSource } from './report-source.js';
export { reportFileSchema } from './json/index.js';
export { largestFile } from './sniff.js';
export { readAge } from './age-as-written.js';
export { readColumnMap } from './table/column-map.js';
export { proposeColumns } from './propose-columns.js';

export type InputOptions = {
  /** What a laboratory's columns mean, for tables. */
  readonly columns?: ColumnMap;
  /** What the operator says of the one person in the file. */
  readonly patient?: Partial<WrittenPatient>;
  /** ISO day of the sample, where the file does not say it. */
  readonly collected?: string;
};

/**
 * Reads a file of any known format; the format is told from the content, then from the name.
 * Every problem is a value, in its report or, for the whole file, as the only report.
 * @example (await readInput({ name: 'ada.json', bytes })).reports
 */
export async function readInput(file: InputFile, options: InputOptions = {}): Promise<Intake> {
  const sniffed = sniff(file);
  if ('problem' in sniffed) return refused('text', sniffed.problem);
  const { format, text, notes } = sniffed;
  const intake = await readAs(format, file, text, options);
  const whole = addPatient(intake, options.patient ?? {}, options.collected ?? null);
  // A message says its own encoding, and its reader tells what had to be guessed.
  const told = format === 'hl7v2' ? [] : notes;
  return { ...whole, ignored: [...told, ...intake.ignored] };
}

/**
 * Opens a file whose reports are read one at a time, so that its length costs hardly any memory: tables, messages,
 * one JSON object a line and lists in JSON. Spreadsheets, pasted text and one object alone are read as a whole.
 * The same reports as `readInput` gives, except that a broken object of a list spoils only itself.
 * @example (await openReports(file, {})).read(0).report
 */
export async function openReports(
  file: LargeFile,
  { columns = {} }: Pick<InputOptions, 'columns'> = {},
): Promise<ReportSource> {
  const format = sniffStart(file);
  if (typeof format !== 'string') return refusedSource('text', [format]);
  const source = opened(format, inWindows(file), columns);
  if (source !== null) return source;
  if (file.size > largestFile)
    return refusedSource(format, [tooLarge(file.name, file.size, largestFile)]);
  const bytes = file.read(0, file.size);
  return sourceOf(await readInput({ name: file.name, bytes }, { columns }));
}

/** Null for a format, or a form of it, that only reading the whole can cut. */
function opened(
  format: Intake['format'],
  file: LargeFile,
  columns: ColumnMap,
): ReportSource | null {
  if (format !== 'csv' && format !== 'hl7v2' && format !== 'json') return null;
  const encoded = format === 'hl7v2' ? encodedMessages(file) : encodingOf(file);
  if (encoded.file.size === 0) return null;
  const source =
    format === 'csv'
      ? csvSource(encoded, columns)
      : format === 'hl7v2'
        ? hl7Source(encoded)
        : jsonSource(encoded);
  return source === null ? null : { ...source, ignored: [...encoded.notes, ...source.ignored] };
}

async function readAs(
  format: Intake['format'],
  file: InputFile,
  text: string,
  { columns = {}, patient = {}, collected }: InputOptions,
): Promise<Intake> {
  const { name, bytes } = file;
  switch (format) {
    case 'json':
    case 'fhir':
      return readJsonOf(name, text, patient, collected ?? null);
    case 'csv':
      return readCsv(name, text, columns);
    case 'hl7v2': {
      const { text: decoded, notes } = decodeMessage(name, bytes);
      const intake = readHl7(name, decoded);
      return { ...intake, ignored: [...notes, ...intake.ignored] };
    }
    case 'text':
      return readText(name, text);
    case 'xlsx': {
      const { readXlsx } = await import('./xlsx/index.js');
      return readXlsx(file, columns);
    }
  }
}

/** JSON is ours or FHIR's; a resource says its type. */
function readJsonOf(
  name: string,
  text: string,
  patient: Partial<WrittenPatient>,
  collected: string | null,
): Intake {
  const parts = jsonParts(name, text);
  if (parts.some(isResource)) return readFhir(name, parts);
  const [only] = parts;
  const said =
    parts.length === 1 && only !== undefined ? [fillPart(only, patient, collected)] : parts;
  return { format: 'json', reports: fromParts(name, said), ignored: [] };
}

function refused(format: Intake['format'], problem: Problem): Intake {
  return { format, reports: [faulty([problem])], ignored: [] };
}
