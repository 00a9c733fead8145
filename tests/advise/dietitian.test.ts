// Who is sent to a dietitian: people for whom a list of foods alone would be too little, or too risky.
import { describe, expect, it } from 'vitest';
import type { Patient } from '../../src/report/report.js';
import { letterOf } from '../letter/fixtures.js';
import { compose, everySaid } from '../letter/read-content.js';
import { adviceFor } from './build.js';

/** Common practice, no source. */
const sent = [
  'kidney-disease',
  'kidney-disease-dialysis',
  'coeliac-disease',
  'bariatric-surgery',
] as const satisfies readonly Patient['conditions'][number][];

describe('a person whose food needs an expert', () => {
  it.each(sent)('%s: the letter says to ask for a talk with one', (condition) => {
    const advice = adviceFor({
      pattern: 'iron-deficiency-without-anaemia',
      patient: { conditions: [condition] },
    });
    expect(advice.food.askDietitian).toBe(true);
    const letter = compose(letterOf({ pattern: 'iron-deficiency-without-anaemia', advice }));
    expect(everySaid(letter.food).map(({ key }) => key)).toContain('food.caution.ask-dietitian');
  });

  it('is not everybody', () => {
    const advice = adviceFor({ pattern: 'iron-deficiency-without-anaemia' });
    expect(advice.food.askDietitian).toBe(false);
  });

  it('is told so where no food at all may be named', () => {
    const { food, ...rest } = adviceFor({
      pattern: 'iron-deficiency-without-anaemia',
      patient: { conditions: ['kidney-disease'] },
    });
    const bare = { ...rest, food: { ...food, choices: [], partners: [], swaps: [], answers: [] } };
    const letter = compose(letterOf({ pattern: 'iron-deficiency-without-anaemia', advice: bare }));
    const keys = everySaid(letter.food).map(({ key }) => key);
    expect(keys).toContain('food.caution.ask-dietitian');
    expect(keys.filter((key) => key.startsWith('foods:'))).toEqual([]);
  });
});
