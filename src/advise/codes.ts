// The closed lists of advice: every code this room can say. The words for each live in the locales.
import foods from '../knowledge/foods.json' with { type: 'json' };

/** Every food of the table, suggested or not; the order is the table's. */
export const foodIds: readonly string[] = foods.map((food) => food.id);

export const foodKinds = [
  'red-meat',
  'poultry',
  'offal',
  'blood',
  'fish',
  'shellfish',
  'egg',
  'pulse',
  'soy',
  'fortified-cereal',
  'grain',
  'starch',
  'leaf',
  'vegetable',
  'vitamin-c',
  'dried-fruit',
  'nut',
  'seed',
  'seaweed',
  'sweet',
  'dairy',
  'drink',
] as const;

/** Cuisines a report may name; others are passed over. */
export const cuisineCodes = [
  'british-irish',
  'caribbean',
  'east-african',
  'east-asian',
  'east-european',
  'latin-american',
  'mediterranean',
  'middle-eastern',
  'north-american',
  'pacific',
  'south-asian',
  'south-east-asian',
  'west-african',
] as const;
export type Cuisine = (typeof cuisineCodes)[number];

/** Changes to the day; the last three only answer questions people ask. */
export const swapCodes = [
  'tea-between-meals',
  'coffee-between-meals',
  'vitamin-c-with-plant-meal',
  'lemon-on-rice-or-dal',
  'meat-or-fish-with-plant-meal',
  'fish-with-plant-meal',
  'raised-bread-over-flat',
  'fermented-batter',
  'milk-another-time',
  'egg-with-vitamin-c',
  'drinks-after-the-fast-wait',
  'herbal-tea-and-cocoa-count-too',
  'milk-in-tea-does-not-help',
  'vitamin-c-partly-undoes-tea',
] as const;
export type SwapCode = (typeof swapCodes)[number];

/** How much one meal's plant iron changes, in honest words. Never a promise about a blood count. */
export const swapSizes = [
  'can-lose-half-or-more',
  'can-lose-a-third-or-more',
  'can-nearly-double',
  'can-rise-a-lot',
  'can-rise-a-little',
  'may-lose-half',
  'little-or-no-change',
  'only-partly',
] as const;

/** Said beside one food. */
export const foodCautionCodes = [
  'liver-once-a-week',
  'cook-liver-through',
  'cook-shellfish-through',
  'salty',
  'mash-soft-bones',
  'tuna-limit-in-pregnancy',
  'lead-shot-game',
  'boil-kidney-beans',
  'cook-taro-well',
  'check-gluten-label',
  'read-the-label',
  'check-label-for-what-you-avoid',
  'small-portion-for-child',
  'little-of-it-absorbed',
  'with-vitamin-c',
] as const;

/** Said once for the food section. */
export const foodSectionCautionCodes = [
  'choose-what-you-eat',
  'food-alone-is-not-enough',
  'food-is-not-the-cause',
  'keep-portions-to-age',
  'not-for-under-ones',
  'milk-limit-for-toddlers',
  'chop-food-for-small-child',
  'no-liver-in-pregnancy',
  'no-liver-if-you-may-be-pregnant',
  'kidney-team-plans-diet',
  'keep-vitamin-k-steady',
  'whole-fruit-not-juice',
  'calcium-tablets-apart',
  'do-not-stop-stomach-medicine',
  'vitamin-c-tablets-not-needed',
  'fasting-month-ask-first',
  'clay-and-ice-tell-us',
  'ask-dietitian',
  'usual-healthy-eating',
  'illness-blurs-iron',
  'thalassaemia-ask-before-iron',
  'ferritin-needs-explaining',
  'no-iron-or-vitamin-c-tablets',
  'no-fortified-cereal-or-iron-pot',
  'no-raw-shellfish',
  'little-or-no-alcohol',
  'team-plans-your-diet',
] as const;

/** The letter's own cautions. */
export const letterCautionCodes = [
  'cause-not-known',
  'no-iron-tablets-on-your-own',
  'no-iron-beyond-prescribed',
  'do-not-stop-medicines',
  'some-must-not-take-iron',
  'lock-iron-away-from-children',
  'in-range-does-not-rule-out',
  'illness-changes-results',
  'low-iron-is-not-your-fault',
  'periods-are-a-health-matter',
  'show-this-letter',
  'for-this-person-only',
] as const;

export const cautionCodes = [
  ...foodCautionCodes,
  ...foodSectionCautionCodes,
  ...letterCautionCodes,
] as const;
export type CautionCode = (typeof cautionCodes)[number];

/** Signs that need help, most pressing first. */
export const helpSigns = [
  'chest-pain',
  'fainting',
  'breathless-at-rest',
  'bleeding-will-not-stop',
  'vomiting-blood',
  'confusion',
  'sudden-loss-of-sight',
  'one-sided-weakness',
  'pregnant-and-bleeding',
  'child-limp-or-very-sleepy',
  'child-breathing-hard',
  'child-having-a-fit',
  'child-swallowed-iron',
  'black-or-bloody-stool',
  'heart-racing-at-rest',
  'pregnant-and-dizzy',
  'very-heavy-periods-now',
  'swollen-painful-leg',
  'fever-with-high-ferritin',
  'child-refusing-feeds',
  'tar-like-stool-on-iron',
  'feeling-worse',
  'not-heard-by-date',
  'periods-stop-daily-life',
  'bleeding-after-periods-stopped',
  'weight-loss-or-bowel-change',
] as const;

/** What is said of prescribed iron tablets. */
export const tabletPoints = [
  'as-prescribed',
  'empty-stomach-with-water',
  'with-food-if-upset',
  'not-with-tea-milk-eggs',
  'apart-from-other-medicines',
  'ask-pharmacist-about-gaps',
  'upset-stomach-is-common',
  'tell-us-before-stopping',
  'dark-stool-is-expected',
  'tar-like-stool-is-not',
  'lock-away-from-children',
  'if-child-swallows-call',
  'fasting-month-timing',
] as const;

/** Why a food was not suggested. */
export const leftOutReasons = [
  'diet',
  'diet-not-known',
  'avoids',
  'alcohol',
  'blocks-iron',
  'comparison-only',
  'figures-disagree',
  'little-iron',
  'pregnancy',
  'may-be-pregnant',
  'child',
  'age-not-known',
  'potassium',
  'salt',
  'gout',
  'sugar',
  'kidney-stones',
  'g6pd',
  'vitamin-k',
  'liver-disease',
  'others-fitted-better',
] as const;
export type LeftOutReason = (typeof leftOutReasons)[number];

/** Why a food was chosen. */
export const choiceReasons = [
  'haem-iron',
  'plant-iron',
  'vitamin-c-partner',
  'in-your-cuisine',
  'first-pick-for-diet',
  'low-cost',
  'another-kind',
] as const;
export type ChoiceReason = (typeof choiceReasons)[number];

/** Why the food section is as it is. */
export const modeReasons = [
  'clinician-switched-off',
  'urgent-result',
  'under-twelve-months',
  'doubtful-data',
  'known-iron-overload',
  'transferrin-saturation-raised',
  'ferritin-raised',
  'pattern-forbids-iron',
  'thalassaemia-recorded',
  'haemoglobin-high',
  'recent-iron-injection',
  'low-iron-pattern',
  'inflammation-without-low-stores',
  'not-enough-known',
  'no-low-iron-pattern',
] as const;
export type ModeReason = (typeof modeReasons)[number];

/** Lines of the clinician's sheet. */
export const staffCodes = [
  'daily-need',
  'daily-need-vegetarian',
  'daily-need-donor',
  'daily-need-not-shown',
  'absorption-collings',
  'absorption-collings-not-used',
  'whole-diet-armah',
  'whole-diet-armah-not-used',
  'food-is-not-the-lead',
  'eat-for-iron-withheld',
  'tablets-prescribed-though-iron-may-harm',
  'cuisine-not-in-table',
  'diet-not-recorded',
] as const;

/** Pieces of a week's meal ideas. */
export const mealCodes = ['breakfast', 'midday', 'evening', 'before-dawn', 'after-sunset'] as const;
export type Meal = (typeof mealCodes)[number];
export const drinkCodes = [
  'water-with-meal',
  'tea-or-coffee-an-hour-before-or-two-after',
  'tea-an-hour-before-or-two-after',
  'drinks-two-hours-after-sunset-meal',
] as const;
export type Drink = (typeof drinkCodes)[number];
