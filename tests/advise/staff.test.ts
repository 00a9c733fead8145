// The clinician's lines: daily need and absorption, inside their domains only.
import { describe, expect, it } from 'vitest';
import { adviceFor, graded } from './build.js';

type Given = Parameters<typeof adviceFor>[0];
const linesOf = (given: Given, code: string) =>
  adviceFor(given).staff.filter((line) => line.code === code);
const needOf = (given: Given, body: string): readonly (string | number | undefined)[] =>
  linesOf(given, 'daily-need')
    .filter((line) => line.facts.body === body)
    .map((line) => line.facts.milligrams);

describe('daily need', () => {
  // Institute of Medicine 2001, RDA by life stage.
  it.each([
    { name: 'a baby of 11 months', patient: { ageMonths: 11 }, milligrams: 11 },
    { name: 'a child of 1 year', patient: { ageMonths: 12 }, milligrams: 7 },
    { name: 'a child of 4 years', patient: { ageMonths: 48 }, milligrams: 10 },
    { name: 'a child of 9 years', patient: { ageMonths: 108 }, milligrams: 8 },
    { name: 'a girl of 14', patient: { ageMonths: 168 }, milligrams: 15 },
    { name: 'a boy of 14', patient: { ageMonths: 168, sex: 'male' }, milligrams: 11 },
    { name: 'a woman of 50', patient: { ageMonths: 611 }, milligrams: 18 },
    { name: 'a woman of 51', patient: { ageMonths: 612 }, milligrams: 8 },
    { name: 'a man of 19', patient: { ageMonths: 228, sex: 'male' }, milligrams: 8 },
    { name: 'pregnancy', patient: { pregnancy: { weeks: 12, trimester: 1 } }, milligrams: 27 },
  ] as const)('of $name is $milligrams mg', ({ patient, milligrams }) => {
    expect(needOf({ patient }, 'iom')).toEqual([milligrams]);
  });

  // EFSA 2015: 16 mg with periods, 11 after them; nobody is guessed into either.
  it.each([
    { menstruating: true, milligrams: [16] },
    { menstruating: false, milligrams: [11] },
    { menstruating: null, milligrams: [] },
  ])('of a woman depends on periods being known: $menstruating', ({ menstruating, milligrams }) => {
    expect(needOf({ patient: { menstruating } }, 'efsa')).toEqual(milligrams);
  });

  it('shows both rows when the sex is unknown, none when the age is', () => {
    expect(needOf({ patient: { sex: 'unknown' } }, 'iom')).toEqual([8, 18]);
    expect(linesOf({ patient: { ageMonths: null } }, 'daily-need-not-shown')).toHaveLength(1);
  });

  // Institute of Medicine 2001: 1.8 times; rounded values quoted from it are 14, 33 and 26 mg.
  it.each([
    { patient: { sex: 'male' }, quoted: 14 },
    { patient: { sex: 'female' }, quoted: 33 },
    { patient: { sex: 'female', ageMonths: 180 }, quoted: 26 },
  ] as const)('of a vegetarian is near the quoted $quoted mg', ({ patient, quoted }) => {
    const [line] = linesOf({ patient, diet: { pattern: 'vegan' } }, 'daily-need-vegetarian');
    expect(Math.abs(Number(line?.facts.milligrams) - quoted)).toBeLessThanOrEqual(1);
  });

  it('adds three to four milligrams for a regular donor', () => {
    const [line] = linesOf({ flags: ['blood-donation'] }, 'daily-need-donor');
    expect(line?.facts).toEqual({ low: 3, high: 4 });
  });
});

describe('estimated absorption', () => {
  const results = [graded('ferritin', 15, 'low')];

  // Collings 2013: 7.1, 9.2 and 11.8 % at a ferritin of 15 ug/L.
  it('is shown for an adult with a ferritin inside the data', () => {
    const [line] = linesOf({ results }, 'absorption-collings');
    expect(line?.facts).toMatchObject({ hindering: 7.1, ordinary: 9.2, helping: 11.8 });
  });

  // Armah 2013 as transcribed: three cups of tea 0.83 times, three times the vitamin C 1.14 times.
  it('shows how little a whole day changes', () => {
    const [line] = linesOf({ results }, 'whole-diet-armah');
    expect(line?.facts).toMatchObject({ teaTimes: 0.83, fruitTimes: 1.14 });
  });

  it.each([
    { name: 'a raised CRP', given: { results, flags: ['crp-raised'] }, why: 'crp-raised' },
    { name: 'a child', given: { results, patient: { ageMonths: 215 } }, why: 'not-a-known-adult' },
    {
      name: 'an unknown age',
      given: { results, patient: { ageMonths: null } },
      why: 'not-a-known-adult',
    },
    {
      name: 'pregnancy',
      given: { results, patient: { pregnancy: { weeks: 9, trimester: 1 } } },
      why: 'pregnancy',
    },
    { name: 'no ferritin', given: {}, why: 'ferritin-not-measured' },
    {
      name: 'a ferritin of 5',
      given: { results: [graded('ferritin', 5, 'low')] },
      why: 'ferritin-outside-the-data',
    },
    {
      name: 'a ferritin below 8',
      given: { results: [graded('ferritin', 8, 'low', { comparator: '<' })] },
      why: 'ferritin-not-measured',
    },
  ] as const)('is not shown with $name', ({ given, why }) => {
    expect(linesOf(given, 'absorption-collings')).toEqual([]);
    expect(linesOf(given, 'whole-diet-armah')).toEqual([]);
    expect(linesOf(given, 'absorption-collings-not-used')[0]?.facts).toEqual({ why });
  });

  it('never reaches what the patient is told', () => {
    const { staff, sources, ...told } = adviceFor({ results });
    expect(staff.length).toBeGreaterThan(0);
    expect(sources.length).toBeGreaterThan(0);
    expect(JSON.stringify(told)).not.toMatch(/collings|armah|daily-need/);
  });
});
