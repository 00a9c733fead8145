// A person arrives; six to eight foods, their vitamin C partners and what was left out leave. No chance, no clock.
import { foodPicks } from '../knowledge/food-picks.js';
import { foodLimit } from '../knowledge/food-policy.js';
import { type Food, foods } from '../knowledge/foods.js';
import type { FoodAdvice, FoodChoice } from './advice.js';
import type { ChoiceReason } from './codes.js';
import { describeChoice, isHard } from './food-choice.js';
import { leaveOut } from './left-out.js';
import type { Person } from './person.js';

type Chosen = Pick<FoodAdvice, 'choices' | 'partners' | 'leftOut'>;

/**
 * Foods for one person: easily absorbed iron first where it is eaten, then plants, each round taking one
 * more of a kind, with at least three that cost little. Same person, same list.
 * @example chooseFoods(vegan).choices.some((choice) => choice.haem) // false
 */
export function chooseFoods(person: Person): Chosen {
  const judged = foods.map((food) => ({ food, why: leaveOut(food, person) }));
  const may = judged.filter(({ why }) => why === null).map(({ food }) => food);
  const fitting = inOrderOfFit(may, person);
  const iron = affordable(
    fitting.filter((food) => food.role === 'iron'),
    person,
  );
  const picked = withLowCost(pickVaried(iron), iron);
  const partners = pickPartners(fitting, person);
  const taken = new Set([...picked, ...partners].map((food) => food.id));
  return {
    choices: picked.map((food, at) =>
      describeChoice(food, person, whyChosen(food, person, picked.slice(0, at))),
    ),
    partners: partners.map((food) => describePartner(food, person)),
    leftOut: judged
      .filter(({ food }) => !taken.has(food.id))
      .map(({ food, why }) => ({ food: food.id, why: why ?? 'others-fitted-better' })),
  };
}

/** Where money is short, only what costs little, as long as that makes a list. */
function affordable(iron: readonly Food[], person: Person): readonly Food[] {
  const cheap = iron.filter(costsLittle);
  return person.lowCost && cheap.length >= foodLimit('choices-least') ? cheap : iron;
}

function pickVaried(iron: readonly Food[]): readonly Food[] {
  const most = foodLimit('choices-target');
  const eaten = iron.filter((food) => food.haem);
  const haem = rounds(eaten, 1, foodLimit('haem-most'));
  const plants = rounds(
    iron.filter((food) => !food.haem),
    3,
    most - haem.length,
  );
  const rest = eaten.filter((food) => !haem.includes(food));
  return [...haem, ...plants, ...rounds(rest, 2, most - haem.length - plants.length)];
}

/** Takes the best of each kind, then a second of each kind, and so on, up to a number. */
function rounds(candidates: readonly Food[], perKind: number, most: number): readonly Food[] {
  const taken: Food[] = [];
  for (let round = 1; round <= perKind; round += 1) {
    for (const food of candidates) {
      if (taken.length >= most) return taken;
      const ofKind = taken.filter((other) => other.kind === food.kind).length;
      if (ofKind < round && !taken.includes(food)) taken.push(food);
    }
  }
  return taken;
}

function withLowCost(picked: readonly Food[], iron: readonly Food[]): readonly Food[] {
  const wanted = foodLimit('low-cost-least');
  const cheap = picked.filter(costsLittle).length;
  const spare = iron.filter((food) => costsLittle(food) && !picked.includes(food));
  const swaps = Math.min(Math.max(0, wanted - cheap), spare.length);
  const dear = picked.filter((food) => !costsLittle(food)).reverse();
  const out = dear.slice(0, swaps);
  return [...picked.filter((food) => !out.includes(food)), ...spare.slice(0, out.length)];
}

/** One from the person's own kitchen, then the everyday ones. */
function pickPartners(fitting: readonly Food[], person: Person): readonly Food[] {
  const order = picksFor('partners');
  const enough = fitting
    .filter((food) => food.role === 'vitamin-c' && holdsVitaminC(food))
    .filter((food) => !person.lowCost || costsLittle(food))
    .sort((a, b) => order.indexOf(a.id) - order.indexOf(b.id));
  const own = enough.filter((food) => inCuisine(food, person)).slice(0, 1);
  const others = enough.filter((food) => !own.includes(food));
  return [...own, ...others].slice(0, foodLimit('partners-most'));
}

function holdsVitaminC(food: Food): boolean {
  return (food.portionVitaminC ?? 0) >= foodLimit('partner-vitamin-c-from');
}

/** The foods in the order in which they fit one person; ties fall to the order of the table. */
function inOrderOfFit(fitting: readonly Food[], person: Person): readonly Food[] {
  const picks = picksFor(person.diet ?? 'not-known');
  const keyed = fitting.map((food) => ({ food, keys: keysOf(food, person, picks) }));
  keyed.sort((a, b) => {
    const at = a.keys.findIndex((key, index) => key !== b.keys[index]);
    return (a.keys[at] ?? 0) - (b.keys[at] ?? 0);
  });
  return keyed.map(({ food }) => food);
}

/** Read from left to right, smaller first. */
function keysOf(food: Food, person: Person, picks: readonly string[]): readonly number[] {
  const pick = picks.indexOf(food.id);
  return [
    cuisineRank(food, person),
    !inCuisine(food, person) && picksFor('seldom').includes(food.id) ? 1 : 0,
    person.lowCost && !costsLittle(food) ? 1 : 0,
    pick === -1 ? picks.length : pick,
    food.portionIron.low >= foodLimit('good-source-from') ? 0 : 1,
    isHard(food) ? 1 : 0,
    costsLittle(food) ? 0 : 1,
    -reach(food),
    -food.portionIron.low,
  ];
}

function picksFor(diet: (typeof foodPicks)[number]['diet']): readonly string[] {
  return foodPicks.find((row) => row.diet === diet)?.foods ?? [];
}

function cuisineRank(food: Food, person: Person): number {
  if (person.cuisines.length === 0) return 0;
  if (inCuisine(food, person)) return 0;
  return food.cuisines.includes('general') ? 1 : 2;
}

/** In how many cuisines of the table a food is at home; one eaten everywhere counts as all of them. */
function reach(food: Food): number {
  return food.cuisines.includes('general') ? 4 : food.cuisines.length;
}

function whyChosen(food: Food, person: Person, before: readonly Food[]): readonly ChoiceReason[] {
  const picks = picksFor(person.diet ?? 'not-known');
  const why: ChoiceReason[] = [food.haem ? 'haem-iron' : 'plant-iron'];
  if (inCuisine(food, person)) why.push('in-your-cuisine');
  if (picks.includes(food.id)) why.push('first-pick-for-diet');
  if (costsLittle(food)) why.push('low-cost');
  if (!before.some((other) => other.kind === food.kind)) why.push('another-kind');
  return why;
}

function describePartner(food: Food, person: Person): FoodChoice {
  const cuisine = inCuisine(food, person) ? ['in-your-cuisine'] : [];
  return describeChoice(food, person, ['vitamin-c-partner', ...cuisine]);
}

function inCuisine(food: Food, person: Person): boolean {
  return person.cuisines.some((cuisine) => food.cuisines.includes(cuisine));
}

function costsLittle(food: Food): boolean {
  return food.tags.includes('low-cost');
}
