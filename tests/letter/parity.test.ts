// Every closed list of the earlier rooms has its words, so that a new code shows where it still lacks them.
import { describe, expect, it } from 'vitest';
import type { FoodMode } from '../../src/advise/advice.js';
import {
  choiceReasons,
  cuisineCodes,
  drinkCodes,
  foodCautionCodes,
  foodIds,
  foodSectionCautionCodes,
  helpSigns,
  leftOutReasons,
  letterCautionCodes,
  mealCodes,
  modeReasons,
  staffCodes,
  swapCodes,
  swapSizes,
  tabletPoints,
} from '../../src/advise/codes.js';
import { reasonCodes } from '../../src/interpret/reason-codes.js';
import { foods } from '../../src/knowledge/foods.js';
import { needs } from '../../src/knowledge/needs.js';
import { checks } from '../../src/knowledge/row.js';
import { toldFlags } from '../../src/letter/sections/meaning.js';
import {
  analogies,
  analytes,
  dietAvoids,
  diets,
  flags,
  holdTiers,
  medicines,
  nextSteps,
  patterns,
  positions,
} from '../../src/terms.js';
import { englishFiles } from './fixtures.js';

const files = englishFiles();
const keysOf = (file: string) => Object.keys(files[file] as Record<string, string>);

const scenes = ['low', 'bleeding', 'inflammation', 'overload'];
const patientLists: readonly (readonly [string, readonly string[]])[] = [
  ['summary.{}', patterns],
  ['meaning.{}', patterns],
  ['urgency.{}', holdTiers],
  ['verdict.{}', positions],
  ['line.described.{}', positions],
  ['result.{}.name', analytes],
  ['result.{}.what', analytes],
  ['not-measured.{}', analytes],
  ['summary.next.{}', nextSteps],
  ['step.{}.patient', nextSteps],
  ['step.{}.patient.by', nextSteps],
  ['step.{}.clinic', nextSteps],
  ['step.{}.clinic.by', nextSteps],
  ['flag.{}', toldFlags],
  ['gap.{}_one', medicines],
  ['gap.{}_other', medicines],
  ['gap.{}.ask', medicines],
  ['sign.{}', helpSigns],
  ['caution.{}', letterCautionCodes],
  ['food.caution.{}', [...foodCautionCodes, ...foodSectionCautionCodes]],
  ['swap.{}', swapCodes],
  ['swap.size.{}', swapSizes],
  ['tablets.{}', tabletPoints],
  ...scenes.flatMap((scene): (readonly [string, readonly string[]])[] => [
    [`picture.{}.${scene}`, analogies],
    ...(scene === 'low' ? [] : [[`picture.{}.described.${scene}`, analogies] as const]),
  ]),
  ['picture.{}.low-goods', analogies],
  ...['store-low', 'load-low', 'goods-low'].map((part): readonly [string, readonly string[]] => [
    `picture.{}.described.${part}`,
    analogies,
  ]),
  ...['intro', 'how', 'end', 'title', 'store', 'carriers', 'goods', 'reuse'].map(
    (part): readonly [string, readonly string[]] => [`picture.{}.${part}`, analogies],
  ),
];

/** The week's sheet names a meal for every food that may be suggested. */
const fridgeLists: readonly (readonly [string, readonly string[]])[] = [
  ['time.{}', mealCodes],
  ['drink.{}', drinkCodes],
  ['meal.{}', foods.filter(({ role }) => role === 'iron').map(({ id }) => id)],
];

const clinicianLists: readonly (readonly [string, readonly string[]])[] = [
  ['pattern.{}', patterns],
  ['analyte.{}', analytes],
  ['position.{}', positions],
  ['flag.{}', flags],
  ['tier.{}', holdTiers],
  ['call.say.{}', holdTiers],
  ['checked.{}', checks],
  ['reason.{}', reasonCodes],
  ['staff.{}', staffCodes],
  ['food-mode-reason.{}', modeReasons],
  ['left-out.{}', leftOutReasons],
  ['chosen.{}', choiceReasons],
  ['cuisine.{}', cuisineCodes],
  ['diet.{}', diets],
  ['avoids.{}', dietAvoids],
  ['food-mode.{}', ['raise-iron', 'general', 'hold-back', 'none'] satisfies readonly FoodMode[]],
  ['need-body.{}', needs.map(({ body }) => body)],
  ['need-group.{}', needs.map(({ group }) => group)],
  ['note.step.{}', nextSteps],
];

describe('the words', () => {
  it.each(patientLists)('of the letter hold %s for every code', (key, codes) => {
    const have = new Set(keysOf('letter'));
    expect(codes.map((code) => key.replace('{}', code)).filter((each) => !have.has(each))).toEqual(
      [],
    );
  });

  it.each(fridgeLists)("of the week's sheet hold %s for every code and no other", (key, codes) => {
    const prefix = key.replace('{}', '');
    const have = keysOf('fridge').filter(
      (each) => each.startsWith(prefix) && each !== 'drink.heading',
    );
    expect(have.sort()).toEqual(codes.map((code) => key.replace('{}', code)).sort());
  });

  it.each(clinicianLists)("of the clinician's sheet hold %s for every code", (key, codes) => {
    const have = new Set(keysOf('reasoning'));
    expect(codes.map((code) => key.replace('{}', code)).filter((each) => !have.has(each))).toEqual(
      [],
    );
  });

  it('name every food of the table and no other', () => {
    expect(
      keysOf('foods')
        .filter((key) => !key.endsWith('_child'))
        .sort(),
    ).toEqual([...foodIds].sort());
  });

  it('have no message about a code that no list knows', () => {
    const known = new Set(
      patientLists.flatMap(([key, codes]) => codes.map((code) => key.replace('{}', code))),
    );
    const prefixes = [
      'summary.next.',
      'step.',
      'sign.',
      'caution.',
      'food.caution.',
      'flag.',
      'tablets.',
      'verdict.',
      'urgency.',
    ];
    const others = [
      'summary.next.none',
      'step.heard-by',
      'step.heard-by.none',
      'step.heard-by.urgent',
      'summary.next.urgent',
      'caution.for-this-person-only.unnamed',
      'caution.cause-not-known.in-range',
      'tablets.heading',
      'tablets.dose',
      'verdict.doubtful',
      'verdict.no-range',
      'urgency.unknown',
    ];
    const strays = keysOf('letter')
      .filter((key) => prefixes.some((prefix) => key.startsWith(prefix)))
      .map((key) => key.replace(/_child$/, ''))
      .filter((key) => !known.has(key) && !others.includes(key));
    expect(strays).toEqual([]);
  });
});
