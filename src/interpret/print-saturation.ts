// In: an exact computed saturation. Out: its printed form, with as many decimals as its position needs.
import type { Group } from './group.js';
import { layBeside } from './grade.js';
import type { Person } from './person.js';
import { readSaturation } from './saturation.js';

const mostDecimals = 6;

/**
 * The shortest form, up to six decimals, that lies and reads as the exact value does, in per cent.
 * @example printSaturation(man, 19.6) // '19.6', for 20 would no longer be borderline
 * @example printSaturation(man, 34.64) // '35'
 */
export function printSaturation(person: Person, exact: number): string {
  for (let decimals = 0; decimals < mostDecimals; decimals += 1) {
    const printed = exact.toFixed(decimals);
    if (sameMeaning(person, Number(printed), exact)) return printed;
  }
  return exact.toFixed(mostDecimals);
}

function sameMeaning(person: Person, printed: number, exact: number): boolean {
  return (
    readsAs(person.group, printed) === readsAs(person.group, exact) &&
    liesAt(person, printed) === liesAt(person, exact)
  );
}

const quantity = (value: number) => ({ value, unit: '%', comparator: null });

function readsAs(group: Group, value: number): string {
  return readSaturation(group, quantity(value)).reading;
}

function liesAt(person: Person, value: number): string | null {
  const laid = layBeside(person, 'transferrin-saturation', quantity(value), null);
  return laid.comparedWith?.position ?? null;
}
