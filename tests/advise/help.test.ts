// When to seek help, and the cautions of the letter.
import { describe, expect, it } from 'vitest';
import { patterns } from '../../src/terms.js';
import { adviceFor, graded } from './build.js';

const signsOf = (given: Parameters<typeof adviceFor>[0]): readonly string[] =>
  adviceFor(given).help.map((line) => line.sign);

describe('signs that need help', () => {
  // General practice, from memory, for a clinician to confirm: what every letter says.
  it.each(patterns)('are always there for %s', (pattern) => {
    expect(signsOf({ pattern })).toEqual(
      expect.arrayContaining([
        'chest-pain',
        'fainting',
        'breathless-at-rest',
        'bleeding-will-not-stop',
        'black-or-bloody-stool',
        'feeling-worse',
        'not-heard-by-date',
      ]),
    );
  });

  it('come most pressing first', () => {
    const order = ['emergency', 'today', 'soon'];
    const ranks = adviceFor({ patient: { menstruating: true } }).help.map((line) =>
      order.indexOf(line.urgency),
    );
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  });

  it.each([
    {
      sign: 'pregnant-and-bleeding',
      given: { patient: { pregnancy: { weeks: 30, trimester: 3 } } },
    },
    { sign: 'child-limp-or-very-sleepy', given: { patient: { ageMonths: 30 } } },
    { sign: 'very-heavy-periods-now', given: { patient: { menstruating: true } } },
    { sign: 'very-heavy-periods-now', given: { flags: ['heavy-periods'] } },
    { sign: 'bleeding-after-periods-stopped', given: { patient: { ageMonths: 720 } } },
    { sign: 'child-swallowed-iron', given: { patient: { medicines: ['iron-tablets'] } } },
    { sign: 'sudden-loss-of-sight', given: { pattern: 'high-haemoglobin' } },
  ] as const)('include $sign where it matters and nowhere else', ({ sign, given }) => {
    expect(signsOf(given)).toContain(sign);
    expect(signsOf({ patient: { sex: 'male' } })).not.toContain(sign);
  });

  // WHO 2014, Integrated Management of Childhood Illness, distance learning module 1 (read in secondary pages):
  // general danger signs from 2 months to 5 years are not able to drink, vomiting everything, convulsions, lethargy.
  it('are for a small child those that a parent can see', () => {
    const own = ['child-limp-or-very-sleepy', 'child-breathing-hard', 'child-having-a-fit'];
    const told = ['chest-pain', 'breathless-at-rest', 'confusion'];
    for (const ageMonths of [3, 59]) {
      const signs = signsOf({ patient: { ageMonths } });
      expect(signs.slice(0, 3)).toEqual(own);
      expect(signs.filter((sign) => told.includes(sign))).toEqual([]);
    }
    for (const ageMonths of [60, 400, null]) {
      const signs = signsOf({ patient: { ageMonths } });
      expect(signs).toEqual(expect.arrayContaining(told));
      expect(signs.filter((sign) => own.includes(sign))).toEqual([]);
    }
  });

  it.each([
    { ferritin: 999, printed: false },
    { ferritin: 1000, printed: false },
    { ferritin: 1001, printed: true },
  ])('name fever with a ferritin of $ferritin ug/L: $printed', ({ ferritin, printed }) => {
    const results = [graded('ferritin', ferritin, 'high')];
    expect(signsOf({ results }).includes('fever-with-high-ferritin')).toBe(printed);
  });

  it('take "more than 1000" for more than 1000', () => {
    const results = [graded('ferritin', 1000, 'high', { comparator: '>' })];
    expect(signsOf({ results })).toContain('fever-with-high-ferritin');
  });
});

describe('cautions of the letter', () => {
  it('never tell somebody who takes iron that they should not', () => {
    const { cautions } = adviceFor({ patient: { medicines: ['iron-tablets'] } });
    expect(cautions).toContain('no-iron-beyond-prescribed');
    expect(cautions).not.toContain('no-iron-tablets-on-your-own');
  });

  it('say that the cause is not known, and to start or stop nothing, always', () => {
    for (const pattern of patterns)
      expect(adviceFor({ pattern }).cautions).toEqual(
        expect.arrayContaining([
          'cause-not-known',
          'no-iron-tablets-on-your-own',
          'do-not-stop-medicines',
        ]),
      );
  });

  it.each([
    { caution: 'some-must-not-take-iron', given: { pattern: 'raised-tsat-and-ferritin' } },
    { caution: 'some-must-not-take-iron', given: { pattern: 'unclear' } },
    {
      caution: 'some-must-not-take-iron',
      given: { tier: 'emergency', flags: ['iron-overload-known'] },
    },
    { caution: 'in-range-does-not-rule-out', given: { pattern: 'all-in-range' } },
    { caution: 'illness-changes-results', given: { flags: ['crp-raised'] } },
    { caution: 'periods-are-a-health-matter', given: { patient: { menstruating: true } } },
    { caution: 'lock-iron-away-from-children', given: { patient: { ageMonths: 30 } } },
  ] as const)('say $caution where it matters and not otherwise', ({ caution, given }) => {
    expect(adviceFor(given).cautions).toContain(caution);
    expect(adviceFor().cautions).not.toContain(caution);
  });
});
