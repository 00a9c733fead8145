// Iron tablets are spoken of only when a clinician prescribed them.
import { describe, expect, it } from 'vitest';
import { adviceFor } from './build.js';

const prescribed = { tabletsPrescribed: { dose: null } };

describe('advice on tablets', () => {
  it('is absent unless a clinician prescribed them, whatever the report says', () => {
    expect(adviceFor({ patient: { medicines: ['iron-tablets'] } }).tablets).toBeNull();
  });

  it('carries the dose the clinician entered and no other', () => {
    expect(adviceFor({ choices: prescribed }).tablets?.dose).toBeNull();
    const dose = 'one tablet every other day';
    expect(adviceFor({ choices: { tabletsPrescribed: { dose } } }).tablets?.dose).toBe(dose);
  });

  // UK product characteristics of ferrous sulfate, section 4.5; Australian Red Cross page for levothyroxine (4 to 5 hours).
  it.each([
    { medicine: 'levothyroxine', atLeast: 2, hours: 4 },
    { medicine: 'tetracycline', atLeast: 2, hours: 3 },
    { medicine: 'quinolone', atLeast: 2, hours: 2 },
    { medicine: 'bisphosphonate', atLeast: 2, hours: 2 },
    { medicine: 'antacid', atLeast: 2, hours: 2 },
    { medicine: 'calcium', atLeast: 2, hours: 2 },
    { medicine: 'penicillamine', atLeast: 2, hours: 2 },
  ] as const)('keeps $hours hours from $medicine', ({ medicine, atLeast, hours }) => {
    const gaps = adviceFor({ choices: prescribed, patient: { medicines: [medicine] } }).tablets
      ?.gaps;
    expect(gaps?.map((gap) => gap.hours)).toEqual([hours]);
    expect(hours).toBeGreaterThanOrEqual(atLeast);
  });

  it('gives no hours where the sources give none', () => {
    const medicines = ['levodopa', 'zinc', 'mycophenolate', 'methyldopa'] as const;
    const tablets = adviceFor({ choices: prescribed, patient: { medicines } }).tablets;
    expect(tablets?.gaps.map((gap) => gap.hours)).toEqual([null, null, null, null]);
    expect(tablets?.points).toContain('ask-pharmacist-about-gaps');
  });

  it('tells dark stool from tar-like stool and keeps tablets from children', () => {
    const { tablets, help, cautions } = adviceFor({ choices: prescribed });
    expect(tablets?.points).toEqual(
      expect.arrayContaining([
        'dark-stool-is-expected',
        'tar-like-stool-is-not',
        'lock-away-from-children',
        'if-child-swallows-call',
      ]),
    );
    expect(help).toContainEqual({ sign: 'child-swallowed-iron', urgency: 'emergency' });
    expect(cautions).toContain('no-iron-beyond-prescribed');
    expect(cautions).not.toContain('no-iron-tablets-on-your-own');
  });

  it('takes the chosen step "as prescribed" for a prescription without a dose', () => {
    const steps = [{ step: 'take-tablets-as-prescribed', by: null, words: null }] as const;
    expect(adviceFor({ choices: { steps } }).tablets).toMatchObject({ dose: null });
  });
});
