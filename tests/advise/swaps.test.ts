// The changes to the day, against the measurements of the papers.
import { describe, expect, it } from 'vitest';
import { gentlestGain } from '../../src/advise/choose-swaps.js';
import { swapRows } from '../../src/knowledge/swaps.js';
import { adviceFor } from './build.js';

const row = (id: string) => {
  const found = swapRows.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`no swap ${id}`);
  return found;
};
const percent = (from: number, to: number): number => Math.round((to / from - 1) * 100);
const swapsOf = (given: Parameters<typeof adviceFor>[0]): readonly string[] =>
  adviceFor(given).food.swaps.map((swap) => swap.swap);

describe('the measured size of each swap', () => {
  // Abstracts of the papers named; single meals.
  it.each([
    {
      id: 'tea-between-meals',
      low: -94,
      high: -49,
      paper: 'Hurrell 1999 (bread); Thankachan 2008 (rice, replete)',
    },
    {
      id: 'coffee-between-meals',
      low: -39,
      high: -35,
      paper: 'Morck 1983; Hallberg and Rossander 1982',
    },
    {
      id: 'vitamin-c-with-plant-meal',
      low: 85,
      high: percent(1, 2.5),
      paper: 'Hallberg and Rossander 1982; Rossander 1979',
    },
    {
      id: 'lemon-on-rice-or-dal',
      low: percent(0.031, 0.081),
      high: percent(0.031, 0.081),
      paper: 'Gillooly 1983',
    },
    {
      id: 'milk-another-time',
      low: -60,
      high: 0,
      paper: 'Hallberg 1991; Hallberg and Rossander 1982',
    },
    { id: 'raised-bread-over-flat', low: 0, high: percent(4.9, 13.6), paper: 'Hurrell 2002' },
    { id: 'fermented-batter', low: 0, high: percent(1.73, 5.34), paper: 'Hurrell 2003' },
    { id: 'herbal-tea-and-cocoa-count-too', low: -84, high: -47, paper: 'Hurrell 1999' },
    { id: 'milk-in-tea-does-not-help', low: 0, high: 0, paper: 'Hurrell 1999' },
  ])('of $id is that of $paper', ({ id, low, high }) => {
    expect(row(id).changePercent).toEqual({ low, high });
  });

  it('is never put into stronger words than the gentlest study allows', () => {
    const about = 2;
    for (const { id, size, changePercent } of swapRows) {
      if (size === 'can-lose-half-or-more')
        expect(changePercent?.high, id).toBeLessThanOrEqual(-50 + about);
      if (size === 'can-lose-a-third-or-more')
        expect(changePercent?.high, id).toBeLessThanOrEqual(-33);
      if (size === 'can-nearly-double') expect(changePercent?.low, id).toBeGreaterThanOrEqual(80);
      if (size === 'can-rise-a-lot') expect(changePercent?.low, id).toBeGreaterThanOrEqual(100);
    }
  });

  it('turns a loss avoided into a gain: 49 % lost is 1.96 times regained', () => {
    expect(gentlestGain(row('tea-between-meals'))).toBeCloseTo(1.96, 2);
    expect(gentlestGain(row('vitamin-c-with-plant-meal'))).toBeCloseTo(1.85, 2);
    expect(gentlestGain(row('milk-another-time'))).toBe(1);
    // Tuntawiroon 1991: the abstract tells of a part won back, as no single figure.
    expect(gentlestGain(row('vitamin-c-partly-undoes-tea'))).toBe(1);
  });
});

describe('the swaps chosen', () => {
  it('are at most three, the largest first', () => {
    for (const pattern of ['no-restriction', 'fish-only', 'vegan'] as const) {
      const gains = swapsOf({ diet: { pattern } }).map((id) => gentlestGain(row(id)));
      expect(gains).toHaveLength(3);
      expect(gains).toEqual([...gains].sort((a, b) => b - a));
    }
  });

  it('name meat only to those who eat it', () => {
    expect(swapsOf({ diet: { pattern: 'no-restriction' } })).toContain(
      'meat-or-fish-with-plant-meal',
    );
    expect(swapsOf({ diet: { pattern: 'fish-only' } })).toContain('fish-with-plant-meal');
    expect(swapsOf({ diet: { pattern: 'vegan' } }).join()).not.toMatch(/meat|fish|milk/);
  });

  it('name no milk to those who take none, and no bread to those who avoid gluten', () => {
    expect(swapsOf({ diet: { pattern: 'vegetarian', avoids: ['dairy'] } })).not.toContain(
      'milk-another-time',
    );
    expect(swapsOf({ diet: { pattern: 'vegan', avoids: ['gluten'] } })).not.toContain(
      'raised-bread-over-flat',
    );
  });

  it('speak of coffee where coffee is the drink, and answer about tea', () => {
    const { swaps, answers } = adviceFor({
      diet: { pattern: 'vegan', cuisines: ['latin-american'] },
    }).food;
    expect(swaps.map((swap) => swap.swap)).toContain('coffee-between-meals');
    expect(answers.map((swap) => swap.swap)).toEqual(
      expect.arrayContaining(['tea-between-meals', 'milk-in-tea-does-not-help']),
    );
  });

  it('move drinks to after the fast in a month of fasting', () => {
    const swaps = swapsOf({ diet: { pattern: 'no-pork', fastingMonth: true } });
    expect(swaps).toContain('drinks-after-the-fast-wait');
    expect(swaps).not.toContain('tea-between-meals');
  });

  it('say nothing of tea to a small child', () => {
    const { swaps, answers } = adviceFor({ patient: { ageMonths: 30 } }).food;
    expect(swaps.map((swap) => swap.swap).join()).not.toMatch(/tea|coffee/);
    expect(answers).toEqual([]);
  });
});
