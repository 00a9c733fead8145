// A clinic's configuration file in, a Clinic out. Nothing in it has a default.
import { z } from 'zod';
import { type Clinic, misleadingDetails } from '../letter/clinic.js';
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
  translations: z
    .record(
      z.string(),
      z.strictObject({ hours: text, outOfHours: text, emergencyNumber: text }).partial(),
    )
    .default({}),
});

/** The clinic without its logo, and the name of the logo's file. */
type Details = Omit<Clinic, 'demo' | 'logo'> & { readonly logo: string | null };

/**
 * Reads the clinic's details from JSON bytes; a logo is another file, and its name is left out here.
 * @param tags languages there are, to tell a translation that no letter would use; null where that is not known.
 * Problems: not JSON; a missing or empty field (name, addressLines, phone, hours and
 * emergencyNumber are required); an unknown field or language; a translation with another number.
 * @example readClinic('clinic.json', bytes, false) // { ok: true, value: { name: 'Saltmarsh Bay …', … }, … }
 */
export function readClinic(
  file: string,
  bytes: Uint8Array,
  demo: boolean,
  tags: readonly string[] | null = null,
): Checked<Clinic> {
  const read = readDetails(file, bytes, tags);
  if (!read.ok) return read;
  const { logo: _, ...details } = read.value;
  return fine({ ...details, demo });
}

/** The same with the name of the logo's file. */
export function readDetails(
  file: string,
  bytes: Uint8Array,
  tags: readonly string[] | null = null,
): Checked<Details> {
  const json = readJson(file, bytes);
  if (!json.ok) return json;
  const read = clinicFile.safeParse(json.value);
  if (read.success) {
    const { data } = read;
    const problems = [...unusedLanguages(data, file, tags), ...misleadingDetails(data, file)];
    return problems.length > 0 ? faulty(problems) : fine(data);
  }
  return faulty(
    read.error.issues.map(
      (issue): Problem => ({
        code: 'clinic-details',
        place: { file, row: null, field: issue.path.join('.') || null },
        cannot: 'cannot use the clinic details',
        found: issue.code === 'unrecognized_keys' ? issue.keys.join(', ') : null,
        expected: issue.code === 'unrecognized_keys' ? 'no other fields' : issue.message,
        remedy: null,
      }),
    ),
  );
}

/** A tag that is misspelt would leave the clinic's own words in the letter, and nobody would notice. */
function unusedLanguages(
  { translations }: Pick<Details, 'translations'>,
  file: string,
  tags: readonly string[] | null,
): readonly Problem[] {
  if (tags === null) return [];
  return Object.keys(translations ?? {})
    .filter((tag) => !tags.includes(tag))
    .map((tag) => ({
      code: 'clinic-details',
      place: { file, row: null, field: `translations.${tag}` },
      cannot: 'cannot use words in a language that no letter is written in',
      found: tag,
      expected: `one of ${tags.join(', ')}`,
      remedy: null,
    }));
}
