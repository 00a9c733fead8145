// A report, its interpretation and the clinician's choices arrive; the food section leaves, as codes.
import type { Interpretation } from '../interpret/interpretation.js';
import { foodLimit } from '../knowledge/food-policy.js';
import type { Report } from '../report/report.js';
import type { Choices, FoodAdvice } from './advice.js';
import { chooseFoods } from './choose-foods.js';
import { chooseSwaps } from './choose-swaps.js';
import { foodCautions } from './food-cautions.js';
import { foodMode } from './food-mode.js';
import { hasKidneyDiet } from './left-out.js';
import type { Person } from './person.js';

/**
 * The food section. Foods, partners and swaps exist only in the mode that raises iron.
 * @example adviseFood(report, interpretation, choices, person).mode // 'raise-iron'
 */
export function adviseFood(
  report: Report,
  interpretation: Interpretation,
  choices: Choices,
  person: Person,
): FoodAdvice {
  const { mode, why } = foodMode({ report, interpretation, person }, choices);
  const raising = mode === 'raise-iron';
  const chosen = raising ? chooseFoods(person) : nothingChosen;
  const { swaps, answers } = raising ? chooseSwaps(person, chosen) : { swaps: [], answers: [] };
  const askDietitian = raising && needsDietitian(person, chosen.choices.length);
  return {
    mode,
    why,
    ...chosen,
    swaps,
    answers,
    cautions: foodCautions({
      report,
      interpretation,
      person,
      mode,
      why: why.map((line) => line.code),
      tablets: choices.tabletsPrescribed !== null,
      askDietitian,
    }),
    askDietitian,
  };
}

const nothingChosen: Pick<FoodAdvice, 'choices' | 'partners' | 'leftOut'> = {
  choices: [],
  partners: [],
  leftOut: [],
};

function needsDietitian(person: Person, count: number): boolean {
  return (
    count < foodLimit('choices-least') ||
    hasKidneyDiet(person) ||
    person.has('bariatric-surgery', 'coeliac-disease', 'inflammatory-bowel-disease') ||
    person.flagged('bowel-disease')
  );
}
