// A clinic's configuration file in, a Clinic out. Nothing in it has a default.
import { z } from 'zod';
import type { Clinic } from '../letter/clinic.js';
import { type Checked, faulty, fine, type Problem } from '../problem.js';
import { readJson } from './json.js';

const text = z.string().trim().min(1);

const clinicFile = z.strictObject({
  name: text,
  addressLines: z.array(text).min(1),
  phone: text,
  hours: text,
  emergencyNumber: text,
  maternityPhone: text.nullable().default(null),
  outOfHours: text.nullable().default(null),
  interpreter: z.strictObject({ phone: text, free: z.boolean() }).nullable().default(null),
  website: z.url().nullable().default(null),
  logo: text.nullable().default(null),
});

/** The clinic without its logo, and the name of the logo's file. */
type Details = Omit<Clinic, 'demo' | 'logo'> & { readonly logo: string | null };

/**
 * Reads the clinic's details from JSON bytes; a logo is another file, and its name is left out here.
 * Problems: not JSON; a missing or empty field (name, addressLines, phone, hours and
 * emergencyNumber are required); an unknown field.
 * @example readClinic('clinic.json', bytes, false) // { ok: true, value: { name: 'Saltmarsh Bay …', … }, … }
 */
export function readClinic(file: string, bytes: Uint8Array, demo: boolean): Checked<Clinic> {
  const read = readDetails(file, bytes);
  if (!read.ok) return read;
  const { logo: _, ...details } = read.value;
  return fine({ ...details, demo });
}

/** The same with the name of the logo's file. */
export function readDetails(file: string, bytes: Uint8Array): Checked<Details> {
  const json = readJson(file, bytes);
  if (!json.ok) return json;
  const read = clinicFile.safeParse(json.value);
  if (read.success) return fine(read.data);
  return faulty(
    read.error.issues.map(
      (issue): Problem => ({
        code: 'clinic-details',
        place: { file, row: null, field: issue.path.join('.') || null },
        cannot: 'cannot use the clinic details',
        found: null,
        expected: issue.code === 'unrecognized_keys' ? 'no other fields' : issue.message,
        remedy: null,
      }),
    ),
  );
}
