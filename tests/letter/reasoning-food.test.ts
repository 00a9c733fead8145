// The food part of the clinician's sheet: figures in whole sentences, inside the domains of their studies.
import { describe, expect, it } from 'vitest';
import type { Advice } from '../../src/advise/advice.js';
import { foodIds } from '../../src/advise/codes.js';
import type { Reason } from '../../src/interpret/interpretation.js';
import { explainer } from '../../src/letter/explain.js';
import type { LetterInput } from '../../src/letter/index.js';
import { foodBlocks } from '../../src/letter/reasoning-food.js';
import { adviceFor, graded } from '../advise/build.js';
import { examples } from './examples.js';
import { english, letterOf } from './fixtures.js';

const { words } = explainer(english);
const cite = (rules: readonly string[]) => (rules.length === 0 ? '' : ' [1]');
const people = [...(await examples()), ...(await examples('tests/advise/diets'))];

const blocksOf = ({ report, advice }: Pick<LetterInput, 'report' | 'advice'>) =>
  foodBlocks(words, cite, report, advice, english);
const textOf = (input: Pick<LetterInput, 'report' | 'advice'>) =>
  blocksOf(input)
    .flatMap(({ paragraphs, list, table }) => [
      ...paragraphs,
      ...list,
      ...(table?.rows.flat() ?? []),
    ])
    .join('\n');

const { report } = letterOf({ pattern: 'iron-deficiency-anaemia' });
const sheetFor = (advice: Advice) => textOf({ report, advice });

describe('the food part', () => {
  it.each(people)('$name: is in whole sentences with nothing left to fill', ({ input }) => {
    const text = textOf(input);
    expect(text).not.toMatch(/\{\{|undefined|\bnull\b|NaN/);
    const [food] = blocksOf(input);
    for (const line of [...(food?.paragraphs ?? []), ...(food?.list ?? [])])
      expect(line).toMatch(/^[A-Z].*\.( \[1\])?$/);
  });

  it('names every food of the table once: chosen, left out, or counted', () => {
    const advice = adviceFor({ diet: { pattern: 'vegan' } });
    const rows = blocksOf({ report, advice }).find(({ slug }) => slug === 'food-chosen')?.table
      ?.rows;
    const chosen = [...advice.food.choices, ...advice.food.partners].length;
    expect(rows).toHaveLength(chosen);
    expect(chosen + advice.food.leftOut.length).toBe(foodIds.length);
    const counted = advice.food.leftOut.filter(({ why }) => why === 'others-fitted-better').length;
    expect(sheetFor(advice)).toContain(`${counted} more foods would be safe`);
  });

  it('says why, in words, without a food where none may be suggested', () => {
    const advice = adviceFor({ pattern: 'raised-tsat-and-ferritin' });
    expect(blocksOf({ report, advice }).map(({ slug }) => slug)).toEqual(['food']);
    expect(sheetFor(advice)).toContain('asks the person not to seek more iron. More iron may harm');
  });

  it('shows how much a tip changed in the studies, and where they stand', () => {
    // Thankachan 2008: tea with a rice meal -49 %; Hurrell 1999: black tea with bread up to -94 %.
    expect(sheetFor(adviceFor({ diet: { pattern: 'vegan' } }))).toContain('by -94 to -49 %. [1]');
    // Hurrell 1999: milk in the tea, no change. Tuntawiroon 1991: told without a single figure.
    const sheet = sheetFor(adviceFor({ diet: { pattern: 'vegan' } }));
    expect(sheet).toContain(
      'Milk in the tea does not change this." In single meals, plant iron taken up changed by 0 %.',
    );
    expect(sheet).toContain(
      'makes up for only part of this." The source is quoted here without a figure.',
    );
  });
});

describe('the figures for staff', () => {
  const ferritin = (value: number, more: Parameters<typeof adviceFor>[0] = {}) =>
    sheetFor(adviceFor({ results: [graded('ferritin', value, 'low')], ...more }));

  // Institute of Medicine 2001: 18 mg for women of 19 to 50, times 1.8 for vegetarians is 32.4 mg.
  it('give the daily need, and more of it for a vegetarian', () => {
    expect(ferritin(15)).toContain(
      'The Institute of Medicine (2001) advises 18 mg of iron a day for women of 19 to 50 years. Its upper level from all sources is 45 mg.',
    );
    expect(ferritin(15, { diet: { pattern: 'vegetarian' } })).toContain('becomes 32.4 mg a day');
  });

  // Collings 2013, abstract: log10 A = 1.82 - 0.73 log10 F; by hand for 15 ug/L: 9.15 %.
  it('give the estimate from ferritin inside the studied range only', () => {
    expect(ferritin(15)).toContain('that 9.2 % of plant iron is taken up from an ordinary diet');
    for (const [value, shown] of [
      [5.9, false],
      [6, true],
      [80, true],
      [80.1, false],
    ] as const)
      expect(ferritin(value).includes('is taken up from an ordinary diet')).toBe(shown);
  });

  it.each([
    ['CRP is raised', { flags: ['crp-raised'] }, 'CRP is raised'],
    ['of a pregnancy', { patient: { pregnancy: { weeks: 20, trimester: 2 } } }, 'in pregnancy'],
    ['of age', { patient: { ageMonths: 215 } }, 'not known to be one'],
  ] as const)('leave the estimates out because %s, and say so twice', (_why, given, says) => {
    const text = ferritin(15, given as Parameters<typeof adviceFor>[0]);
    expect(text).not.toContain('Collings 2013 estimates');
    expect(text.split('\n').filter((line) => line.includes(says)).length).toBeGreaterThanOrEqual(2);
  });

  it('have words for every reason a figure is left out', () => {
    const why = ['age-unknown', 'crp-raised', 'not-a-known-adult', 'pregnancy'];
    for (const code of [...why, 'ferritin-not-measured', 'ferritin-outside-the-data']) {
      const staff: readonly Reason[] = [
        { code: 'absorption-collings-not-used', facts: { why: code }, rules: [] },
      ];
      expect(sheetFor({ ...adviceFor(), staff })).toMatch(/is not shown: [a-zA-Z ,]+\./);
    }
  });
});
