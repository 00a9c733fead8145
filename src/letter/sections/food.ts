// Food advice arrives; what to eat, in which company and when to have tea leaves, or nothing where food must not be spoken of.
import type { FoodAdvice, FoodChoice } from '../../advise/advice.js';
import type { Content, Said } from '../content.js';
import { isLetterKey } from '../english.js';
import type { Told } from '../letter-input.js';

const mostNotes = 6;

export function tellFood(told: Told): Content['food'] {
  const { food } = told.advice;
  if (food.mode === 'none') return null;
  const { say } = told.voice;
  return {
    heading: say('food.heading'),
    paragraphs: [opening(told)],
    lists: food.mode === 'raise-iron' ? lists(told) : [],
    notes: [...(food.mode === 'raise-iron' ? swaps(told) : []), ...cautions(told)].slice(
      0,
      mostNotes + food.cautions.length,
    ),
  };
}

function opening({ advice: { food }, voice: { say } }: Told): readonly Said[] {
  if (food.mode === 'general') return [say('food.general')];
  if (food.mode === 'hold-back') return [say('food.hold-back')];
  const haem = food.choices.some((choice) => choice.haem);
  return [say('food.part'), say(haem ? 'food.kinds' : 'food.kinds.plants')];
}

function lists({ advice: { food }, voice }: Told): NonNullable<Content['food']>['lists'] {
  const haem = food.choices.filter((choice) => choice.haem);
  const plants = food.choices.filter((choice) => !choice.haem);
  const items = (choices: readonly FoodChoice[]) =>
    choices.map((choice) => voice.food(choice.food));
  return [
    { heading: voice.say('food.list.meat'), items: items(haem) },
    { heading: voice.say('food.list.plants'), items: items(plants) },
    { heading: voice.say('food.list.vitamin-c'), items: items(food.partners) },
  ].filter((list) => list.items.length > 0);
}

/** The first swap says how much it changes; more figures would be more sums. */
function swaps({ advice: { food }, voice: { say } }: Told): readonly Said[] {
  return food.swaps
    .slice(0, 3)
    .flatMap(({ swap, size }, index) =>
      [`swap.${swap}`, ...(index === 0 ? [`swap.size.${size}`] : [])]
        .filter(isLetterKey)
        .map((key) => say(key)),
    );
}

function cautions({ advice: { food }, voice: { say } }: Told): readonly Said[] {
  return cautionCodes(food)
    .map((code) => `food.caution.${code}`)
    .filter(isLetterKey)
    .map((key) => say(key));
}

function cautionCodes(food: FoodAdvice): readonly string[] {
  const beside = [...food.choices, ...food.partners].flatMap((choice) => choice.cautions);
  return [...new Set([...food.cautions, ...beside])];
}
