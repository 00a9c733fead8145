// Any file arrives; written reports leave, each on its own. The door of the room.
import { faulty, type Problem } from '../problem.js';
import { readCsv } from './csv/index.js';
import { addPatient } from './add-patient.js';
import { readFhir } from './fhir/index.js';
import { decodeMessage } from './hl7v2/charset.js';
import { readHl7 } from './hl7v2/index.js';
import { fromParts, jsonParts } from './json/index.js';
import { sniff } from './sniff.js';
import type { ColumnMap } from './table/column-map.js';
import { readText } from './text/index.js';
import type { InputFile, Intake, WrittenPatient } from './written.js';

export { reportFileSchema } from './json/index.js';
export { largestFile } from './sniff.js';
export { readAge } from './table/person.js';
export { readColumnMap } from './table/column-map.js';
export { proposeColumns } from './table/propose.js';

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
  return { ...whole, ignored: [...notes, ...intake.ignored] };
}

async function readAs(
  format: Intake['format'],
  file: InputFile,
  text: string,
  { columns = {} }: InputOptions,
): Promise<Intake> {
  const { name, bytes } = file;
  if (format === 'json' || format === 'fhir') return readJsonOf(name, text);
  if (format === 'csv') return readCsv(name, text, columns);
  if (format === 'hl7v2') return readHl7(name, decodeMessage(name, bytes).text);
  if (format === 'text') return readText(name, text);
  const { readXlsx } = await import('./xlsx/index.js');
  return readXlsx(file, columns);
}

/** JSON is ours or FHIR's; a resource says its type. */
function readJsonOf(name: string, text: string): Intake {
  const parts = jsonParts(name, text);
  const isResource = parts.some(
    (part) =>
      'value' in part &&
      typeof part.value === 'object' &&
      part.value !== null &&
      'resourceType' in part.value,
  );
  if (isResource) return readFhir(name, parts);
  return { format: 'json', reports: fromParts(name, parts), ignored: [] };
}

function refused(format: Intake['format'], problem: Problem): Intake {
  return { format, reports: [faulty([problem])], ignored: [] };
}
