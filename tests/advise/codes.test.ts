// Every code a row can say stands in a closed list, and every listed code can be said.
import { describe, expect, it } from 'vitest';
import {
  cautionCodes,
  foodIds,
  helpSigns,
  letterCautionCodes,
  swapCodes,
  swapSizes,
  tabletPoints,
} from '../../src/advise/codes.js';
import { citable, sourcesOf } from '../../src/advise/sources.js';
import { helpSignRows } from '../../src/knowledge/help-signs.js';
import { letterCautionRows } from '../../src/knowledge/letter-cautions.js';
import { swapRows } from '../../src/knowledge/swaps.js';
import { tabletPointRows } from '../../src/knowledge/tablet-points.js';
import { patterns } from '../../src/terms.js';
import { adviceFor } from './build.js';

const ids = (rows: readonly { readonly id: string }[]): readonly string[] =>
  rows.map((row) => row.id).sort();
const sorted = (codes: readonly string[]): readonly string[] => [...codes].sort();

describe('the closed lists', () => {
  it('and the rows name the same codes', () => {
    expect(ids(helpSignRows)).toEqual(sorted(helpSigns));
    expect(ids(letterCautionRows)).toEqual(sorted(letterCautionCodes));
    expect(ids(swapRows)).toEqual(sorted(swapCodes));
    expect(ids(tabletPointRows)).toEqual(sorted(tabletPoints));
  });

  it('hold every size a swap may have', () => {
    const sizes: readonly string[] = swapSizes;
    for (const row of swapRows) expect(sizes).toContain(row.size);
  });

  it('hold every caution an advice says', () => {
    const known: readonly string[] = cautionCodes;
    for (const pattern of patterns)
      for (const ageMonths of [14, 400, 720, null]) {
        const { food, cautions } = adviceFor({ pattern, patient: { ageMonths } });
        const said = [...food.choices, ...food.partners].flatMap((choice) => choice.cautions);
        for (const code of [...said, ...food.cautions, ...cautions]) expect(known).toContain(code);
        for (const choice of food.choices) expect(foodIds).toContain(choice.food);
      }
  });
});

describe('the rows that may be cited', () => {
  it('have an id of their own each, over all tables', () => {
    const all = citable.map(([row]) => row.id);
    expect(new Set(all).size).toBe(all.length);
  });

  it('refuse a rule that no row holds', () => {
    expect(() => sourcesOf(['no-such-rule'])).toThrow('no knowledge row');
  });
});
