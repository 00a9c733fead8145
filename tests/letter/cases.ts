// Nothing arrives; every kind of letter that the tests can make leaves, with a name.

import { helpSigns, letterCautionCodes, tabletPoints } from '../../src/advise/codes.js';
import type { LetterInput } from '../../src/letter/letter-input.js';
import { flags, holdTiers, medicines, nextSteps, patterns } from '../../src/terms.js';
import { letterOf } from './fixtures.js';

export type Case = { readonly name: string; readonly input: LetterInput };

const child = { ageMonths: 96, birthDate: '2018-11-01', menstruating: null };
const toddler = { ageMonths: 20, birthDate: '2025-03-01', menstruating: null };
const released = { by: 'Dr Imre Vale', done: 'phoned and seen today' };

export function casesOf(): readonly Case[] {
  return [
    ...patterns.map((pattern) => ({
      name: `a letter about ${pattern}`,
      input: letterOf({ pattern }),
    })),
    ...patterns.map((pattern) => ({
      name: `a letter about a child with ${pattern}`,
      input: letterOf({ pattern, patient: child }),
    })),
    ...patterns.map((pattern) => ({
      name: `a letter about a toddler with ${pattern}`,
      input: letterOf({ pattern, patient: toddler }),
    })),
    ...holdTiers.map((tier) => ({
      name: `a letter at tier ${tier}`,
      input: letterOf({ pattern: 'iron-deficiency-anaemia', tier, options: { released } }),
    })),
    ...everythingAtOnce(),
    ...people(),
  ];
}

function people(): readonly Case[] {
  const pattern = 'iron-deficiency-anaemia' as const;
  return [
    {
      name: 'a letter to a man',
      input: letterOf({ pattern, patient: { sex: 'male', menstruating: null } }),
    },
    {
      name: 'a letter to somebody whose sex is not known',
      input: letterOf({ pattern, patient: { sex: 'unknown', menstruating: null } }),
    },
    {
      name: 'a letter in pregnancy',
      input: letterOf({ pattern, patient: { pregnancy: { weeks: 20, trimester: 2 } } }),
    },
    {
      name: 'a checked letter of a real clinic',
      input: letterOf({ pattern, clinic: { demo: false }, options: { checkedBy: 'Dr Imre Vale' } }),
    },
    {
      name: 'a letter to nobody by name',
      input: letterOf({ pattern, patient: { name: null, birthDate: null } }),
    },
  ];
}

/** Every sign, caution, step, flag and tablet point in one letter: no reader gets it, no word escapes. */
function everythingAtOnce(): readonly Case[] {
  const urgencies = ['emergency', 'today', 'soon'] as const;
  const advice = {
    help: helpSigns.map((sign, index) => ({ sign, urgency: urgencies[index % 3] ?? 'soon' })),
    cautions: letterCautionCodes,
    tablets: {
      dose: null,
      points: tabletPoints,
      gaps: medicines.map((medicine, index) => ({
        medicine,
        hours: index % 3 === 0 ? null : index % 3,
        rule: 'none',
      })),
    },
    steps: (['patient', 'clinic'] as const).flatMap((who) =>
      nextSteps.flatMap((step) =>
        [null, '2026-12-04'].map((by) => ({
          step,
          who,
          by,
          suggested: true,
          rules: [],
          words: null,
        })),
      ),
    ),
  };
  return [{}, child].map((patient) => ({
    name: `a letter with every word at once${patient === child ? ' for a child' : ''}`,
    input: letterOf({ pattern: 'mixed-inflammation-and-iron-deficiency', patient, flags, advice }),
  }));
}
