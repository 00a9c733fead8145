// The clinic's own details, as configured. None has a default: a wrong number could cost a life.
import type { Problem } from '../problem.js';

export type Clinic = {
  readonly name: string;
  readonly addressLines: readonly string[];
  readonly phone: string;
  readonly hours: string;
  readonly emergencyNumber: string;
  readonly maternityPhone: string | null;
  /** Who answers when the clinic is closed. */
  readonly outOfHours: string | null;
  readonly interpreter: { readonly phone: string; readonly free: boolean } | null;
  readonly website: string | null;
  /** A data: URL as `readLogo` of src/render/logo.ts reads it; the name of a file, as in a configuration, draws nothing. */
  readonly logo?: string;
  /** By language, what the clinic says in words; where one is missing, the clinic's own words stand. */
  readonly translations?: Readonly<Record<string, ClinicWords>>;
  /** Invented details: every page is stamped as an example. */
  readonly demo: boolean;
};

/** Details that are said in words, or may be. */
export const wordedDetails = ['hours', 'outOfHours', 'emergencyNumber'] as const;
export type ClinicWords = {
  readonly [detail in (typeof wordedDetails)[number]]?: string | undefined;
};

/**
 * The clinic as a letter in one language speaks of it.
 * @example clinicIn(clinic, 'es').hours // 'de lunes a viernes, de 8 a 18 horas'
 */
export function clinicIn(clinic: Clinic, tag: string): Clinic {
  const words = Object.entries(clinic.translations ?? {}).find(
    ([language]) => language === tag,
  )?.[1];
  const said = wordedDetails.flatMap((detail) => {
    const text = words?.[detail]?.trim() ?? '';
    return text === '' ? [] : [[detail, text] as const];
  });
  return { ...clinic, ...Object.fromEntries(said) };
}

/**
 * Problems: a translated detail that names another number than the clinic's own words do, in digits of any script, or
 * a service that those do not name.
 * @example misleadingDetails(clinic, 'clinic.json').map(({ place }) => place.field) // ['translations.es.emergencyNumber']
 */
export function misleadingDetails(clinic: Worded, file: string | null): readonly Problem[] {
  return Object.entries(clinic.translations ?? {}).flatMap(([tag, words]) =>
    (['outOfHours', 'emergencyNumber'] as const)
      .filter((detail) => misleads(words[detail], clinic[detail]))
      .map((detail) => ({
        code: 'clinic-details',
        place: { file, row: null, field: `translations.${tag}.${detail}` },
        cannot: 'cannot send anybody to another number in another language',
        found: null,
        expected: `the same digits as in ${detail}`,
        remedy: null,
      })),
  );
}

type Worded = Pick<Clinic, (typeof wordedDetails)[number] | 'translations'>;

function misleads(translated: string | undefined, own: string | null): boolean {
  return translated !== undefined && (own === null || digitsOf(translated) !== digitsOf(own));
}

const digit = /\p{Nd}/u;

function digitsOf(text: string): string {
  return [...text]
    .filter((character) => digit.test(character))
    .map(digitValue)
    .join('');
}

/** Unicode 16, 4.6: the ten digits of a script follow one another. */
function digitValue(character: string): number {
  const point = character.codePointAt(0) ?? 0;
  let value = 0;
  while (digit.test(String.fromCodePoint(point - value - 1))) value += 1;
  return value;
}
