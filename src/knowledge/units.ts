// In: a unit as a laboratory spelt it. Out: its UCUM code, and the factor to our unit for each analyte.
import { z } from 'zod';
import { type Analyte, analytes } from '../terms.js';
import { readRows, rowFields } from './row.js';
import spellingRows from './unit-spellings.json' with { type: 'json' };
import rows from './units.json' with { type: 'json' };

const decimal = z.string().regex(/^\d+(\.\d+)?$/);

const unitRow = z.object({
  ...rowFields,
  analyte: z.enum(analytes),
  code: z.string().min(1),
  times: decimal,
  over: decimal,
});

/** Our unit = value in `code` * times / over; decimal strings, so that nothing is lost on the way. */
export type UnitRow = z.infer<typeof unitRow>;

/** Every unit accepted for every analyte; the first row of an analyte is our own unit. */
export const units: readonly UnitRow[] = readRows('units', unitRow, rows);

const spellingRow = z.object({
  ...rowFields,
  code: z.string().min(1),
  spellings: z.array(z.string().min(1)),
});

/** Spellings of units that laboratories print, beside the UCUM code they stand for. */
export const unitSpellings: readonly z.infer<typeof spellingRow>[] = readRows(
  'unit-spellings',
  spellingRow,
  spellingRows,
);

const codes: ReadonlyMap<string, string> = indexSpellings();

/**
 * UCUM code of a unit as written, or null when the spelling is not in the table.
 * Letter case is kept, for 'G/L' is giga per litre and 'g/L' grams per litre; upper-case
 * spellings with one possible meaning stand in the table one by one.
 * @example readUnit('µg/l') // 'ug/L'
 * @example readUnit('x10¹²/L') // '10*12/L'
 * @example readUnit('G/L') // null
 */
export function readUnit(written: string): string | null {
  return codes.get(plainSpelling(written)) ?? null;
}

/**
 * Rows of the units accepted for an analyte, our own first.
 * @example unitsOf('crp').map((row) => row.code) // ['mg/L', 'mg/dL', 'ug/mL', 'nmol/L']
 */
export function unitsOf(analyte: Analyte): readonly UnitRow[] {
  return units.filter((row) => row.analyte === analyte);
}

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Superscripts become '^digits' before NFKC, which would otherwise turn 10¹² into 1012. */
function plainSpelling(written: string): string {
  return written
    .replace(/[\u2070\u00B9\u00B2\u00B3\u2074\u2075\u2076\u2077\u2078\u2079]+/gu, (run) =>
      '^'.concat(...[...run].map((digit) => String(superscripts.indexOf(digit)))),
    )
    .normalize('NFKC')
    .replace(/\u03BC/gu, 'u')
    .replace(/[\u00D7\u2715\u2716]/gu, 'x')
    .replace(/[\u2044\u2215]/gu, '/')
    .replace(/[\s]/gu, '');
}

function indexSpellings(): ReadonlyMap<string, string> {
  const index = new Map<string, string>();
  const add = (spelling: string, code: string) => {
    const plain = plainSpelling(spelling);
    if ((index.get(plain) ?? code) !== code)
      throw new Error(`knowledge table unit-spellings: '${spelling}' stands for two units`);
    index.set(plain, code);
  };
  for (const row of units) add(row.code, row.code);
  for (const row of unitSpellings) for (const spelling of row.spellings) add(spelling, row.code);
  return index;
}
