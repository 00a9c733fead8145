// Two published equations against their papers and against values worked out independently.
import { describe, expect, it } from 'vitest';
import { armahPercent, collingsPercent } from '../../src/advise/absorption.js';

describe('collingsPercent', () => {
  // Collings 2013, AJCN 98:65, abstract: ferritin 6 to 80 ug/L spans 2.1 to 23.0 %.
  it('gives the ends of the published range', () => {
    expect(collingsPercent(6, 1)).toBeCloseTo(23.0, 1);
    expect(collingsPercent(80, -1)).toBeCloseTo(2.1, 1);
  });

  // The equation of the abstract worked out by hand: 10^(1.82 - 0.73 log10 SF + 0.11 mod).
  it.each([
    { ferritin: 6, diet: 0, percent: 17.862802 },
    { ferritin: 15, diet: 0, percent: 9.15068 },
    { ferritin: 15, diet: 1, percent: 11.78836 },
    { ferritin: 15, diet: -1, percent: 7.103189 },
    { ferritin: 30, diet: 0, percent: 5.516981 },
    { ferritin: 80, diet: -1, percent: 2.09288 },
  ] as const)(
    'gives $percent % at ferritin $ferritin, diet $diet',
    ({ ferritin, diet, percent }) => {
      expect(collingsPercent(ferritin, diet)).toBeCloseTo(percent, 5);
    },
  );

  it.each([
    { ferritin: 5.9, inside: false },
    { ferritin: 6, inside: true },
    { ferritin: 80, inside: true },
    { ferritin: 80.1, inside: false },
  ])('speaks only inside the data: $ferritin ug/L', ({ ferritin, inside }) => {
    expect(collingsPercent(ferritin, 0) !== null).toBe(inside);
  });
});

describe('armahPercent', () => {
  // Armah 2013, J Nutr 143:1136, as transcribed in public code; worked out by hand.
  it.each([
    { ferritin: 15, day: [60, 100, 2, 1000, 800, 12], percent: 7.536782 },
    { ferritin: 30, day: [60, 100, 2, 1000, 800, 12], percent: 4.610581 },
    { ferritin: 15, day: [60, 0, 3, 900, 700, 14], percent: 7.304171 },
    { ferritin: 30, day: [75, 80, 1, 800, 900, 12], percent: 5.094265 },
  ])('gives $percent %', ({ ferritin, day, percent }) => {
    const [vitaminC = 0, meatGrams = 0, teaCups = 0, phytate = 0, calcium = 0, plantIron = 0] = day;
    const result = armahPercent(ferritin, {
      vitaminC,
      meatGrams,
      teaCups,
      phytate,
      calcium,
      plantIron,
    });
    expect(result).toBeCloseTo(percent, 5);
  });

  it('says nothing where a logarithm has no value', () => {
    const day = { vitaminC: 0, meatGrams: 0, teaCups: 0, phytate: 1, calcium: 1, plantIron: 1 };
    expect(armahPercent(15, day)).toBeNull();
  });
});
