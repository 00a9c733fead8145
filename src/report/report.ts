// The measured state: quantities in our unit with the written ones kept, the person, the dates.
import type { Place } from '../problem.js';
import type {
  Analyte,
  Bleeding,
  Condition,
  Diet,
  DietAvoid,
  Medicine,
  Sex,
  Symptom,
  Trimester,
} from '../terms.js';

export type Comparator = '<' | '<=' | '>' | '>=';

/** A number with its unit (always our unit for the analyte, a UCUM code). */
export type Quantity = {
  readonly value: number;
  readonly unit: string;
  readonly comparator: Comparator | null;
};

/** The laboratory's own interval in our unit; a missing side is open. */
export type ReferenceInterval = {
  readonly low: number | null;
  readonly high: number | null;
};

/** A result exactly as the laboratory wrote it: copied, never formatted. */
export type Copied = {
  readonly value: string;
  readonly unit: string;
  readonly interval: string | null;
};

/** The laboratory's mark, reduced to HL7 table 0078's normality codes. */
export type LabFlag = 'N' | 'L' | 'H' | 'LU' | 'HU' | 'LL' | 'HH' | 'A' | 'AA';

/** Why a value cannot be taken at its word. `likely` is a reading to ask about, never one to use. */
export type Doubt = {
  readonly kind: 'unit' | 'value';
  /** Id of the knowledge row that raised it. */
  readonly rule: string;
  /** Question for a person, such as '558 ng/dL is 5.58 ug/L; did the sheet say ng/mL?' */
  readonly question: string;
  readonly likelyUnit: string | null;
};

export type Result = {
  readonly place: Place;
  readonly analyte: Analyte;
  readonly quantity: Quantity;
  readonly interval: ReferenceInterval | null;
  readonly copied: Copied;
  readonly labFlag: LabFlag | null;
  readonly preliminary: boolean;
  /** Null when the value is plausible or somebody confirmed it. A doubtful value decides nothing. */
  readonly doubt: Doubt | null;
};

export type Pregnancy = {
  readonly weeks: number | null;
  readonly trimester: Trimester | null;
};

export type DietFacts = {
  readonly pattern: Diet | null;
  readonly avoids: readonly DietAvoid[];
  readonly lowCost: boolean;
  readonly fastingMonth: boolean;
  readonly cuisines: readonly string[];
};

export type Patient = {
  readonly id: string | null;
  readonly name: string | null;
  /** ISO date. */
  readonly birthDate: string | null;
  /** Whole months on the day of the sample; null when neither age nor birth date is known. */
  readonly ageMonths: number | null;
  readonly sex: Sex;
  readonly pregnancy: Pregnancy | null;
  readonly afterBirthWeeks: number | null;
  readonly menstruating: boolean | null;
  readonly altitudeMetres: number | null;
  readonly cigarettesPerDay: number | 'unknown-amount' | null;
  readonly diet: DietFacts | null;
  readonly conditions: readonly Condition[];
  readonly medicines: readonly Medicine[];
};

export type Context = {
  readonly symptoms: readonly Symptom[];
  readonly bleeding: readonly Bleeding[];
  readonly ironTabletHoursBefore: number | null;
  readonly ironInjectionDaysBefore: number | null;
  readonly transfusionDaysBefore: number | null;
  readonly fasting: boolean | null;
  readonly sampleTime: string | null;
  readonly notes: readonly string[];
};

export type Panel = {
  /** ISO date of the sample. */
  readonly collected: string;
  /** At most one result an analyte, in the order of `analytes`. */
  readonly results: readonly Result[];
};

export type Report = {
  readonly place: Place;
  readonly patient: Patient;
  readonly panel: Panel;
  readonly context: Context;
  /** Earlier panels, newest first, at most six. */
  readonly previous: readonly Panel[];
};
