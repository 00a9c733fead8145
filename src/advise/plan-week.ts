// Advice and its report arrive; seven simple meals for the week's sheet leave, as codes.
import { foodLimit } from '../knowledge/food-policy.js';
import type { Report } from '../report/report.js';
import type { Advice, FoodChoice, MealIdea } from './advice.js';
import type { Drink, Meal } from './codes.js';

const daysOfWeek = [1, 2, 3, 4, 5, 6, 7] as const;
const breakfastKinds = ['fortified-cereal', 'egg', 'dried-fruit', 'seed', 'nut'];
const breakfastFoods = [
  'porridge',
  'ragi',
  'amaranth-grain',
  'rice-flakes',
  'bread-wholemeal',
  'bread-white',
];
const sweetKinds = ['fortified-cereal', 'dried-fruit', 'seed', 'nut'];
const sweetFoods = ['porridge', 'ragi', 'amaranth-grain'];
const savouryPartners = ['lemon-juice', 'tomato', 'red-pepper', 'broccoli'];

/**
 * One meal a day from the chosen foods, each as often as its cautions allow, a vitamin C food beside plants,
 * and when to have tea or coffee. Empty unless the letter raises iron.
 * @example planWeek(advice, report)[0] // { day: 1, meal: 'evening', food: 'beef-mince', partner: null, … }
 */
export function planWeek(advice: Advice, report: Report): readonly MealIdea[] {
  const { mode, choices, partners } = advice.food;
  if (mode !== 'raise-iron' || choices.length === 0) return [];
  const foods = sevenOf(choices);
  return daysOfWeek.map((day) => {
    const choice = foods[day - 1];
    if (choice === undefined) throw new Error('plan-week: a day has no food');
    return idea(day, choice, partners, report);
  });
}

/** Every food once, then again from the start; liver, once a week at most, is never repeated. */
function sevenOf(choices: readonly FoodChoice[]): readonly FoodChoice[] {
  const again = choices.filter((choice) => !choice.cautions.includes('liver-once-a-week'));
  const repeats = again.length === 0 ? [] : daysOfWeek.flatMap(() => again);
  const oneOfLiver = choices.filter(
    (choice, at) =>
      again.includes(choice) ||
      choices.findIndex((other) => other.cautions.includes('liver-once-a-week')) === at,
  );
  return [...oneOfLiver, ...repeats].slice(0, daysOfWeek.length);
}

function idea(
  day: number,
  choice: FoodChoice,
  partners: readonly FoodChoice[],
  report: Report,
): MealIdea {
  const fitting = partners.filter((partner) => suits(partner, choice));
  const from = fitting.length === 0 ? partners : fitting;
  const partner = choice.haem ? null : (from[(day - 1) % Math.max(1, from.length)] ?? null);
  return {
    day,
    meal: mealFor(choice, day, report),
    food: choice.food,
    partner: partner?.food ?? null,
    drink: drinkFor(report),
    cautions: choice.cautions,
  };
}

/** Fruit goes with a sweet breakfast; a squeeze of lemon goes with what is cooked. */
function suits({ food }: FoodChoice, choice: FoodChoice): boolean {
  if (sweetKinds.includes(choice.kind) || sweetFoods.includes(choice.food))
    return !savouryPartners.includes(food);
  return !isEarly(choice) || food !== 'lemon-juice';
}

/** In a month of fasting nothing is eaten between dawn and sunset. */
function mealFor(choice: FoodChoice, day: number, report: Report): Meal {
  const early = isEarly(choice);
  if (fasts(report)) return early ? 'before-dawn' : 'after-sunset';
  if (early) return 'breakfast';
  return day % 2 === 0 ? 'midday' : 'evening';
}

const isEarly = ({ kind, food }: FoodChoice): boolean =>
  breakfastKinds.includes(kind) || breakfastFoods.includes(food);

const fasts = ({ patient }: Report): boolean => patient.diet?.fastingMonth === true;

function drinkFor(report: Report): Drink {
  if (fasts(report)) return 'drinks-two-hours-after-sunset-meal';
  const months = report.patient.ageMonths;
  if (months === null || months < foodLimit('tea-swap-from')) return 'water-with-meal';
  return months < foodLimit('coffee-swap-from')
    ? 'tea-an-hour-before-or-two-after'
    : 'tea-or-coffee-an-hour-before-or-two-after';
}
