// When food may raise iron, when it must hold back, when it says nothing.
import { describe, expect, it } from 'vitest';
import { patterns } from '../../src/terms.js';
import { adviceFor, graded, suggested } from './build.js';

const low = [
  'early-low-intake',
  'iron-deficiency-without-anaemia',
  'iron-deficient-erythropoiesis',
  'iron-deficiency-anaemia',
];
const silent = ['discordant-or-implausible', 'post-iron-dose-artefact'];
const over = ['raised-ferritin-normal-tsat', 'raised-tsat-and-ferritin'];

describe('the mode of food advice', () => {
  it.each(patterns)('follows the pattern %s', (pattern) => {
    const mode = adviceFor({ pattern }).food.mode;
    if (low.includes(pattern)) expect(mode).toBe('raise-iron');
    else if (silent.includes(pattern)) expect(mode).toBe('none');
    else if (over.includes(pattern)) expect(mode).toBe('hold-back');
    else expect(mode).toBe('general');
  });

  // EASL 2022 (raised saturation and ferritin); a review of the haemochromatosis diet; thalassaemia carrier pages.
  it.each([
    {
      name: 'known haemochromatosis',
      given: { patient: { conditions: ['haemochromatosis'] } },
      mode: 'hold-back',
    },
    {
      name: 'known iron overload',
      given: { patient: { conditions: ['iron-overload'] } },
      mode: 'hold-back',
    },
    {
      name: 'thalassaemia major',
      given: { patient: { conditions: ['thalassaemia-major'] } },
      mode: 'hold-back',
    },
    {
      name: 'an iron chelator',
      given: { patient: { medicines: ['iron-chelator'] } },
      mode: 'hold-back',
    },
    { name: 'the overload flag', given: { flags: ['iron-overload-known'] }, mode: 'hold-back' },
    {
      name: 'ferritin above the referral limit',
      given: { flags: ['ferritin-above-referral-limit'] },
      mode: 'hold-back',
    },
    {
      name: 'anaemia with a high saturation',
      given: { flags: ['anaemia-with-high-tsat'] },
      mode: 'hold-back',
    },
    {
      name: 'sickle cell disease with transfusions',
      given: {
        patient: { conditions: ['sickle-cell-disease'] },
        context: { transfusionDaysBefore: 40 },
      },
      mode: 'hold-back',
    },
    {
      name: 'sickle cell disease alone',
      given: { patient: { conditions: ['sickle-cell-disease'] } },
      mode: 'raise-iron',
    },
    {
      name: 'a raised saturation',
      given: { results: [graded('transferrin-saturation', 60, 'high')] },
      mode: 'hold-back',
    },
    {
      name: 'a raised ferritin',
      given: { results: [graded('ferritin', 700, 'high')] },
      mode: 'hold-back',
    },
    {
      name: 'a ferritin above the laboratory interval only',
      given: { results: [graded('ferritin', 290, 'usual', { position: 'a-little-above' })] },
      mode: 'hold-back',
    },
    {
      name: 'a thalassaemia trait',
      given: { patient: { conditions: ['thalassaemia-trait'] } },
      mode: 'general',
    },
    { name: 'the thalassaemia flag', given: { flags: ['thalassaemia'] }, mode: 'general' },
    {
      name: 'a recent iron injection',
      given: { flags: ['recent-iron-injection'] },
      mode: 'general',
    },
    { name: 'a doubtful unit', given: { flags: ['unit-doubtful'] }, mode: 'none' },
    {
      name: 'a doubtful value',
      given: {
        results: [
          graded('ferritin', 5, 'not-measured', { doubt: { kind: 'value', question: 'is it 5?' } }),
        ],
      },
      mode: 'none',
    },
    { name: 'an emergency', given: { tier: 'emergency' }, mode: 'none' },
    { name: 'a same-day result', given: { tier: 'same-day' }, mode: 'none' },
    { name: 'a referral', given: { tier: 'referral' }, mode: 'raise-iron' },
    { name: 'the clinician switching it off', given: { choices: { noFood: true } }, mode: 'none' },
    { name: 'eleven months of age', given: { patient: { ageMonths: 11 } }, mode: 'none' },
    { name: 'twelve months of age', given: { patient: { ageMonths: 12 } }, mode: 'raise-iron' },
    {
      name: 'a high haemoglobin beside low stores',
      given: { pattern: 'high-haemoglobin', companions: ['iron-deficiency-without-anaemia'] },
      mode: 'general',
    },
    {
      name: 'inflammation with a low ferritin',
      given: {
        pattern: 'mixed-inflammation-and-iron-deficiency',
        results: [graded('ferritin', 20, 'low')],
      },
      mode: 'raise-iron',
    },
    {
      name: 'inflammation without a low ferritin',
      given: {
        pattern: 'mixed-inflammation-and-iron-deficiency',
        results: [graded('ferritin', 90, 'usual')],
      },
      mode: 'general',
    },
  ] as const)('is $mode with $name', ({ given, mode }) => {
    expect(adviceFor(given).food.mode).toBe(mode);
  });

  it('lists foods, partners and swaps only where it raises iron', () => {
    for (const pattern of patterns) {
      const advice = adviceFor({ pattern });
      const raising = advice.food.mode === 'raise-iron';
      expect(suggested(advice).length > 0).toBe(raising);
      expect(advice.food.swaps.length > 0).toBe(raising);
      expect(advice.steps.some((step) => step.step === 'eat-for-iron') && !raising).toBe(false);
    }
  });

  it('says the opposite with overload, and asks for an explanation of a raised ferritin alone', () => {
    const overload = adviceFor({
      pattern: 'raised-tsat-and-ferritin',
      results: [graded('transferrin-saturation', 60, 'high')],
    });
    expect(overload.food.cautions).toEqual(
      expect.arrayContaining([
        'no-iron-or-vitamin-c-tablets',
        'no-raw-shellfish',
        'little-or-no-alcohol',
      ]),
    );
    const ferritin = adviceFor({ pattern: 'raised-ferritin-normal-tsat' });
    expect(ferritin.food.cautions).toContain('ferritin-needs-explaining');
    expect(ferritin.food.cautions).not.toContain('no-raw-shellfish');
  });

  it('never says "no iron tablets" beside tablets that were prescribed', () => {
    const advice = adviceFor({
      flags: ['iron-overload-known'],
      choices: { tabletsPrescribed: { dose: null } },
    });
    expect(advice.food.cautions).not.toContain('no-iron-or-vitamin-c-tablets');
    expect(advice.staff.map((line) => line.code)).toContain(
      'tablets-prescribed-though-iron-may-harm',
    );
  });
});
