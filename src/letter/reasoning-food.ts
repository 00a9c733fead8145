// Advice on food and the report arrive; the food part of the clinician's sheet leaves, in whole sentences.
import type { Advice, FoodChoice } from '../advise/advice.js';
import { cuisineCodes, leftOutReasons } from '../advise/codes.js';
import type { Reason } from '../interpret/interpretation.js';
import { coefficient } from '../knowledge/absorption.js';
import type { Report } from '../report/report.js';
import type { Language } from './language.js';
import type { ReasoningBlock } from './reasoning.js';

type Words = (key: string, values?: Readonly<Record<string, string>>) => string;
type Cite = (rules: readonly string[]) => string;
type Sheet = {
  readonly words: Words;
  readonly name: (food: string) => string;
  readonly cite: Cite;
};

/**
 * Three parts: what the food section does and the figures for staff, the foods chosen, the foods left out.
 * Empty parts are not made.
 * @param words Says a key of the clinician's catalogue.
 * @param cite Where rules stand, as a mark behind a sentence.
 * @param language English, for the names of foods.
 * @example foodBlocks(explain.words, cite, report, advice, english).map(({ slug }) => slug)
 *   // ['food', 'food-chosen', 'food-left-out']
 */
export function foodBlocks(
  words: Words,
  cite: Cite,
  report: Report,
  advice: Advice,
  language: Language,
): readonly ReasoningBlock[] {
  const { food, staff } = advice;
  const sheet: Sheet = { words, name: shortName(language), cite };
  const block = (slug: string, parts: Partial<ReasoningBlock>): ReasoningBlock => ({
    slug,
    look: 'part',
    heading: words(`heading.${slug}`),
    paragraphs: [],
    list: [],
    table: null,
    ...parts,
  });
  const why = food.why.map(({ code }) => words(`food-mode-reason.${code}`));
  const all = [...food.choices, ...food.partners];
  return [
    block('food', {
      paragraphs: [[words(`food-mode.${food.mode}`), ...why].join(' ')],
      list: [
        ...dietLines(words, report),
        ...staff.map((line) => `${staffLine(words, line)}${cite(line.rules)}`),
      ],
    }),
    ...(all.length === 0
      ? []
      : [
          block('food-chosen', {
            list: tips(sheet, advice, language),
            table: chosen(sheet, all),
          }),
        ]),
    ...(food.leftOut.length === 0
      ? []
      : [block('food-left-out', { list: leftOut(sheet, food.leftOut) })]),
  ];
}

/** Each tip as the letter says it, with how much one meal changed in the studies behind it. */
function tips({ words, cite }: Sheet, { food, sources }: Advice, language: Language) {
  return [...food.swaps, ...food.answers].map(({ swap, rules }) => {
    const tip = language.words.t(`swap.${swap}`, { ns: 'letter', nest: false });
    const number = sources.find(({ rule }) => rules.includes(rule))?.number ?? null;
    const said =
      number === null ? words('tip-without-figure', { tip }) : words('tip', { tip, number });
    return `${said}${cite(rules)}`;
  });
}

/** Names without portions: those of a child's letter. */
function shortName({ words }: Language): (food: string) => string {
  return (food) => words.t(food, { ns: 'foods', context: 'child', nest: false });
}

function dietLines(words: Words, { patient: { diet } }: Report): readonly string[] {
  if (diet === null) return [];
  const listed = (group: string, codes: readonly string[]) =>
    codes.map((code) => words(`${group}.${code}`)).join(', ');
  const known = diet.cuisines
    .map((name) => name.toLowerCase().replace(/[^a-z]+/g, '-'))
    .filter((code) => cuisineCodes.some((cuisine) => cuisine === code));
  return [
    ...(diet.pattern === null
      ? []
      : [words('diet-recorded', { diet: words(`diet.${diet.pattern}`) })]),
    ...(diet.avoids.length === 0
      ? []
      : [words('avoids-recorded', { avoids: listed('avoids', diet.avoids) })]),
    ...(known.length === 0
      ? []
      : [words('cuisines-recorded', { cuisines: listed('cuisine', known) })]),
    ...(diet.lowCost ? [words('low-cost-recorded')] : []),
    ...(diet.fastingMonth ? [words('fasting-month-recorded')] : []),
  ];
}

/**
 * One line of the sheet about figures that never reach the patient, with the group they hold for.
 * @throws when a code has no words: the parity test should have caught it.
 */
function staffLine(words: Words, { code, facts }: Reason): string {
  const told = Object.fromEntries(
    Object.entries(facts).map(([name, fact]) => [name, factInWords(words, name, fact)]),
  );
  const domain = {
    from: String(coefficient('collings-ferritin-from')),
    to: String(coefficient('collings-ferritin-to')),
  };
  const sentence = words(`staff.${code}`, { ...domain, ...told });
  return facts.upperLevel === undefined
    ? sentence
    : `${sentence} ${words('upper-level', { upperLevel: String(facts.upperLevel) })}`;
}

const catalogues: Readonly<Record<string, string>> = {
  body: 'need-body',
  group: 'need-group',
  why: 'staff-why',
  crp: 'staff-crp',
};

function factInWords(words: Words, name: string, fact: string | number): string {
  const group = catalogues[name];
  return group === undefined ? String(fact) : words(`${group}.${fact}`);
}

function chosen(
  { words, name, cite }: Sheet,
  choices: readonly FoodChoice[],
): ReasoningBlock['table'] {
  const columns = ['food', 'portion-iron', 'why'] as const;
  return {
    head: columns.map((column) => words(`column.${column}`)),
    rows: choices.map((choice) => [
      `${name(choice.food)}${cite(rulesOf(choice))}`,
      choice.vitaminC ? '' : amount(words, choice),
      choice.why.map(({ code }) => words(`chosen.${code}`)).join('; '),
    ]),
  };
}

const rulesOf = ({ why }: FoodChoice): readonly string[] => [
  ...new Set(why.flatMap(({ rules }) => rules)),
];

function amount(words: Words, { amount: iron, portionGrams }: FoodChoice): string {
  const grams = String(portionGrams);
  return 'milligrams' in iron
    ? words('portion.milligrams', { milligrams: String(iron.milligrams), grams })
    : words(`portion.${iron.size}`, { grams });
}

/** One sentence for each reason, the foods in the order of the table; what only fitted less well is counted. */
function leftOut({ words, name }: Sheet, foods: Advice['food']['leftOut']): readonly string[] {
  return leftOutReasons.flatMap((why) => {
    const names = foods.filter((each) => each.why === why).map(({ food }) => name(food));
    const values = { foods: names.join(', '), count: String(names.length) };
    return names.length === 0 ? [] : [words(`left-out.${why}`, values)];
  });
}
