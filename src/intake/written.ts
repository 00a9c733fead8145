// The written state: a report as some file has it, before anything is measured. Every reader ends here.
import type { Checked, Place, Problem } from '../problem.js';
import type { Analyte } from '../terms.js';

/** One result, every part as the file wrote it. */
export type WrittenResult = {
  readonly place: Place;
  readonly analyte: Analyte;
  /** The test's name as the file has it. */
  readonly name: string;
  /** Digits as written, without comparator, such as '12.5' or '12,5'. */
  readonly value: string;
  readonly comparator: string | null;
  readonly unit: string | null;
  readonly interval: WrittenInterval | null;
  /** The laboratory's own mark, such as 'L' or 'HH'. */
  readonly labFlag: string | null;
  /** 'final', 'preliminary', 'corrected'; null where the file says nothing. */
  readonly status: string | null;
  /** Somebody looked at a doubtful value and says it stands. */
  readonly confirmed: boolean;
};

export type WrittenInterval = {
  readonly low: string | null;
  readonly high: string | null;
  /** The interval as printed, such as '30 - 400'. */
  readonly text: string | null;
};

export type WrittenPanel = {
  readonly collected: string | null;
  readonly results: readonly WrittenResult[];
};

/** What the file says of the person. Absent is null; nothing is guessed. */
export type WrittenPatient = {
  readonly id: string | null;
  readonly name: string | null;
  readonly birthDate: string | null;
  readonly ageYears: number | null;
  readonly ageMonths: number | null;
  readonly sex: string | null;
  readonly pregnancy: { readonly weeks: number | null; readonly trimester: number | null } | null;
  readonly afterBirthWeeks: number | null;
  readonly menstruating: boolean | null;
  readonly altitudeMetres: number | null;
  /** A number a day, 'unknown-amount' for a smoker who gave none. */
  readonly cigarettesPerDay: number | 'unknown-amount' | null;
  readonly diet: {
    readonly pattern: string | null;
    readonly avoids: readonly string[];
    readonly lowCost: boolean;
    readonly fastingMonth: boolean;
    readonly cuisines: readonly string[];
  } | null;
  readonly conditions: readonly string[];
  readonly medicines: readonly string[];
};

export type WrittenContext = {
  readonly symptoms: readonly string[];
  readonly bleeding: readonly string[];
  readonly ironTabletHoursBefore: number | null;
  readonly ironInjectionDaysBefore: number | null;
  readonly transfusionDaysBefore: number | null;
  readonly fasting: boolean | null;
  /** Hour and minute of the sample, such as '08:40'. */
  readonly sampleTime: string | null;
  /** Notes of the laboratory, for the clinician only. */
  readonly notes: readonly string[];
};

export type WrittenReport = {
  readonly place: Place;
  readonly patient: WrittenPatient;
  readonly panel: WrittenPanel;
  readonly context: WrittenContext;
  readonly previous: readonly WrittenPanel[];
  /** What the file asks of the letter; the operator's own choice goes first. */
  readonly wishes?: { readonly language: string | null } | null;
};

/** A file as the operator handed it in; `name` is shown in problems, never opened again. */
export type InputFile = { readonly name: string; readonly bytes: Uint8Array };

/** What a reader made of one file: each report on its own, so that a bad one stops no other. */
export type Intake = {
  readonly format: 'json' | 'csv' | 'fhir' | 'hl7v2' | 'xlsx' | 'text';
  readonly reports: readonly Checked<WrittenReport>[];
  /** Lines or fields passed over, with why. */
  readonly ignored: readonly Problem[];
  /** Results that could be read in reports that as a whole could not; to be shown, never to be used. */
  readonly partly?: readonly WrittenResult[];
};
