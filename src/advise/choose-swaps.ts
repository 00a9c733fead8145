// A person and the chosen foods arrive; three changes to the day, the largest measured first, and answers leave.
import { foodLimit } from '../knowledge/food-policy.js';
import { type SwapRow, swapRows } from '../knowledge/swaps.js';
import type { FoodChoice, Swap } from './advice.js';
import type { Cuisine, SwapCode } from './codes.js';
import type { Person } from './person.js';

type Table = { readonly choices: readonly FoodChoice[]; readonly partners: readonly FoodChoice[] };

const riceCuisines: readonly Cuisine[] = [
  'south-asian',
  'south-east-asian',
  'east-asian',
  'west-african',
  'caribbean',
];
const coffeeCuisines: readonly Cuisine[] = ['latin-american', 'mediterranean', 'north-american'];
const batterCuisines: readonly Cuisine[] = ['south-asian', 'east-african', 'west-african'];

/**
 * Three swaps that fit, ordered by the gentlest published measurement of each.
 * @example chooseSwaps(vegan, table).swaps.map((swap) => swap.swap) // tea, vitamin C, milk or bread
 */
export function chooseSwaps(
  person: Person,
  table: Table,
): { readonly swaps: readonly Swap[]; readonly answers: readonly Swap[] } {
  const fitting = swapRows
    .filter((row) => row.kind === 'swap' && fits[row.id as SwapCode]?.(person, table) === true)
    .sort((a, b) => gentlestGain(b) - gentlestGain(a))
    .slice(0, foodLimit('swaps-most'));
  const drink = fitting.find((row) => aboutDrinks.some((code) => code === row.id));
  const answers = drink === undefined ? [] : swapRows.filter((row) => isAnswerBeside(row, drink));
  return { swaps: fitting.map(asSwap), answers: answers.map(asSwap) };
}

const aboutDrinks: readonly SwapCode[] = [
  'tea-between-meals',
  'coffee-between-meals',
  'drinks-after-the-fast-wait',
];

/** Whoever is told about tea is answered about coffee, and the other way round. */
function isAnswerBeside(row: SwapRow, told: SwapRow): boolean {
  if (row.kind === 'answer') return true;
  if (told.id === 'coffee-between-meals') return row.id === 'tea-between-meals';
  return told.id === 'tea-between-meals' && row.id === 'coffee-between-meals';
}

/** A swap without an entry here is never offered. */
const fits: Partial<Record<SwapCode, (person: Person, table: Table) => boolean>> = {
  'tea-between-meals': (person, table) =>
    !person.fastingMonth &&
    !person.mayBeUnder('tea-swap-from') &&
    !drinksCoffee(person) &&
    hasPlants(table),
  'drinks-after-the-fast-wait': (person, table) =>
    person.fastingMonth && !person.mayBeUnder('tea-swap-from') && hasPlants(table),
  'coffee-between-meals': (person, table) =>
    !person.fastingMonth && drinksCoffee(person) && hasPlants(table),
  'vitamin-c-with-plant-meal': (person, table) =>
    !inCuisine(person, riceCuisines) && table.partners.length > 0 && hasPlants(table),
  'lemon-on-rice-or-dal': (person, table) =>
    inCuisine(person, riceCuisines) &&
    table.partners.some((partner) => partner.food === 'lemon-juice') &&
    hasPlants(table),
  'meat-or-fish-with-plant-meal': (person, table) => person.diet !== 'fish-only' && hasBoth(table),
  'fish-with-plant-meal': (person, table) => person.diet === 'fish-only' && hasBoth(table),
  'milk-another-time': (person, table) =>
    person.diet !== 'vegan' && !person.avoids.includes('dairy') && hasPlants(table),
  'raised-bread-over-flat': (person) => eatsGluten(person),
  'fermented-batter': (person) => inCuisine(person, batterCuisines) || !eatsGluten(person),
  'egg-with-vitamin-c': (_person, table) =>
    table.partners.length > 0 && table.choices.some((choice) => choice.kind === 'egg'),
};

/**
 * By how much one meal's plant iron grows at least: a loss avoided or a gain made, over the studies read; 1 without a figure.
 * @example gentlestGain(tea) // 1.96, from a loss of 49 %
 */
export function gentlestGain(row: SwapRow): number {
  if (row.changePercent === null) return 1;
  const { low, high } = row.changePercent;
  if (low >= 0) return 1 + low / 100;
  return high >= 0 ? 1 : 1 / (1 + high / 100);
}

function asSwap(row: SwapRow): Swap {
  return { swap: row.id, size: row.size, rules: [row.id] };
}

function hasPlants(table: Table): boolean {
  return table.choices.some((choice) => !choice.haem);
}

function hasBoth(table: Table): boolean {
  return hasPlants(table) && table.choices.some((choice) => choice.haem);
}

function drinksCoffee(person: Person): boolean {
  return inCuisine(person, coffeeCuisines) && !person.mayBeUnder('coffee-swap-from');
}

function eatsGluten(person: Person): boolean {
  return !person.avoids.includes('gluten') && !person.has('coeliac-disease');
}

function inCuisine(person: Person, cuisines: readonly Cuisine[]): boolean {
  return person.cuisines.some((cuisine) => cuisines.includes(cuisine));
}
