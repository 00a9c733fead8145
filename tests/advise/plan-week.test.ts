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
});
