// A whole file arrives; written reports leave. Each reader is loaded when a file asks for it: a start waits for no other.
import { faulty, type Problem } from '../problem.js';
import { addPatient } from './add-patient.js';
import { isResource } from './fhir/whose.js';
import { fillPart } from './json/fill-part.js';
import { fromParts, jsonParts } from './json/index.js';
import { sniff } from './sniff.js';
import type { ColumnMap } from './table/column-map.js';
import type { InputFile, Intake, WrittenPatient } from './written.js';

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

async function readAs(
  format: Intake['format'],
  file: InputFile,
  text: string,
  { columns = {}, patient = {}, collected }: InputOptions,
): Promise<Intake> {
  const { name } = file;
  switch (format) {
    case 'json':
    case 'fhir':
      return readJsonOf(name, text, patient, collected ?? null);
    case 'csv': {
      const { readCsv } = await import('./csv/index.js');
      return readCsv(name, text, columns);
    }
    case 'hl7v2': {
      const { readHl7 } = await import('./hl7v2/index.js');
      return readHl7(file);
    }
    case 'text': {
      const { readText } = await import('./text/index.js');
      return readText(name, text);
    }
    case 'xlsx': {
      const { readXlsx } = await import('./xlsx/index.js');
      return readXlsx(file, columns);
    }
  }
}

/** JSON is ours or FHIR's; a resource says its type. */
async function readJsonOf(
  name: string,
  text: string,
  patient: Partial<WrittenPatient>,
  collected: string | null,
): Promise<Intake> {
  const parts = jsonParts(name, text);
  if (parts.some(isResource)) {
    const { readFhir } = await import('./fhir/index.js');
    return readFhir(name, parts);
  }
  const [only] = parts;
  const said =
    parts.length === 1 && only !== undefined ? [fillPart(only, patient, collected)] : parts;
  return { format: 'json', reports: fromParts(name, said), ignored: [] };
}

function refused(format: Intake['format'], problem: Problem): Intake {
  return { format, reports: [faulty([problem])], ignored: [] };
}
