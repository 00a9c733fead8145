// What follows from a reading: response to iron, pathways for the clinician, holds and changes, each with its rows.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import type { Panel, Patient } from '../../src/report/report.js';
import { deficient, panelOf, reportOf, today, type Values } from './build.js';

type Facts = Parameters<typeof reportOf>[1];
const read = (values: Values, facts: Facts = {}) => interpret(reportOf(values, facts), today);
const codes = (lines: readonly { readonly code: string }[]) => lines.map(({ code }) => code);
const usual: Values = { haemoglobin: 145, ferritin: 100, 'transferrin-saturation': 30, crp: 1 };

describe('response to iron', () => {
  const note = (
    now: Values,
    previous: readonly Panel[],
    medicines: Patient['medicines'] = ['iron-tablets'],
  ) =>
    read(now, { previous, patient: { medicines } }).clinicianNotes.filter(({ code }) =>
      code.startsWith('re'),
    );
  const low = panelOf({ haemoglobin: 100 }, '2026-11-02');

  it('is told with its days, its rise and what was needed', () => {
    expect(note({ haemoglobin: 110 }, [low])).toEqual([
      {
        code: 'response-good',
        facts: { days: 14, rise: 10, collected: '2026-11-02', needed: 10 },
        rules: ['response-rise-2-weeks', 'response-days-from', 'response-days-until'],
      },
    ]);
    expect(codes(note({ haemoglobin: 110 }, [low], ['iron-injection']))).toEqual(['response-good']);
    expect(note({ haemoglobin: 110 }, [low], ['zinc'])).toEqual([]);
  });

  it('too early asks for a later test', () => {
    expect(note({ haemoglobin: 103 }, [panelOf({ haemoglobin: 100 }, '2026-11-10')])).toEqual([
      {
        code: 'response-too-early',
        facts: { days: 6, rise: 3, collected: '2026-11-10' },
        rules: ['response-days-from'],
      },
      { code: 'recheck-after-iron', facts: {}, rules: ['recheck-weeks'] },
    ]);
  });

  it.each<readonly [string, Values, Values]>([
    ['no haemoglobin now', { ferritin: 20 }, { haemoglobin: 100 }],
    ['no haemoglobin then', { haemoglobin: 110 }, { ferritin: 6 }],
    ['a comparator now', { haemoglobin: { value: 110, comparator: '>' } }, { haemoglobin: 100 }],
    ['a comparator then', { haemoglobin: 110 }, { haemoglobin: { value: 100, comparator: '<' } }],
    ['a doubt now', { haemoglobin: { value: 110, doubt: 'value' } }, { haemoglobin: 100 }],
  ])('is not told with %s', (_, now, then) => {
    expect(note(now, [panelOf(then, '2026-11-02')])).toEqual([]);
  });

  it('is counted from the newest haemoglobin that is sure', () => {
    const previous = [
      panelOf({ ferritin: 6 }, '2026-11-09'),
      panelOf({ haemoglobin: { value: 100, doubt: 'unit' } }, '2026-11-05'),
      low,
    ];
    expect(note({ haemoglobin: 112 }, previous)[0]?.facts).toMatchObject({ days: 14, rise: 12 });
  });
});

describe('pathways', () => {
  const notes = (values: Values, facts: Facts = {}) => codes(read(values, facts).clinicianNotes);
  const woman = { sex: 'female', ageMonths: 360, menstruating: true } as const;

  it.each<readonly [string, Values, Partial<Patient>]>([
    ['a woman with everything usual', usual, woman],
    ['a man of 66 with everything usual', usual, { ageMonths: 800 }],
    [
      'a man of unknown age with everything usual',
      { ...usual, haemoglobin: 145 },
      { ageMonths: null },
    ],
  ])('are none for %s', (_, values, patient) => {
    expect(notes(values, { patient })).toEqual([]);
    expect(read(values, { patient }).hold.reasons).toEqual([]);
  });

  it('of the bowel hold where a bleed stands beside deficiency anaemia', () => {
    const { hold } = read(deficient, { context: { bleeding: ['blood-donation'] } });
    expect(hold.reasons.map(({ code, facts }) => [code, facts.why])).toEqual([
      ['bowel-check-pathway', 'iron-deficiency-anaemia'],
    ]);
  });

  it.each<readonly [string, Values, Facts, readonly unknown[]]>([
    [
      'bowel signs',
      usual,
      { context: { symptoms: ['change-in-bowel-habit'] } },
      [['bowel-signs', 'pathway-stool-test-signs']],
    ],
    [
      'weight loss with pain at 40',
      usual,
      { context: { symptoms: ['weight-loss', 'abdominal-pain'] } },
      [['bowel-signs', 'pathway-stool-test-weight-loss']],
    ],
    [
      'anaemia at 65',
      { ...usual, haemoglobin: 115 },
      { patient: { ageMonths: 780 } },
      [['older-anaemia', 'pathway-stool-test-older']],
    ],
    [
      'deficiency with inflammation',
      { ...deficient, ferritin: 60, crp: 20 },
      {},
      [['iron-deficiency-anaemia', 'pathway-stool-test-ida', 'pathway-endoscopy']],
    ],
  ])('of the bowel after %s', (_, values, facts, expected) => {
    const found = read(values, facts).hold.reasons.filter(
      ({ code }) => code === 'bowel-check-pathway',
    );
    expect(found.map((one) => [one.facts.why, ...one.rules])).toEqual(expected);
  });

  it('of deficiency anaemia with inflammation are those of deficiency anaemia', () => {
    expect(notes({ ...deficient, ferritin: 60, crp: 20 })).toContain('coeliac-blood-test');
  });

  it('of the gene test follow the limits of women who may menstruate, at an unknown age too', () => {
    const values = { haemoglobin: 140, 'transferrin-saturation': 60, ferritin: 250 };
    const rows = (patient: Partial<Patient>) =>
      read(values, { patient })
        .clinicianNotes.filter(({ code }) => code === 'haemochromatosis-test')
        .map(({ rules }) => rules);
    expect(rows(woman)).toEqual([['pathway-haemochromatosis-women']]);
    expect(rows({ sex: 'female', ageMonths: 599 })).toEqual([['pathway-haemochromatosis-women']]);
    expect(rows({ sex: 'female', ageMonths: 600 })).toEqual([]);
    expect(rows({ sex: 'male' })).toEqual([]);
  });

  it('of iron into a vein need the week of pregnancy', () => {
    const patient = { ...woman, pregnancy: { weeks: null, trimester: 3 } } as const;
    const found = notes({ ...deficient, haemoglobin: 99 }, { patient });
    expect(found).toContain('pregnancy-obstetric-birth');
    expect(found).not.toContain('pregnancy-iron-into-vein');
  });

  it('of both diseases are named after their disease', () => {
    const patient = { conditions: ['inflammatory-bowel-disease', 'heart-failure'] } as const;
    expect(notes({ ...usual, ferritin: 25 }, { patient })).toEqual([
      'bowel-disease-rule-met',
      'heart-failure-rule-met',
    ]);
  });
});

describe('a hold', () => {
  it('of no haemoglobin is not read off a saturation', () => {
    expect(read({ 'serum-iron': 6, tibc: 60 }).hold.reasons).toEqual([]);
  });

  it('names each sign of the body', () => {
    const context = { symptoms: ['fever', 'jaundice'] } as const;
    const { hold } = read({ haemoglobin: 100, ferritin: 6 }, { context });
    expect(
      hold.reasons
        .filter(({ code }) => code === 'anaemia-with-jaundice-or-fever')
        .map(({ facts }) => facts.symptom),
    ).toEqual(['fever', 'jaundice']);
  });

  it('names its value to two decimals, its unit, its limit and its row', () => {
    expect(read({ haemoglobin: 65.126, ferritin: 100 }).hold.reasons[0]).toEqual({
      code: 'haemoglobin-below-emergency-limit',
      tier: 'emergency',
      facts: { analyte: 'haemoglobin', value: 65.13, unit: 'g/L', limit: 70 },
      rules: ['hold-haemoglobin-emergency'],
    });
  });

  it('of a child younger than 6 months waits for a clinician', () => {
    const found = read(usual, { patient: { ageMonths: 5 } });
    expect(found.hold).toEqual({
      tier: 'same-day',
      reasons: [
        { code: 'under-six-months', tier: 'same-day', facts: {}, rules: ['youngest-months'] },
      ],
    });
    expect(found).toMatchObject({
      groups: [],
      flags: [],
      changes: [],
      nearMisses: [],
      clinicianNotes: [],
    });
    expect(found.pattern).toEqual({
      main: 'unclear',
      companions: [],
      supports: [],
      against: [{ code: 'under-six-months', facts: {}, rules: ['youngest-months'] }],
      missing: [],
    });
  });
});

describe('a change', () => {
  it.each<readonly [string, Values, Values, string]>([
    ['from nothing', { ferritin: 0 }, { ferritin: 30 }, 'cannot-tell'],
    ['from next to nothing', { ferritin: 0.1 }, { ferritin: 30 }, 'has-gone-up'],
  ])('%s is told as %s', (_, then, now, verdict) => {
    const { changes } = read(now, { previous: [panelOf(then, '2026-08-01')] });
    expect(changes[0]?.verdict).toBe(verdict);
  });

  it('that cannot be told still says what chance alone could make, with its rows', () => {
    const previous = [panelOf({ haemoglobin: { value: 100, comparator: '<' } }, '2026-08-01')];
    const [change] = read({ haemoglobin: 120 }, { previous }).changes;
    expect(change?.percent).toBeNull();
    expect(change?.limitDown).toBeCloseTo(8.7, 1);
    expect(change?.rules).toEqual(['variation-haemoglobin', 'rcv-z']);
  });
});
