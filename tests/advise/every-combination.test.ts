// Every way of eating, with every avoidance, pregnancy, overload, small child, kidney disease and warfarin:
// nothing forbidden is ever suggested, and an empty list sends people to a dietitian.
// The forbidden tags below are stated here anew, from the meaning of the diets and general dietetic practice.
import { describe, expect, it } from 'vitest';
import { foods } from '../../src/knowledge/foods.js';
import { type Diet, type DietAvoid, dietAvoids, diets } from '../../src/terms.js';
import { adviceFor } from './build.js';

const byId = new Map(foods.map((food) => [food.id, food]));
const meat = ['meat', 'poultry', 'offal', 'blood', 'pork', 'beef'];
const animal = [...meat, 'fish', 'shellfish'];
const forbiddenByDiet: Readonly<Record<Diet | 'unknown', readonly string[]>> = {
  'no-restriction': [],
  'no-pork': ['pork', 'blood'],
  'no-beef': ['beef', 'blood'],
  'fish-only': meat,
  vegetarian: animal,
  'vegetarian-no-egg': [...animal, 'egg'],
  vegan: [...animal, 'egg', 'dairy'],
  unknown: ['pork', 'blood', 'beef', 'shellfish'],
};
const noneOrSome: readonly (readonly DietAvoid[])[] = [
  [],
  ...dietAvoids.map((avoid) => [avoid]),
  ...dietAvoids.flatMap((one, at) => dietAvoids.slice(at + 1).map((other) => [one, other])),
  dietAvoids,
];
const yesNo = [false, true] as const;

type Body = {
  readonly pregnant: boolean;
  readonly overload: boolean;
  readonly child: boolean;
  readonly kidney: boolean;
  readonly warfarin: boolean;
};
const bodies: readonly Body[] = yesNo.flatMap((pregnant) =>
  yesNo.flatMap((overload) =>
    yesNo.flatMap((child) =>
      yesNo.flatMap((kidney) =>
        yesNo.map((warfarin) => ({ pregnant, overload, child, kidney, warfarin })),
      ),
    ),
  ),
);

function forbiddenMarks(body: Body): readonly string[] {
  return [
    'alcohol',
    ...(body.pregnant ? ['liver-vitamin-a', 'pregnancy-pate', 'lead-shot-game'] : []),
    ...(body.child ? ['liver-vitamin-a', 'choking', 'nut-allergy', 'lead-shot-game'] : []),
    ...(body.kidney ? ['potassium', 'salty'] : []),
    ...(body.warfarin ? ['vitamin-k', 'vitamin-k-very-high'] : []),
  ];
}

function adviceOf(diet: Diet | 'unknown', avoids: readonly DietAvoid[], body: Body) {
  return adviceFor({
    diet: { pattern: diet === 'unknown' ? null : diet, avoids },
    patient: {
      ageMonths: body.child ? 40 : 400,
      pregnancy: body.pregnant ? { weeks: 20, trimester: 2 } : null,
      conditions: [
        ...(body.overload ? (['iron-overload'] as const) : []),
        ...(body.kidney ? (['kidney-disease'] as const) : []),
      ],
      medicines: body.warfarin ? ['warfarin'] : [],
    },
  });
}

describe.each([...diets, 'unknown'] as const)('a %s diet', (diet) => {
  it('never meets a forbidden food, in any combination', () => {
    for (const avoids of noneOrSome)
      for (const body of bodies) {
        const { food, steps } = adviceOf(diet, avoids, body);
        const shown = [...food.choices, ...food.partners].map((choice) => byId.get(choice.food));
        if (body.overload) {
          if (
            shown.length + food.swaps.length + food.answers.length > 0 ||
            food.mode !== 'hold-back'
          )
            expect.fail(`food was suggested with overload: ${avoids}`);
          if (steps.some((step) => step.step === 'eat-for-iron'))
            expect.fail('told to eat for iron');
          continue;
        }
        const tags: readonly string[] = [...forbiddenByDiet[diet], ...avoids];
        const marks = forbiddenMarks(body);
        for (const row of shown) {
          if (row === undefined) expect.fail('a food outside the table');
          else if (
            row.tags.some((tag) => tags.includes(tag)) ||
            row.cautions.some((mark) => marks.includes(mark))
          )
            expect.fail(`${row.id} with ${diet}, ${avoids}, ${JSON.stringify(body)}`);
        }
        if (food.choices.length === 0 && !food.askDietitian)
          expect.fail('an empty list without a dietitian');
        if (food.choices.length > 8) expect.fail('too many foods');
      }
  });
});
