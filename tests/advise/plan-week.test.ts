// Seven simple meals from the chosen foods.
import { describe, expect, it } from 'vitest';
import { drinkCodes, mealCodes } from '../../src/advise/codes.js';
import { planWeek } from '../../src/advise/index.js';
import { adviceFor, buildReport, suggested } from './build.js';

type Given = NonNullable<Parameters<typeof adviceFor>[0]>;
const weekOf = (given: Given) => planWeek(adviceFor(given), buildReport(given));

describe('planWeek', () => {
  it('has one meal for each of seven days, from suggested foods only', () => {
    const given = { diet: { pattern: 'vegan', cuisines: ['south-asian'] } } as const;
    const week = weekOf(given);
    expect(week.map((idea) => idea.day)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    const allowed = suggested(adviceFor(given));
    for (const idea of week) {
      expect(allowed).toContain(idea.food);
      expect(mealCodes).toContain(idea.meal);
      expect(drinkCodes).toContain(idea.drink);
      if (idea.partner !== null) expect(allowed).toContain(idea.partner);
    }
  });

  it('puts a vitamin C food beside every plant', () => {
    for (const idea of weekOf({ diet: { pattern: 'vegan' } })) expect(idea.partner).not.toBeNull();
  });

  // Liver at most once a week for adults: common practice, from memory.
  it('serves liver once at most', () => {
    const week = weekOf({ patient: { sex: 'male' }, diet: { pattern: 'no-restriction' } });
    expect(week.filter((idea) => idea.food.startsWith('liver')).length).toBe(1);
  });

  it('is empty where food must not raise iron', () => {
    expect(weekOf({ pattern: 'raised-tsat-and-ferritin' })).toEqual([]);
    expect(weekOf({ pattern: 'all-in-range' })).toEqual([]);
  });

  it('gives a small child water, and moves drinks in a month of fasting', () => {
    expect(weekOf({ patient: { ageMonths: 30 } })[0]?.drink).toBe('water-with-meal');
    const fasting = weekOf({ diet: { pattern: 'no-pork', fastingMonth: true } });
    expect(fasting[0]?.drink).toBe('drinks-two-hours-after-sunset-meal');
  });

  it('eats only before dawn and after sunset in a month of fasting', () => {
    const week = weekOf({ diet: { pattern: 'vegan', fastingMonth: true } });
    const times = new Set(week.map(({ meal }) => meal));
    expect([...times].sort()).toEqual(['after-sunset', 'before-dawn']);
  });

  // Ages at which tea and coffee are spoken of: this project's own proposal (food-policy rows).
  it.each([
    [59, 'water-with-meal'],
    [60, 'tea-an-hour-before-or-two-after'],
    [167, 'tea-an-hour-before-or-two-after'],
    [168, 'tea-or-coffee-an-hour-before-or-two-after'],
  ])('at %i months says %s', (ageMonths, drink) => {
    expect(weekOf({ patient: { ageMonths } })[0]?.drink).toBe(drink);
  });

  it('puts fruit beside a sweet breakfast and no lemon on bread', () => {
    const diets = ['no-restriction', 'vegetarian', 'vegan'] as const;
    const week = diets.flatMap((pattern) => weekOf({ diet: { pattern } }));
    const beside = (food: string) => week.filter((idea) => idea.food === food);
    for (const { partner } of beside('wheat-biscuits'))
      expect(['lemon-juice', 'tomato', 'red-pepper', 'broccoli']).not.toContain(partner);
    for (const { partner } of beside('bread-wholemeal')) expect(partner).not.toBe('lemon-juice');
    expect(beside('wheat-biscuits').length).toBeGreaterThan(0);
  });

  it('offers seldom eaten foods only where a cuisine names them', () => {
    const east = adviceFor({ diet: { pattern: 'no-restriction', cuisines: ['east-african'] } });
    expect(suggested(east)).not.toContain('heart');
    const south = adviceFor({ diet: { pattern: 'no-beef', cuisines: ['south-asian'] } });
    expect(suggested(south)).not.toContain('oysters-cooked');
    const latin = adviceFor({ diet: { pattern: 'no-restriction', cuisines: ['latin-american'] } });
    expect(suggested(latin).length).toBeGreaterThanOrEqual(6);
  });
});
