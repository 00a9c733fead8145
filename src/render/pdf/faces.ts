// The table of faces arrives; the files to copy, and for each language the families to try in order, leave.
import { look } from '../look.js';
import table from './faces.json' with { type: 'json' };

/** One font file: its name beside the program, the package and path it is copied from, and what it is cut down to. */
type FaceFile = {
  readonly file: string;
  readonly package: string;
  readonly path: string;
  readonly cut?: string;
};

/** Two weights of one design. `leading` is a row of the table of look. */
export type Family = {
  readonly name: string;
  readonly regular: string;
  readonly bold: string;
  readonly leading: number;
};

export const faceFiles: readonly FaceFile[] = table.files;

const families = new Map<string, Family>(
  Object.entries(table.families).map(([name, row]) => [
    name,
    { name, regular: row.regular, bold: row.bold, leading: leadingNamed(row.leading) },
  ]),
);

const languages: Readonly<Record<string, readonly string[]>> = table.languages;
const scripts: Readonly<Record<string, readonly string[]>> = table.scripts;

/** The family for letters, digits and signs of the basic Latin block, whatever the language. */
export const latin = familyNamed(table.latin);

/**
 * Families to try for a language, best first; the Latin one always comes last.
 * @param lang BCP 47 tag; its own row wins over the row of its script.
 * @throws when the table names a family it does not hold.
 * @example familiesFor('pl').map((family) => family.name) // ['noto-sans']
 */
export function familiesFor(lang: string): readonly Family[] {
  const known = orders.get(lang);
  if (known !== undefined) return known;
  const tag = new Intl.Locale(lang).maximize();
  const names = languages[lang] ?? languages[tag.language] ?? scripts[tag.script ?? ''] ?? [];
  const order = [...new Set([...names, table.latin])].map(familyNamed);
  orders.set(lang, order);
  return order;
}

const lenders = Object.entries(table.lenders).map(([script, names]) => ({
  script: new RegExp(`\\p{Script=${script}}`, 'u'),
  names,
}));

/**
 * Families that may lend a character which the language's own do not hold: the name of a person in another script,
 * or a rare ideograph. Empty where no script of ours claims it.
 * @example lendersFor(0x674E).map((family) => family.name) // ['noto-sans-sc', 'rare-han']
 */
export function lendersFor(point: number): readonly Family[] {
  const character = String.fromCodePoint(point);
  return lenders.flatMap(({ script, names }) =>
    script.test(character) ? names.map(familyNamed) : [],
  );
}

const orders = new Map<string, readonly Family[]>();

function familyNamed(name: string): Family {
  const family = families.get(name);
  if (family === undefined) throw new Error(`No family of faces is called ${name}`);
  return family;
}

function leadingNamed(name: string): number {
  const row = Object.entries(look.leading).find(([key]) => key === name);
  if (row === undefined) throw new Error(`No leading is called ${name}`);
  return row[1];
}
