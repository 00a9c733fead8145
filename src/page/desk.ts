// What lies on the desk: everything the user typed or ticked, as one plain value. Nothing of it is stored.
import type { Clinic } from '../letter/index.js';
import type { PageForm } from '../render/block.js';
import type {
  Analogy,
  Analyte,
  Bleeding,
  Condition,
  Diet,
  DietAvoid,
  Medicine,
  NextStep,
  Sex,
  Symptom,
} from '../terms.js';

export type FormRow = {
  readonly value: string;
  readonly unit: string;
  readonly low: string;
  readonly high: string;
};

export type Source =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'file'; readonly name: string; readonly bytes: Uint8Array }
  | { readonly kind: 'form'; readonly rows: Partial<Record<Analyte, FormRow>> };

/** Null and empty mean: not said here, so what the results say holds. */
export type Person = {
  readonly sex: Sex | null;
  readonly age: string;
  readonly collected: string;
  readonly weeks: string;
  readonly name: string;
  readonly diet: Diet | null;
  readonly lowCost: boolean;
  readonly avoids: readonly DietAvoid[];
  readonly symptoms: readonly Symptom[];
  readonly bleeding: readonly Bleeding[];
  readonly conditions: readonly Condition[];
  readonly medicines: readonly Medicine[];
};

export type ChosenStep = {
  readonly step: NextStep;
  readonly by: string | null;
  readonly words: string | null;
};

export type Correction = { readonly value: string; readonly unit: string };

export type ClinicForm = {
  readonly name: string;
  readonly address: string;
  readonly phone: string;
  readonly hours: string;
  readonly emergency: string;
  readonly maternity: string;
  readonly closed: string;
  readonly interpreter: string;
  readonly free: boolean;
  /** From a configuration; the form has no fields for them. */
  readonly translations: NonNullable<Clinic['translations']>;
};

export type Desk = {
  readonly source: Source;
  readonly which: number;
  readonly person: Person;
  readonly corrections: Partial<Record<Analyte, Correction>>;
  readonly confirmed: readonly Analyte[];
  /** Null until the clinician changes a suggestion. */
  readonly steps: readonly ChosenStep[] | null;
  readonly tablets: { readonly prescribed: boolean; readonly dose: string };
  readonly noFood: boolean;
  readonly language: string;
  readonly beside: string | null;
  readonly form: PageForm;
  readonly easyRead: boolean;
  readonly analogy: Analogy | 'off';
  readonly checkedBy: string;
  /** What a named person says was done about a held result. */
  readonly release: { readonly by: string; readonly done: string } | null;
};

export const nobody: Person = {
  sex: null,
  age: '',
  collected: '',
  weeks: '',
  name: '',
  diet: null,
  lowCost: false,
  avoids: [],
  symptoms: [],
  bleeding: [],
  conditions: [],
  medicines: [],
};

export const emptyClinic: ClinicForm = {
  name: '',
  address: '',
  phone: '',
  hours: '',
  emergency: '',
  maternity: '',
  closed: '',
  interpreter: '',
  free: false,
  translations: {},
};

/** A desk with nobody on it. */
export const emptyDesk: Desk = {
  source: { kind: 'text', text: '' },
  which: 0,
  person: nobody,
  corrections: {},
  confirmed: [],
  steps: null,
  tablets: { prescribed: false, dose: '' },
  noFood: false,
  language: 'en',
  beside: null,
  form: { paper: 'A4', size: 'standard' },
  easyRead: false,
  analogy: 'shirt-shop',
  checkedBy: '',
  release: null,
};

/** Whether anything about a patient lies on it. */
export function isUsed({ source, person }: Desk): boolean {
  if (source.kind === 'file') return true;
  if (source.kind === 'text' && source.text.trim() !== '') return true;
  if (source.kind === 'form' && Object.values(source.rows).some((row) => row.value !== ''))
    return true;
  return JSON.stringify(person) !== JSON.stringify(nobody);
}
