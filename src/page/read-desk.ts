// The desk arrives; what the readers and the measuring room make of it leaves, with what is still needed.
import { type Understood, understand } from '../app/understand.js';
import { largestFile, readAge, readInput } from '../intake/index.js';
import type { InputFile, WrittenPatient, WrittenReport, WrittenResult } from '../intake/written.js';
import { isHeld } from '../letter/index.js';
import type { Problem } from '../problem.js';
import type { Desk, Person, Source } from './desk.js';
import { writeReportFile } from './write-report-file.js';

export type Need = 'results' | 'sex' | 'collected';

export type Reading = {
  /** Every report of the file; names are for the eyes of whoever holds the file. */
  readonly reports: readonly { readonly label: string | null }[];
  readonly written: WrittenReport | null;
  /** By what the results tell one person from another, whatever was typed beside them; null where nothing says it. */
  readonly identity: string | null;
  readonly understood: Understood | null;
  /** Results that could be read in a report that as a whole could not: to be shown, never to be used. */
  readonly partly: readonly WrittenResult[];
  /** Lines and fields that were passed over, with why. */
  readonly ignored: readonly Problem[];
  readonly problems: readonly Problem[];
  readonly needs: readonly Need[];
  /** Whatever is still needed, these values are such that nobody should wait for it. */
  readonly urgent: boolean;
};

/** Before anything was put on the desk. */
export const nothing: Reading = {
  reports: [],
  written: null,
  identity: null,
  understood: null,
  partly: [],
  ignored: [],
  problems: [],
  needs: ['results'],
  urgent: false,
};

/**
 * Reads what lies on the desk with the readers of the command line.
 * @param today ISO date.
 */
export async function readDesk(desk: Desk, today: string): Promise<Reading> {
  const file = fileOf(desk.source);
  if (file === null) return nothing;
  const intake = await readInput(file);
  const chosen = intake.reports[desk.which] ?? intake.reports[0];
  const reports = intake.reports.map((report) => ({
    label: report.ok ? labelOf(report.value) : null,
  }));
  const { ignored } = intake;
  if (chosen === undefined || !chosen.ok)
    return {
      ...nothing,
      reports,
      ignored,
      partly: intake.partly ?? [],
      problems: chosen?.problems ?? [],
    };
  const found = desk.source.kind === 'form' ? ofNobody(chosen.value) : chosen.value;
  const written = corrected(withPerson(found, desk.person), desk);
  const needs: Need[] = [];
  if (written.patient.sex === null) needs.push('sex');
  if (written.panel.collected === null) needs.push('collected');
  const read = needs.length === 0 ? understand(written, today, desk.confirmed) : null;
  const known = read?.ok ? read.value : provisional(written, today);
  return {
    reports,
    written,
    identity: identityOf(chosen.value),
    partly: [],
    needs,
    ignored: [...ignored, ...(read?.ok ? read.notes : [])],
    urgent: known !== null && isHeld(known),
    understood: read?.ok ? read.value : null,
    problems: read === null || read.ok ? [] : read.problems,
  };
}

/** Alarms are raised at face value: as if the sample were of today and nothing known of the person. */
function provisional(written: WrittenReport, today: string): Understood | null {
  const { patient, panel } = written;
  const assumed = {
    ...written,
    patient: { ...patient, sex: patient.sex ?? 'unknown' },
    panel: { ...panel, collected: panel.collected ?? today },
  };
  const read = understand(assumed, today, []);
  return read.ok ? read.value : null;
}

/** Name and day, by which two panels of one person are told apart. */
function labelOf({ patient, panel }: WrittenReport): string | null {
  const name = patient.name ?? patient.id;
  return name === null || panel.collected === null ? name : `${name}, ${panel.collected}`;
}

function identityOf({ patient: { id, name, birthDate } }: WrittenReport): string | null {
  return [id, name, birthDate].some((each) => each !== null)
    ? JSON.stringify([id, name, birthDate])
    : null;
}

/** The short form says results alone: what its file had to say of the person is taken back. */
function ofNobody(written: WrittenReport): WrittenReport {
  return {
    ...written,
    patient: { ...written.patient, sex: null },
    panel: { ...written.panel, collected: null },
  };
}

function fileOf(source: Source): InputFile | null {
  if (source.kind === 'file')
    return { name: source.name, bytes: source.bytes.slice(0, largestFile + 1) };
  if (source.kind === 'form') return writeReportFile(source.rows);
  if (source.text.trim() === '') return null;
  return { name: 'pasted text', bytes: new TextEncoder().encode(source.text) };
}

/** What is said at the desk holds; what is not said there is as the results have it. */
function withPerson(written: WrittenReport, person: Person): WrittenReport {
  const { patient, panel, context } = written;
  const age = readAge(person.age);
  const diet = patient.diet ?? {
    pattern: null,
    avoids: [],
    lowCost: false,
    fastingMonth: false,
    cuisines: [],
  };
  const dietSaid = person.diet !== null || person.lowCost || person.avoids.length > 0;
  const said: Partial<WrittenPatient> = {
    ...(person.sex === null ? {} : { sex: person.sex }),
    ...(person.name.trim() === '' ? {} : { name: person.name.trim() }),
    ...(age === null ? {} : { birthDate: null, ageYears: age.years, ageMonths: age.months }),
    ...(/^\d{1,2}$/.test(person.weeks)
      ? { pregnancy: { weeks: Number(person.weeks), trimester: null } }
      : {}),
    ...(dietSaid
      ? {
          diet: {
            ...diet,
            pattern: person.diet ?? diet.pattern,
            avoids: joined(diet.avoids, person.avoids),
            lowCost: diet.lowCost || person.lowCost,
          },
        }
      : {}),
    conditions: joined(patient.conditions, person.conditions),
    medicines: joined(patient.medicines, person.medicines),
  };
  return {
    ...written,
    patient: { ...patient, ...said },
    panel: { ...panel, collected: person.collected === '' ? panel.collected : person.collected },
    context: {
      ...context,
      symptoms: joined(context.symptoms, person.symptoms),
      bleeding: joined(context.bleeding, person.bleeding),
    },
  };
}

function joined(written: readonly string[], said: readonly string[]): readonly string[] {
  return [...new Set([...written, ...said])];
}

/** A person's correction of one line; the program itself corrects nothing. */
function corrected(written: WrittenReport, { corrections }: Desk): WrittenReport {
  const results = written.panel.results.map((result) => {
    const by = corrections[result.analyte];
    return by === undefined
      ? result
      : { ...result, value: by.value, unit: by.unit === '' ? null : by.unit };
  });
  return { ...written, panel: { ...written.panel, results } };
}
