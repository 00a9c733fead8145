// Food advice arrives; what to eat, in which company and when to have tea leaves, or nothing where food must not be spoken of.
import type { FoodAdvice, FoodChoice, Swap } from '../../advise/advice.js';
import type { Content, HeadedList, Said, SignedList } from '../content.js';
import { isLetterKey } from '../english.js';
import type { Told } from '../letter-input.js';

/** One sheet of paper: a short list is read, a long one is not. */
const most = { haem: 2, plants: 3, partners: 2, swaps: 3 } as const;

type Lists = readonly HeadedList[];

export function tellFood(told: Told): Content['food'] {
  const { food } = told.advice;
  if (food.mode === 'none') return null;
  return {
    heading: told.voice.say('food.heading'),
    paragraphs: [opening(told)],
    foods: food.mode === 'raise-iron' ? toEat(told) : [],
    lists: [...(food.mode === 'raise-iron' ? tips(told) : []), ...toMind(told)],
  };
}

function opening(told: Told): readonly Said[] {
  const { food } = told.advice;
  const { say } = told.voice;
  if (food.mode === 'hold-back') return [say('food.hold-back')];
  if (food.mode === 'general') return general(told);
  const haem = food.choices.filter((choice) => choice.haem);
  const easiest = haem.every(fromWater) ? 'food.kinds.fish' : 'food.kinds';
  const partSaid = food.cautions.some((code) => partOfPlan.includes(code));
  return [
    ...(partSaid ? [] : [say('food.part')]),
    say(haem.length === 0 ? 'food.kinds.plants' : easiest),
  ];
}

/** "You need no special diet" would reassure where nothing is known yet. */
function general({ advice: { food }, interpretation, voice: { say } }: Told): readonly Said[] {
  const known = interpretation.pattern.main === 'all-in-range';
  return [
    say(known ? 'food.general' : 'food.general.unclear'),
    ...food.cautions
      .filter((code) => code === mixOfFoods)
      .map(() => say(`food.caution.${mixOfFoods}`)),
  ];
}

const mixOfFoods = 'usual-healthy-eating';

/** Nobody is told of meat who was offered none. */
const fromWater = ({ kind }: FoodChoice) => kind === 'fish' || kind === 'shellfish';
const isEgg = ({ kind }: FoodChoice) => kind === 'egg';

/** Cautions that already keep food in its place. */
const partOfPlan: readonly string[] = ['food-alone-is-not-enough', 'food-is-not-the-cause'];

/** What the letter names; the rest of the list stands on the week's sheet. */
function shown({ choices, partners }: FoodAdvice) {
  return {
    haem: choices.filter((choice) => choice.haem).slice(0, most.haem),
    plants: choices.filter((choice) => !choice.haem).slice(0, most.plants),
    partners: partners.slice(0, most.partners),
  };
}

function toEat({ advice: { food }, voice }: Told): readonly SignedList[] {
  const { haem, plants, partners } = shown(food);
  const items = (choices: readonly FoodChoice[]) =>
    choices.map((choice) => voice.food(choice.food));
  return [
    {
      sign: 'portion' as const,
      heading: voice.say(haem.every(fromWater) ? 'food.list.fish' : 'food.list.meat'),
      items: items(haem),
    },
    {
      sign: 'food' as const,
      heading: voice.say(plants.some(isEgg) ? 'food.list.plants-and-eggs' : 'food.list.plants'),
      items: items(plants),
    },
    {
      sign: 'fruit' as const,
      heading: voice.say('food.list.vitamin-c'),
      items: items(partners),
    },
  ].filter((list) => list.items.length > 0);
}

/** The first swap says how much it changes; more figures would be more sums. */
function tips({ advice: { food }, voice: { say } }: Told): Lists {
  const swaps = withoutSecondDrink(food.swaps.slice(0, most.swaps).filter(isNotListed(food)));
  const [answer] = food.answers.filter(({ swap }) => !drinks.includes(swap));
  const both = [...swaps, ...food.answers].some(({ swap }) => swap === 'tea-between-meals');
  const items = [...swaps, ...(answer === undefined ? [] : [answer])]
    .flatMap(({ swap, size }, at) => {
      const code = both && drinks.includes(swap) ? 'tea-between-meals' : swap;
      return at === 0 && swaps.length > 0
        ? [`swap.${code}`, `swap.size.${size}`]
        : [`swap.${code}`];
    })
    .filter(isLetterKey)
    .map((key) => say(key));
  return items.length === 0 ? [] : [{ heading: say('food.list.tips'), items }];
}

/** The list of vitamin C foods already says to eat them with plants. */
function isNotListed({ partners }: FoodAdvice): (swap: Swap) => boolean {
  return ({ swap }) => partners.length === 0 || swap !== 'vitamin-c-with-plant-meal';
}

const drinks: readonly string[] = ['tea-between-meals', 'coffee-between-meals'];

/** The sentence about tea speaks of coffee too. */
function withoutSecondDrink(swaps: readonly Swap[]): readonly Swap[] {
  const tea = swaps.some(({ swap }) => swap === 'tea-between-meals');
  return tea ? swaps.filter(({ swap }) => swap !== 'coffee-between-meals') : swaps;
}

/** Cautions are never cut for length; of two that keep food in its place, one is enough. */
function toMind({ advice: { food }, voice }: Told): Lists {
  const [inPlace] = partOfPlan.filter((code) => food.cautions.includes(code));
  const items = cautionCodes(food)
    .filter((code) => code === inPlace || !partOfPlan.includes(code))
    .filter((code) => food.mode !== 'general' || code !== mixOfFoods)
    .map((code) => `food.caution.${code}`)
    .filter(isLetterKey)
    .map((key) => voice.say(key));
  return items.length === 0 ? [] : [{ heading: voice.say('food.list.care'), items }];
}

function cautionCodes(food: FoodAdvice): readonly string[] {
  const { haem, plants, partners } = shown(food);
  const beside = [...haem, ...plants, ...partners].flatMap((choice) => choice.cautions);
  return [...new Set([...food.cautions, ...beside])];
}
