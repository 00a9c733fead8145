// A corner of the matrix that `npm run matrix` makes in full: one report in every form, in scripts of three kinds.
import { expect, it } from 'vitest';
import { makeMatrix, readExamples } from './matrix.js';

const { examples, refused } = await readExamples(['examples', 'examples/formats']);

it('understands every example, save rows that are there to be refused and a file that needs its column map', () => {
  expect(examples.length).toBeGreaterThan(30);
  for (const one of refused)
    expect(one).toMatch(/^examples\/(?:evening-run|formats\/own-columns)\.csv/);
});

it('makes one report in every form without a fault', async () => {
  const one = examples.filter(({ name }) => name.endsWith('heavy-periods.json'));
  const { faults, letters, files } = await makeMatrix(one, ['en', 'ur', 'bn'], 3);
  expect(faults).toEqual([]);
  // Five forms in English, six in the others; a sheet for the fridge has no text file.
  expect(letters).toBe(17);
  expect(files).toBe(3 * 14 + 2 * 3);
});
