// A food and a person arrive; the first reason to leave it out leaves, or null when it may be suggested.
import { foodLimit } from '../knowledge/food-policy.js';
import type { Food } from '../knowledge/foods.js';
import type { Diet, DietAvoid } from '../terms.js';
import type { LeftOutReason } from './codes.js';
import type { Person } from './person.js';

/** Tags a way of eating excludes. A food whose animal varies is out wherever one animal is. */
const excluded: Readonly<Record<Diet | 'not-known', readonly string[]>> = {
  'no-restriction': [],
  'no-pork': ['pork', 'blood', 'species-varies'],
  'no-beef': ['beef', 'blood', 'species-varies'],
  'fish-only': ['meat', 'poultry', 'offal', 'blood'],
  vegetarian: ['meat', 'poultry', 'offal', 'blood', 'fish', 'shellfish'],
  'vegetarian-no-egg': ['meat', 'poultry', 'offal', 'blood', 'fish', 'shellfish', 'egg'],
  vegan: ['meat', 'poultry', 'offal', 'blood', 'fish', 'shellfish', 'egg', 'dairy'],
  // Nobody asked: what a faith may forbid is not put before the person unasked.
  'not-known': ['pork', 'beef', 'blood', 'offal', 'shellfish', 'species-varies'],
};

const avoided: Readonly<Record<DietAvoid, readonly string[]>> = {
  blood: ['blood'],
  gluten: ['gluten'],
  nuts: ['nuts'],
  sesame: ['sesame', 'may-contain-sesame'],
  shellfish: ['shellfish'],
  soy: ['soy'],
  egg: ['egg'],
  dairy: ['dairy'],
  fish: ['fish'],
};

type Rule = (food: Food, person: Person) => LeftOutReason | null;

/**
 * Why this food is not for this person, or null. Safety first, taste never.
 * @example leaveOut(liver, pregnantPerson) // 'pregnancy'
 */
export function leaveOut(food: Food, person: Person): LeftOutReason | null {
  for (const rule of rules) {
    const why = rule(food, person);
    if (why !== null) return why;
  }
  return null;
}

const rules: readonly Rule[] = [
  byRole,
  byDiet,
  byAvoids,
  byPregnancy,
  byAge,
  byKidney,
  bySalt,
  byMedicine,
  byOtherConditions,
  byAmount,
];

function byRole(food: Food): LeftOutReason | null {
  switch (food.role) {
    case 'alcohol':
      return 'alcohol';
    case 'blocks-iron':
      return 'blocks-iron';
    case 'comparison':
      return 'comparison-only';
    case 'figures-disagree':
      return 'figures-disagree';
    default:
      return null;
  }
}

function byDiet(food: Food, person: Person): LeftOutReason | null {
  const out = excluded[person.diet ?? 'not-known'];
  if (food.tags.some((tag) => out.includes(tag)))
    return person.diet === null ? 'diet-not-known' : 'diet';
  return person.diet === 'vegan' && !food.tags.includes('vegan') ? 'diet' : null;
}

function byAvoids(food: Food, person: Person): LeftOutReason | null {
  const gluten = person.avoids.includes('gluten') || person.has('coeliac-disease');
  const out = person.avoids.flatMap((avoid) => avoided[avoid]);
  if (food.tags.some((tag) => out.includes(tag))) return 'avoids';
  const unsureOfGluten =
    food.tags.includes('gluten') || food.cautions.includes('check-gluten-label');
  return gluten && unsureOfGluten ? 'avoids' : null;
}

function byPregnancy(food: Food, person: Person): LeftOutReason | null {
  const vitaminA = marked(food, 'liver-vitamin-a', 'pregnancy-pate');
  if (person.pregnant && (vitaminA || marked(food, 'lead-shot-game', 'iodine-seaweed')))
    return 'pregnancy';
  return person.mayBePregnant && vitaminA ? 'may-be-pregnant' : null;
}

function byAge(food: Food, person: Person): LeftOutReason | null {
  const tooYoung =
    (person.mayBeUnder('liver-from') && marked(food, 'liver-vitamin-a')) ||
    (person.mayBeUnder('game-from') && marked(food, 'lead-shot-game')) ||
    (person.mayBeUnder('whole-nuts-from') &&
      (marked(food, 'choking', 'nut-allergy', 'salty', 'cook-shellfish-through') ||
        ['nut', 'seed', 'dried-fruit'].includes(food.kind)));
  if (!tooYoung) return null;
  return person.ageMonths === null ? 'age-not-known' : 'child';
}

function byKidney(food: Food, person: Person): LeftOutReason | null {
  if (!hasKidneyDiet(person)) return null;
  const portion = ((food.potassium ?? 0) * food.portionGrams) / 100;
  const rich =
    marked(food, 'potassium') ||
    ['leaf', 'dried-fruit'].includes(food.kind) ||
    food.id === 'orange-juice' ||
    portion > foodLimit('potassium-portion');
  return rich ? 'potassium' : null;
}

/** Potassium and salt are planned by the kidney team. */
export function hasKidneyDiet(person: Person): boolean {
  return (
    person.has('kidney-disease', 'kidney-disease-dialysis', 'high-potassium') ||
    person.flagged('kidney-disease')
  );
}

function bySalt(food: Food, person: Person): LeftOutReason | null {
  const limited =
    hasKidneyDiet(person) ||
    person.has('high-blood-pressure', 'heart-failure') ||
    person.flagged('heart-failure');
  return limited && marked(food, 'salty') ? 'salt' : null;
}

function byMedicine(food: Food, person: Person): LeftOutReason | null {
  if (!needsSteadyVitaminK(person)) return null;
  const rich = marked(food, 'vitamin-k', 'vitamin-k-very-high') || food.kind === 'leaf';
  return rich ? 'vitamin-k' : null;
}

/** An unnamed anticoagulant is treated as one that vitamin K disturbs. */
export function needsSteadyVitaminK(person: Person): boolean {
  return person.takes('warfarin', 'anticoagulant');
}

function byOtherConditions(food: Food, person: Person): LeftOutReason | null {
  if (
    person.has('gout') &&
    (marked(food, 'gout') || food.kind === 'offal' || food.id === 'anchovies')
  )
    return 'gout';
  const sweet = marked(food, 'sugary', 'juice') || food.kind === 'dried-fruit';
  if (person.has('diabetes') && sweet) return 'sugar';
  if (person.has('kidney-stones') && marked(food, 'oxalate')) return 'kidney-stones';
  if (person.has('g6pd-deficiency') && marked(food, 'g6pd-fava')) return 'g6pd';
  const liver = person.has('liver-disease', 'alcohol-related') || person.flagged('liver-disease');
  return liver && marked(food, 'cook-shellfish-through') ? 'liver-disease' : null;
}

function byAmount(food: Food): LeftOutReason | null {
  if (food.role !== 'iron') return null;
  return food.portionIron.high < foodLimit('little-iron-below') ? 'little-iron' : null;
}

function marked(food: Food, ...cautions: readonly string[]): boolean {
  return food.cautions.some((caution) => cautions.includes(caution));
}
