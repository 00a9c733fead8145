// Advice on food arrives; a week of meals for the kitchen door leaves, with no name and no result on it.
import type { MealIdea } from '../advise/advice.js';
import { planWeek } from '../advise/index.js';
import type { Direction } from '../direction.js';
import { type Checked, fine } from '../problem.js';
import type { Band, Content, Said } from './content.js';
import { type FridgeKey, isFridgeKey, isLetterKey } from './english.js';
import type { LetterInput, Told } from './letter-input.js';
import { CannotSay } from './say.js';
import { tellRunning } from './sections/closing.js';
import { tellBands } from './sections/opening.js';
import { tellWith } from './tell-with.js';

export type MealTold = {
  /** Day of the week in the sheet's language. */
  readonly day: string;
  readonly time: Said;
  readonly idea: Said;
  /** A vitamin C food, where the meal is helped by one. */
  readonly partner: Said | null;
};

/** One page, same shape in every language. */
export type FridgeSheet = {
  readonly lang: string;
  readonly dir: Direction;
  readonly title: Said;
  readonly bands: readonly Band[];
  readonly intro: Said;
  readonly columns: Readonly<Record<'day' | 'meal' | 'with', Said>>;
  readonly meals: readonly MealTold[];
  readonly drink: { readonly heading: Said; readonly lines: readonly Said[] };
  readonly care: { readonly heading: Said; readonly lines: readonly Said[] };
  readonly running: Pick<Content['running'], 'footer' | 'pageOf'>;
};

/**
 * The week's sheet, or null where no food was suggested: iron may harm, or nothing is to be raised.
 * Problems: a language without the words of the sheet.
 * @example composeFridgeSheet(input) // { ok: true, value: { meals: [seven], … }, notes: [] }
 */
export function composeFridgeSheet(input: LetterInput): Checked<FridgeSheet | null> {
  const week = planWeek(input.advice, input.report);
  return week.length === 0 ? fine(null) : tellWith(input, (told) => tell(told, week));
}

function tell(told: Told, week: readonly MealIdea[]): FridgeSheet {
  const { language, voice } = told;
  const { footer, pageOf } = tellRunning(told);
  const words = {
    lang: language.tag,
    dir: language.dir,
    title: voice.fridge('title'),
    intro: voice.fridge('intro'),
    columns: {
      day: voice.fridge('column.day'),
      meal: voice.fridge('column.meal'),
      with: voice.fridge('column.with'),
    },
    meals: week.map((idea) => tellMeal(told, idea)),
    drink: { heading: voice.fridge('drink.heading'), lines: drinks(told, week) },
    care: { heading: voice.fridge('care.heading'), lines: care(told, week) },
    running: { footer, pageOf },
  };
  const bands = tellBands(told).map((band) =>
    band.key === 'band.unchecked' ? { ...voice.fridge('unchecked'), lang: null } : band,
  );
  return { ...words, bands };
}

function tellMeal({ language, voice }: Told, { day, meal, food, partner }: MealIdea): MealTold {
  return {
    day: dayOfWeek(language.words.language, day),
    time: onOneLine(voice.fridge(fridgeKey(`time.${meal}`))),
    idea: voice.fridge(fridgeKey(`meal.${food}`)),
    partner: partner === null ? null : voice.food(partner),
  };
}

/** A short time of day is not broken: seven broken ones would cost the page its large type. */
const shortTime = 18;

function onOneLine(time: Said): Said {
  return time.text.length > shortTime
    ? time
    : { ...time, text: time.text.replaceAll(' ', '\u00a0') };
}

const answeredHere: readonly string[] = [
  'herbal-tea-and-cocoa-count-too',
  'milk-in-tea-does-not-help',
];

function drinks({ advice, voice }: Told, week: readonly MealIdea[]): readonly Said[] {
  const codes = [...new Set(week.map(({ drink }) => drink))];
  const answers = advice.food.answers
    .filter(({ swap }) => answeredHere.includes(swap))
    .map(({ swap }) => `swap.${swap}`)
    .filter(isLetterKey);
  return [
    ...codes.map((code) => voice.fridge(fridgeKey(`drink.${code}`))),
    ...answers.map((key) => voice.say(key)),
  ];
}

/** Every caution of the letter's food part: the sheet is read without the letter. */
function care({ advice: { food }, voice }: Told, week: readonly MealIdea[]): readonly Said[] {
  const beside = [...week, ...food.partners].flatMap(({ cautions }) => cautions);
  const cautions = [...new Set([...food.cautions, ...beside])]
    .map((code) => `food.caution.${code}`)
    .filter(isLetterKey);
  return [
    ...cautions.map((key) => voice.say(key)),
    voice.fridge('care.unsure'),
    voice.fridge('care.for-one-person'),
    voice.fridge('care.with-letter'),
  ];
}

function fridgeKey(key: string): FridgeKey {
  if (!isFridgeKey(key)) throw new CannotSay(key);
  return key;
}

/** 1 is a Monday: 5 January 2026 was one. */
function dayOfWeek(locale: string, day: number): string {
  const format = new Intl.DateTimeFormat(locale, { weekday: 'long', timeZone: 'UTC' });
  return format.format(new Date(Date.UTC(2026, 0, 4 + day)));
}
