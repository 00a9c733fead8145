// Steps as a clinician types them, with dates and own words.
import { describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/app/commands/next-steps.js';
import { Stop } from '../../src/app/status.js';

const stopOf = (make: () => unknown): string => {
  try {
    make();
  } catch (fault) {
    if (fault instanceof Stop) return fault.sentences.join(' ');
    throw fault;
  }
  return 'did not stop';
};

describe('stepsOf', () => {
  it('leaves the suggested steps where none was chosen', () => {
    expect(stepsOf(undefined, undefined)).toBeNull();
  });

  it('puts words with the step they name', () => {
    expect(stepsOf(['repeat-test=2027-02-20', 'referral'], ['referral=Bring a = b list.'])).toEqual(
      [
        { step: 'repeat-test', by: '2027-02-20', words: null },
        { step: 'referral', by: null, words: 'Bring a = b list.' },
      ],
    );
  });

  it('takes words alone where one step was chosen', () => {
    expect(stepsOf(['talk-at-clinic'], ['Ask for Wren.'])?.[0]?.words).toBe('Ask for Wren.');
  });

  it.each([
    ['an unknown step', () => stepsOf(['rest'], undefined), /--next-step: expected one of/],
    [
      'a date that is none',
      () => stepsOf(['referral=2026-02-30'], undefined),
      /--next-step: .*date/,
    ],
    ['words without a step', () => stepsOf(undefined, ['Come.']), /--words: expected STEP=WORDS/],
    ['words for one of two', () => stepsOf(['referral', 'repeat-test'], ['Come.']), /--words/],
    ['empty words', () => stepsOf(['referral'], ['referral= ']), /--words: expected words/],
  ] as const)('stops at %s', (_name, make, says) => {
    expect(stopOf(make)).toMatch(says);
  });
});
