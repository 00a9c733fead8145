// A food from the table and a person arrive; the food as it is suggested leaves: amount, cautions, why.
import { foodLimit } from '../knowledge/food-policy.js';
import type { Food } from '../knowledge/foods.js';
import type { FoodChoice } from './advice.js';
import type { CautionCode } from './codes.js';
import type { Person } from './person.js';
import { reason } from './reason.js';

/**
 * Iron of one portion: milligrams rounded to the half where sources agree, otherwise a word.
 * A child's portion is not the table's, so a child only ever gets the word.
 * @example amountOf(lentilsRed, adult) // { milligrams: 3 }, from 3.21 mg
 */
function amountOf(food: Food, person: Person): FoodChoice['amount'] {
  const { low, high } = food.portionIron;
  const middle = (low + high) / 2;
  const agree = low > 0 && high / low <= foodLimit('number-spread');
  const adult = !person.mayBeUnder('adult-portions-from');
  if (food.headline && agree && adult && middle >= foodLimit('number-from')) {
    const step = foodLimit('number-step');
    return { milligrams: Math.round(middle / step) * step };
  }
  return { size: adult && low >= foodLimit('a-lot-from') ? 'a-lot' : 'some' };
}

const beside: Readonly<Record<string, CautionCode>> = {
  'liver-vitamin-a': 'liver-once-a-week',
  'cook-liver-through': 'cook-liver-through',
  'cook-shellfish-through': 'cook-shellfish-through',
  salty: 'salty',
  'boil-kidney-beans': 'boil-kidney-beans',
  'cook-taro-well': 'cook-taro-well',
  'lead-shot-game': 'lead-shot-game',
};

/** The food as one line of the letter, with why it was chosen. */
export function describeChoice(food: Food, person: Person, why: readonly string[]): FoodChoice {
  return {
    food: food.id,
    kind: food.kind,
    haem: food.haem,
    vitaminC: food.role === 'vitamin-c',
    lowCost: food.tags.includes('low-cost'),
    amount: amountOf(food, person),
    portionGrams: food.portionGrams,
    cautions: cautionsFor(food, person),
    why: why.map((code) => reason(code, {}, [food.id])),
  };
}

function cautionsFor(food: Food, person: Person): readonly CautionCode[] {
  const said: CautionCode[] = food.cautions.flatMap((caution) => beside[caution] ?? []);
  const careful = person.avoids.length > 0 || person.has('coeliac-disease');
  if (careful && food.tags.includes('packaged')) said.push('check-label-for-what-you-avoid');
  // Brands differ, and not every cereal has iron added.
  if (food.kind === 'fortified-cereal') said.push('read-the-label');
  if (food.cautions.includes('mash-soft-bones') && person.mayBeUnder('whole-nuts-from'))
    said.push('mash-soft-bones');
  if (
    food.cautions.includes('tuna-limit-in-pregnancy') &&
    (person.pregnant || person.mayBePregnant)
  )
    said.push('tuna-limit-in-pregnancy');
  if (person.mayBeUnder('adult-portions-from')) said.push('small-portion-for-child');
  if (food.role === 'iron' && food.kind === 'leaf' && isHard(food))
    said.push('little-of-it-absorbed');
  return said;
}

/** Leaves strong in tannin give up little of their iron (Gillooly 1983). */
export function isHard(food: Food): boolean {
  return food.polyphenol === 'high' || food.polyphenol === 'very-high';
}
