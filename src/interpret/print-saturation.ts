// In: an exact computed saturation. Out: its printed form, with as many decimals as its position needs.
import { layBeside } from './grade.js';
import { perCent } from './measure.js';
import type { Person } from './person.js';
import { readSaturation } from './saturation.js';

const fewDecimals = [0, 1, 2, 3, 4, 5];
const mostDecimals = 6;

/**
 * The shortest form, up to six decimals, that lies and reads as the exact value does, in per cent.
 * @example printSaturation(man, 19.6) // '19.6', for 20 would no longer be borderline
 * @example printSaturation(man, 34.64) // '35'
 */
export function printSaturation(person: Person, exact: number): string {
  const forms = fewDecimals.map((decimals) => exact.toFixed(decimals));
  const short = forms.find((form) => sameMeaning(person, Number(form), exact));
  return short ?? exact.toFixed(mostDecimals);
}

function sameMeaning(person: Person, printed: number, exact: number): boolean {
  return (
    readsAs(person, printed) === readsAs(person, exact) &&
    liesAt(person, printed) === liesAt(person, exact)
  );
}

function readsAs({ group }: Person, value: number): string {
  return readSaturation(group, perCent(value)).reading;
}

function liesAt(person: Person, value: number): string | null {
  return layBeside(person, 'transferrin-saturation', perCent(value), null).position;
}
