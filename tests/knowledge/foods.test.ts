// The foods table against itself: portions, spreads and tags tell one story.
import { describe, expect, it } from 'vitest';
import { foodKinds } from '../../src/advise/codes.js';
import { foodPicks } from '../../src/knowledge/food-picks.js';
import { foodLimit } from '../../src/knowledge/food-policy.js';
import { foods } from '../../src/knowledge/foods.js';

const byId = new Map(foods.map((food) => [food.id, food]));

describe('the foods table', () => {
  it('gives each portion the iron of its weight, to the rounding of the table', () => {
    for (const food of foods) {
      const computed = (food.iron.value * food.portionGrams) / 100;
      expect(Math.abs(computed - food.portionIron.value), food.id).toBeLessThanOrEqual(0.0101);
    }
  });

  it('keeps every other reading of a food inside its spread', () => {
    for (const food of foods)
      for (const other of food.alternates) {
        expect(other.iron, food.id).toBeGreaterThanOrEqual(food.iron.low);
        expect(other.iron, food.id).toBeLessThanOrEqual(food.iron.high);
      }
  });

  it('never lets a number head a food whose sources differ by more than the limit', () => {
    for (const food of foods.filter((row) => row.headline))
      expect(food.iron.high / food.iron.low, food.id).toBeLessThanOrEqual(
        foodLimit('number-spread'),
      );
  });

  // The foods a spread of 1.8 catches, as worked out from the datasets by hand.
  it.each([
    'beef-steak',
    'pork-loin',
    'chicken-breast',
    'prawns',
    'mussels',
    'tofu',
    'spinach',
    'apricots-dry',
    'figs-dry',
    'dates',
    'orange-juice',
    'treacle',
    'turkey-dark',
    'teff',
    'wheat-biscuits',
  ])('shows no number for %s', (id) => {
    expect(byId.get(id)?.headline).toBe(false);
  });

  it.each(['clams', 'cockles', 'octopus', 'nori', 'treacle'])('never suggests %s', (id) => {
    expect(byId.get(id)?.role).toBe('figures-disagree');
  });

  it('calls only meat, fish and shellfish haem', () => {
    for (const food of foods) {
      const animal = food.tags.some((tag) => ['meat', 'fish', 'shellfish'].includes(tag));
      expect(food.haem, food.id).toBe(animal);
    }
  });

  it('never calls an animal food vegan or vegetarian', () => {
    for (const food of foods.filter((row) => row.haem))
      expect(food.tags, food.id).not.toEqual(expect.arrayContaining(['vegetarian']));
    for (const food of foods.filter((row) => row.tags.includes('vegan')))
      for (const tag of ['egg', 'dairy', 'meat', 'fish', 'shellfish'])
        expect(food.tags, food.id).not.toContain(tag);
  });

  it('has a kind of the closed list for every food', () => {
    const kinds: readonly string[] = foodKinds;
    for (const food of foods) expect(kinds).toContain(food.kind);
  });

  it('names only foods of the table as first picks', () => {
    for (const pick of foodPicks) for (const id of pick.foods) expect(byId.has(id), id).toBe(true);
  });

  // Regulation of the amounts: cooked liver holds several times an adult's upper level of vitamin A (3000 ug, from memory).
  it('marks every food whose portion passes 2000 ug of retinol', () => {
    const strong = foods.filter((food) => (food.portionRetinol ?? 0) > 2000);
    expect(strong.length).toBeGreaterThanOrEqual(6);
    for (const food of strong) expect(food.cautions, food.id).toContain('liver-vitamin-a');
  });
});
