// Which foods a person is offered: fitting, varied, affordable, and each with its reason.
import { describe, expect, it } from 'vitest';
import { foods } from '../../src/knowledge/foods.js';
import { diets } from '../../src/terms.js';
import { adviceFor, suggested } from './build.js';

const byId = new Map(foods.map((food) => [food.id, food]));
const tagsOf = (id: string): readonly string[] => byId.get(id)?.tags ?? [];

describe('the foods offered', () => {
  it.each(diets)('are six to eight, at least three of them cheap, for a %s diet', (pattern) => {
    const { choices, partners } = adviceFor({ diet: { pattern } }).food;
    expect(choices.length).toBeGreaterThanOrEqual(6);
    expect(choices.length).toBeLessThanOrEqual(8);
    expect(choices.filter((choice) => choice.lowCost).length).toBeGreaterThanOrEqual(3);
    expect(new Set(choices.map((choice) => choice.kind)).size).toBeGreaterThanOrEqual(5);
    expect(partners.length).toBeGreaterThanOrEqual(2);
  });

  it('put the easily absorbed iron first where it is eaten', () => {
    const haem = adviceFor({ diet: { pattern: 'no-restriction' } }).food.choices.map(
      (one) => one.haem,
    );
    expect(haem).toEqual([...haem].sort((a, b) => Number(b) - Number(a)));
    expect(haem[0]).toBe(true);
  });

  it('differ between a vegan and a butcher', () => {
    const vegan = suggested(adviceFor({ diet: { pattern: 'vegan' } }));
    const butcher = suggested(
      adviceFor({ diet: { pattern: 'no-restriction' }, patient: { sex: 'male' } }),
    );
    expect(vegan.every((id) => tagsOf(id).includes('vegan'))).toBe(true);
    expect(butcher.some((id) => tagsOf(id).includes('meat'))).toBe(true);
    expect(butcher).not.toEqual(vegan);
  });

  it('hold both meat and plants when nobody asked, and nothing a faith may forbid', () => {
    const advice = adviceFor();
    const { choices } = advice.food;
    expect(choices.some((choice) => choice.haem)).toBe(true);
    expect(choices.filter((choice) => !choice.haem).length).toBeGreaterThanOrEqual(3);
    for (const id of suggested(advice))
      for (const tag of ['pork', 'beef', 'blood', 'shellfish', 'alcohol'])
        expect(tagsOf(id)).not.toContain(tag);
    expect(advice.food.cautions).toContain('choose-what-you-eat');
  });

  it('come from the kitchen the person named', () => {
    const { choices } = adviceFor({
      diet: { pattern: 'vegetarian', cuisines: ['South Asian'] },
    }).food;
    const own = choices.filter((choice) => byId.get(choice.food)?.cuisines.includes('south-asian'));
    expect(own.length).toBeGreaterThanOrEqual(4);
    expect(choices[0]?.why.map((line) => line.code)).toContain('in-your-cuisine');
  });

  it('are all cheap when money is short', () => {
    const { choices, partners } = adviceFor({ diet: { pattern: 'vegan', lowCost: true } }).food;
    expect([...choices, ...partners].every((choice) => choice.lowCost)).toBe(true);
  });

  // NHS and Food Standards Scotland: no liver in pregnancy. A pregnancy nobody asked about counts as possible.
  it.each([
    { name: 'a man', patient: { sex: 'male' }, liver: true },
    { name: 'a woman of 40', patient: { sex: 'female' }, liver: false },
    { name: 'a woman of 60', patient: { sex: 'female', ageMonths: 720 }, liver: true },
    { name: 'somebody of unknown sex', patient: { sex: 'unknown' }, liver: false },
    { name: 'a man of unknown age', patient: { sex: 'male', ageMonths: null }, liver: false },
    { name: 'a boy of 17', patient: { sex: 'male', ageMonths: 215 }, liver: false },
  ] as const)('offer liver or not to $name', ({ patient, liver }) => {
    const ids = suggested(adviceFor({ patient, diet: { pattern: 'no-restriction' } }));
    expect(ids.includes('liver-chicken')).toBe(liver);
  });

  it.each([
    { condition: 'gout', out: 'liver-chicken', why: 'gout' },
    { condition: 'diabetes', out: 'orange-juice', why: 'sugar' },
    { condition: 'kidney-stones', out: 'spinach', why: 'kidney-stones' },
    { condition: 'g6pd-deficiency', out: 'fava', why: 'g6pd' },
    // Falafel is made of broad beans in many kitchens: common practice, no source.
    { condition: 'g6pd-deficiency', out: 'falafel', why: 'g6pd' },
    { condition: 'coeliac-disease', out: 'bread-wholemeal', why: 'avoids' },
    { condition: 'high-blood-pressure', out: 'corned-beef', why: 'salt' },
    { condition: 'liver-disease', out: 'mussels', why: 'liver-disease' },
    { condition: 'high-potassium', out: 'sweet-potato', why: 'potassium' },
  ] as const)('leave out $out with $condition', ({ condition, out, why }) => {
    const { food } = adviceFor({
      patient: { sex: 'male', conditions: [condition] },
      diet: { pattern: 'no-restriction' },
    });
    expect(food.leftOut).toContainEqual({ food: out, why });
    expect(food.choices.map((choice) => choice.food)).not.toContain(out);
  });

  it('account for every food of the table, chosen or left out', () => {
    const advice = adviceFor({ diet: { pattern: 'vegan' } });
    const all = [...suggested(advice), ...advice.food.leftOut.map((line) => line.food)];
    expect([...all].sort()).toEqual(foods.map((food) => food.id).sort());
  });

  it('show a child no milligrams, and whole nuts only from five years', () => {
    const four = adviceFor({ patient: { ageMonths: 59 }, diet: { pattern: 'vegan' } }).food;
    const five = adviceFor({ patient: { ageMonths: 60 }, diet: { pattern: 'vegan' } }).food;
    expect(four.choices.every((choice) => 'size' in choice.amount)).toBe(true);
    expect(four.choices.some((choice) => ['nut', 'seed'].includes(choice.kind))).toBe(false);
    expect(five.choices.some((choice) => ['nut', 'seed'].includes(choice.kind))).toBe(true);
  });

  it('round milligrams to the half, and use a word where sources disagree', () => {
    const { choices } = adviceFor({ diet: { pattern: 'fish-only' } }).food;
    const amount = (id: string) => choices.find((choice) => choice.food === id)?.amount;
    expect(amount('sardines-tin')).toEqual({ milligrams: 3 });
    expect(amount('tofu')).toEqual({ size: 'some' });
    expect(amount('mussels')).toEqual({ size: 'some' });
  });

  it('come with a word on labels for whoever must avoid something', () => {
    const label = 'check-label-for-what-you-avoid';
    const said = (given: Parameters<typeof adviceFor>[0]) =>
      adviceFor(given).food.choices.flatMap((choice) => choice.cautions);
    expect(said({ diet: { pattern: 'vegan', avoids: ['nuts'] } })).toContain(label);
    expect(said({ diet: { pattern: 'vegan' } })).not.toContain(label);
    expect(said({ diet: { pattern: 'vegan' } })).toContain('read-the-label');
  });

  it('send people with kidney disease to a dietitian', () => {
    const { food } = adviceFor({ patient: { conditions: ['kidney-disease'] } });
    expect(food.askDietitian).toBe(true);
    expect(food.cautions).toContain('kidney-team-plans-diet');
  });

  it('are the same for the same person', () => {
    const given = { diet: { pattern: 'no-pork', cuisines: ['west-african'] } } as const;
    expect(adviceFor(given)).toEqual(adviceFor(given));
  });
});
