// The clinic's form arrives; the clinic, or the fields still needed, leave.
import { readClinic } from '../app/config.js';
import type { Clinic, ClinicWords } from '../letter/index.js';
import { type ClinicForm, emptyClinic } from './desk.js';

export type ClinicRead =
  | { readonly ok: true; readonly clinic: Clinic }
  | { readonly ok: false; readonly fields: readonly (keyof ClinicForm)[] };

const formFields: Readonly<Record<string, keyof ClinicForm>> = {
  name: 'name',
  addressLines: 'address',
  phone: 'phone',
  hours: 'hours',
  emergencyNumber: 'emergency',
};

/** Reads the form by the rules of a configuration file. */
export function clinicOf(form: ClinicForm, demo: boolean): ClinicRead {
  const details = {
    name: form.name,
    addressLines: form.address
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== ''),
    phone: form.phone,
    hours: form.hours,
    emergencyNumber: form.emergency,
    maternityPhone: form.maternity.trim() || null,
    outOfHours: form.closed.trim() || null,
    interpreter:
      form.interpreter.trim() === '' ? null : { phone: form.interpreter, free: form.free },
    translations: form.translations,
  };
  const read = readClinic('clinic.json', new TextEncoder().encode(JSON.stringify(details)), demo);
  if (read.ok) return { ok: true, clinic: read.value };
  const fields = read.problems.flatMap(
    ({ place }) => formFields[place.field?.split('.')[0] ?? ''] ?? [],
  );
  return { ok: false, fields: [...new Set(fields)] };
}

/** A configuration file as the form shows it. */
export function formOf(details: unknown): ClinicForm {
  const read = readClinic('clinic.json', new TextEncoder().encode(JSON.stringify(details)), false);
  if (!read.ok) return emptyClinic;
  const {
    name,
    addressLines,
    phone,
    hours,
    emergencyNumber,
    maternityPhone,
    outOfHours,
    interpreter,
    translations,
  } = read.value;
  return {
    name,
    address: addressLines.join('\n'),
    phone,
    hours,
    emergency: emergencyNumber,
    maternity: maternityPhone ?? '',
    closed: outOfHours ?? '',
    interpreter: interpreter?.phone ?? '',
    free: interpreter?.free ?? false,
    translations: translations ?? {},
  };
}

/** Details of a configuration that may be translated, by their field of the form. */
const translated: Partial<Record<keyof ClinicForm, keyof ClinicWords>> = {
  hours: 'hours',
  closed: 'outOfHours',
  emergency: 'emergencyNumber',
};

/** The form with something typed into a field; translations of what stood there no longer hold. */
export function typed(form: ClinicForm, field: keyof ClinicForm, value: string): ClinicForm {
  const detail = translated[field];
  const translations =
    detail === undefined
      ? form.translations
      : Object.fromEntries(
          Object.entries(form.translations).map(([tag, { [detail]: _, ...kept }]) => [tag, kept]),
        );
  return { ...form, translations, [field]: value };
}
