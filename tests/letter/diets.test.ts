// Twelve people who eat differently: what their letters and week's sheets say, and what they must never say.
import { describe, expect, it } from 'vitest';
import { planWeek } from '../../src/advise/index.js';
import { foods } from '../../src/knowledge/foods.js';
import { english as catalogue } from '../../src/letter/english.js';
import { composeFridgeSheet, type LetterInput } from '../../src/letter/index.js';
import { examples } from './examples.js';
import { letterOf } from './fixtures.js';
import { compose, everySaid, plain, spokenProse } from './read-content.js';
import { count, fleschKincaid, meanSentence } from './readability.js';

const people = await examples('tests/advise/diets');
const person = (name: string): LetterInput => {
  const found = people.find((each) => each.name === `${name}.json`);
  if (found === undefined) throw new Error(`no person ${name}`);
  return found.input;
};

function sheetOf(input: LetterInput) {
  const sheet = composeFridgeSheet(input);
  if (!sheet.ok || sheet.value === null) throw new Error('no sheet');
  return sheet.value;
}

const foodsNamed = (input: LetterInput) =>
  everySaid(compose(input).food)
    .filter(({ key }) => key.startsWith('foods:'))
    .map(({ key }) => key.replace('foods:', ''));
const messages: Readonly<Record<string, string>> = catalogue.fridge;
const tagsOf = (id: string) => foods.find((food) => food.id === id)?.tags ?? [];

/** Tags that a way of eating or an allergy rules out: what the words mean, no source needed. */
const never: readonly (readonly [name: string, tags: readonly string[]])[] = [
  ['no-pork-west-african', ['pork', 'blood']],
  ['no-beef-south-asian', ['beef', 'blood']],
  ['fish-only-pacific', ['meat', 'poultry', 'offal', 'blood']],
  ['vegetarian-south-asian', ['meat', 'poultry', 'offal', 'blood', 'fish', 'shellfish']],
  ['vegan', ['meat', 'poultry', 'offal', 'blood', 'fish', 'shellfish', 'egg', 'dairy']],
  ['gluten-free', ['gluten']],
  ['nut-allergy', ['nuts']],
  ['fasting-month-middle-eastern', ['pork', 'blood']],
];

describe('twelve letters', () => {
  it('are of twelve people', () => {
    expect(people).toHaveLength(12);
  });

  it.each(people)('$name: names foods, each in words, and a week of seven meals', ({ input }) => {
    expect(input.advice.food.mode).toBe('raise-iron');
    expect(foodsNamed(input).length).toBeGreaterThanOrEqual(5);
    const sheet = sheetOf(input);
    expect(sheet.meals).toHaveLength(7);
    for (const { idea, time, day } of sheet.meals)
      for (const text of [idea.text, time.text, day]) expect(text).not.toBe('');
  });

  // Grade 5 to 6: American Family Physician 2015; the mean of 12 words is this project's own proposal.
  it.each(people)('$name: is at grade 6 or below, in short sentences', ({ input }) => {
    const counts = count(spokenProse(compose(input)));
    expect(fleschKincaid(counts)).toBeLessThanOrEqual(6);
    expect(meanSentence(counts)).toBeLessThanOrEqual(12);
  });

  it.each(never)('%s: is offered nothing the person does not eat', (name, tags) => {
    const input = person(name);
    const week = planWeek(input.advice, input.report).flatMap(({ food, partner }) =>
      partner === null ? [food] : [food, partner],
    );
    for (const id of [...foodsNamed(input), ...week])
      expect(tagsOf(id).filter((tag) => tags.includes(tag))).toEqual([]);
  });

  it.each(people)('$name: says no tip twice and speaks of tea and coffee once', ({ input }) => {
    const keys = everySaid(compose(input).food).map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    const drinks = keys.filter((key) => /^swap\.(tea|coffee)-between/.test(key));
    expect(drinks.length).toBeLessThanOrEqual(1);
  });

  // NHS, foods to avoid in pregnancy: liver and liver products; from memory.
  it('offer no liver in pregnancy, and say why not', () => {
    const input = person('pregnant');
    expect(foodsNamed(input).filter((id) => id.startsWith('liver'))).toEqual([]);
    const care = sheetOf(input).care.lines.map(({ key }) => key);
    expect(care).toContain('food.caution.no-liver-in-pregnancy');
  });

  it('offer a child no coffee, and speak to the carer', () => {
    const sheet = sheetOf(person('child'));
    expect(sheet.drink.lines[0]?.key).toBe('fridge:drink.tea-an-hour-before-or-two-after');
    expect(sheet.intro.text).toContain("your child's letter");
  });

  it('put no meal between dawn and sunset in a month of fasting', () => {
    const sheet = sheetOf(person('fasting-month-middle-eastern'));
    for (const { time } of sheet.meals)
      expect(['fridge:time.before-dawn', 'fridge:time.after-sunset']).toContain(time.key);
  });

  it('offer where money is short only what costs little', () => {
    for (const id of foodsNamed(person('low-cost'))) expect(tagsOf(id)).toContain('low-cost');
  });
});

describe("a vegan's and a butcher's letter", () => {
  const [vegan, butcher] = [person('vegan'), person('butcher-everything')];

  it('differ in the foods they suggest', () => {
    const shared = foodsNamed(vegan).filter((id) => foodsNamed(butcher).includes(id));
    expect(shared.length).toBeLessThan(foodsNamed(vegan).length / 2);
  });

  it('do not differ in respect: nobody is blamed, and each sheet has the same parts', () => {
    for (const input of [vegan, butcher]) {
      const letter = compose(input).cautions.map(({ key }) => key);
      expect(letter).toContain('caution.low-iron-is-not-your-fault');
    }
    const shape = (input: LetterInput) => Object.keys(sheetOf(input));
    expect(shape(vegan)).toEqual(shape(butcher));
    expect(sheetOf(vegan).meals).toHaveLength(sheetOf(butcher).meals.length);
    // Words that scold; common practice, no source.
    const scolding = /\b(should have|must eat|fault of|bad diet|poor diet|lack of meat)\b/i;
    for (const input of [vegan, butcher])
      expect(
        everySaid([compose(input), sheetOf(input)])
          .map(({ text }) => text)
          .join(' '),
      ).not.toMatch(scolding);
  });
});

describe("the week's sheet", () => {
  it.each(people)('$name: holds no name, no number and no result', ({ input }) => {
    const sheet = JSON.stringify(sheetOf(input));
    const { id, name } = input.report.patient;
    for (const secret of [id, ...(name?.split(' ') ?? [])])
      expect(sheet).not.toMatch(new RegExp(`\\b${secret}\\b`));
    for (const { copied } of input.interpretation.results)
      expect(plain(sheet)).not.toContain(`${copied.value} ${copied.unit}`);
    expect(sheet).not.toMatch(/ferritin|haemoglobin|anaemia/i);
  });

  it.each(people)(
    '$name: is at grade 6 or below, in sentences of at most 12 words',
    ({ input }) => {
      const { intro, drink, care } = sheetOf(input);
      const counts = count([intro, ...drink.lines, ...care.lines].map(({ text }) => text));
      expect(fleschKincaid(counts)).toBeLessThanOrEqual(6);
      expect(meanSentence(counts)).toBeLessThanOrEqual(12);
      expect(counts.longestSentence).toBeLessThanOrEqual(20);
    },
  );

  it('says on its face that nobody checked it, and that it is an example', () => {
    const keys = sheetOf(person('vegan')).bands.map(({ key }) => key);
    expect(keys).toEqual(['band.example', 'fridge:unchecked']);
  });

  it('is refused in a language that has no words for it', () => {
    const input = person('vegan');
    const words = input.language.words.cloneInstance();
    words.removeResourceBundle(words.language, 'fridge');
    const sheet = composeFridgeSheet({ ...input, language: { ...input.language, words } });
    expect(sheet.ok ? [] : sheet.problems.map(({ code }) => code)).toEqual(['language-message']);
  });

  const silent = [
    'raised-tsat-and-ferritin',
    'raised-ferritin-normal-tsat',
    'microcytosis-with-normal-iron',
    'all-in-range',
    'unclear',
    'high-haemoglobin',
  ] as const;
  it.each(silent)('is not made for %s', (pattern) => {
    const input = letterOf({ pattern });
    const food = { ...input.advice.food, mode: 'general' as const };
    for (const advice of [input.advice, { ...input.advice, food }])
      expect(composeFridgeSheet({ ...input, advice })).toMatchObject({ ok: true, value: null });
  });

  /** Words that name what some people do not eat; a dish may use one only when its food carries the tag. */
  const named: readonly (readonly [tag: string, word: RegExp])[] = [
    [
      'meat',
      /\b(beef|lamb|goat|venison|pork|chicken|turkey|duck|liver|meat|oxtail|kidney(?! bean)|heart|pudding|haggis|pate)\b/i,
    ],
    ['fish', /\b(sardine|anchov|mackerel|tuna|salmon|tilapia|whitebait|fish)/i],
    ['shellfish', /\b(prawn|crab|mussel|oyster|clam|cockle|octopus)/i],
    ['egg', /\begg/i],
    ['dairy', /\b(milk|cheese|yogurt|cream|ghee|paneer)\b|butter(?! bean)/i],
    ['nuts', /\b(nuts?|almond|peanut|cashew)/i],
    ['sesame', /\b(sesame|tahini|hummus)/i],
    ['soy', /\b(soya|tofu|tempeh|natto|miso)/i],
    [
      'gluten',
      /\b(wheat|bran|barley|couscous|bulgur|pitta|chapati|pasta|noodle|toast)|(?<!your usual )\bbread(?!fruit)/i,
    ],
  ];
  it.each(named)('names in no dish anything with %s but where the food has it', (tag, word) => {
    const wrong = foods
      .filter(({ role, tags }) => role === 'iron' && !tags.includes(tag))
      .filter(({ id }) => word.test(messages[`meal.${id}`] ?? ''));
    expect(wrong.map(({ id }) => id)).toEqual([]);
  });
});

const raised = (await examples()).filter(({ name }) =>
  ['too-much-iron.json', 'raised-stores-marker.json'].includes(name),
);

describe('a letter about raised ferritin', () => {
  it.each(raised)('$name holds no message that raises iron', ({ input }) => {
    const keys = everySaid(compose(input)).map(({ key }) => key);
    const raising = /^(foods:|fridge:|swap\.|food\.(list\.(?!care)|kinds|part)|step\.eat-for-iron)/;
    expect(keys.filter((key) => raising.test(key))).toEqual([]);
    expect(composeFridgeSheet(input)).toMatchObject({ ok: true, value: null });
  });
});
