// Every combination of low, usual, high and not measured through the table: one main pattern, and never false comfort.
import { describe, expect, it } from 'vitest';
import { decide } from '../../src/interpret/decide.js';
import { interpret } from '../../src/interpret/index.js';
import type { Levels } from '../../src/interpret/level.js';
import { patternRules, type TableFact } from '../../src/knowledge/pattern-rules.js';
import type { Patient } from '../../src/report/report.js';
import { type Analyte, type Level, levels, type Pattern, patterns } from '../../src/terms.js';
import { reportOf, today, type Values } from './build.js';

/** The seven tests, four levels each; CRP has no low. */
function* everySituation(): Generator<Levels> {
  for (const haemoglobin of levels)
    for (const mcv of levels)
      for (const iron of levels)
        for (const transferrin of levels)
          for (const saturation of levels)
            for (const ferritin of levels)
              for (const crp of ['usual', 'high', 'not-measured'] as const)
                yield {
                  haemoglobin,
                  mcv,
                  'serum-iron': iron,
                  transferrin,
                  'transferrin-saturation': saturation,
                  ferritin,
                  crp,
                };
}

const factSets: readonly (readonly TableFact[])[] = [
  [],
  ['ferritin-certain'],
  ['bleed'],
  ['outside-range'],
  ['disease-rule'],
];

const decided = [...everySituation()].flatMap((situation) =>
  factSets.map((facts) => ({
    situation,
    facts,
    decision: decide({ levels: situation, facts: new Set(facts) }),
  })),
);

/** What published tables ask of each pattern (sources stand in src/knowledge/pattern-profiles.json); levels that forbid it. */
const forbidden: Readonly<
  Partial<Record<Pattern, Partial<Record<keyof Levels, readonly Level[]>>>>
> = {
  'all-in-range': {
    haemoglobin: ['low', 'high', 'not-measured'],
    ferritin: ['low', 'high', 'not-measured'],
    mcv: ['low', 'high'],
    'serum-iron': ['low', 'high'],
    transferrin: ['low', 'high'],
    'transferrin-saturation': ['low', 'high'],
    crp: ['high'],
  },
  'early-low-intake': {
    haemoglobin: ['low', 'high', 'not-measured'],
    ferritin: ['high', 'not-measured'],
    mcv: ['low', 'high'],
    'transferrin-saturation': ['low', 'high'],
    crp: ['high'],
  },
  'iron-deficiency-without-anaemia': {
    haemoglobin: ['low', 'high', 'not-measured'],
    ferritin: ['usual', 'high', 'not-measured'],
  },
  'iron-deficient-erythropoiesis': {
    haemoglobin: ['low', 'high', 'not-measured'],
    'transferrin-saturation': ['usual', 'high', 'not-measured'],
    ferritin: ['usual', 'high', 'not-measured'],
  },
  'iron-deficiency-anaemia': {
    haemoglobin: ['usual', 'high', 'not-measured'],
    ferritin: ['high'],
    'transferrin-saturation': ['high'],
    crp: ['high'],
  },
  'anaemia-of-inflammation': {
    haemoglobin: ['usual', 'high', 'not-measured'],
    ferritin: ['low', 'not-measured'],
  },
  'mixed-inflammation-and-iron-deficiency': {
    haemoglobin: ['usual', 'high', 'not-measured'],
    ferritin: ['high'],
    crp: ['usual', 'not-measured'],
  },
  'possible-recent-blood-loss': { haemoglobin: ['usual', 'high', 'not-measured'] },
  'microcytosis-with-normal-iron': {
    mcv: ['usual', 'high', 'not-measured'],
    'serum-iron': ['low'],
    ferritin: ['low', 'not-measured'],
    'transferrin-saturation': ['low', 'high'],
  },
  'raised-ferritin-normal-tsat': {
    ferritin: ['low', 'usual', 'not-measured'],
    'transferrin-saturation': ['high', 'not-measured'],
  },
  'raised-tsat-and-ferritin': {
    ferritin: ['low', 'usual', 'not-measured'],
    'transferrin-saturation': ['low', 'usual', 'not-measured'],
  },
  'anaemia-not-explained-by-iron': {
    haemoglobin: ['usual', 'high', 'not-measured'],
    ferritin: ['low', 'not-measured'],
  },
  'high-haemoglobin': { haemoglobin: ['low', 'usual', 'not-measured'] },
};

describe('the decision table', () => {
  it('gives exactly one main pattern for every combination', () => {
    expect(decided).toHaveLength(4 ** 6 * 3 * factSets.length);
    expect(decided.filter(({ decision }) => !patterns.includes(decision.row.pattern))).toEqual([]);
  });

  it('never names a pattern that its own table row excludes', () => {
    const wrong = decided.filter(({ situation, decision }) => {
      const bars = forbidden[decision.row.pattern] ?? {};
      return (Object.keys(bars) as (keyof Levels)[]).some((test) =>
        bars[test]?.includes(situation[test]),
      );
    });
    expect(wrong.map(({ situation, decision }) => [decision.row.id, situation])).toEqual([]);
  });

  it('never repeats the main pattern among the companions, nor a companion twice', () => {
    const repeated = decided.filter(({ decision }) => {
      const named = [decision.row, ...decision.companions].map(({ pattern }) => pattern);
      return new Set(named).size !== named.length;
    });
    expect(repeated).toEqual([]);
  });

  it('uses every row of the table', () => {
    const used = new Set(decided.map(({ decision }) => decision.row.id));
    const facts: TableFact[] = ['recent-iron', 'contradiction'];
    for (const fact of facts)
      used.add(decide({ levels: allUsual, facts: new Set<TableFact>([fact]) }).row.id);
    expect(patternRules.map(({ id }) => id).filter((id) => !used.has(id))).toEqual([]);
  });

  it('calls nothing in range while anything is outside or a disease has its own rule', () => {
    const comforted = decided.filter(
      ({ facts, decision }) =>
        decision.row.pattern === 'all-in-range' &&
        (facts.includes('outside-range') || facts.includes('disease-rule')),
    );
    expect(comforted).toEqual([]);
  });

  it('calls nothing in range without saturation unless iron and its carriers both say so', () => {
    for (const { situation, decision } of decided)
      if (
        decision.row.pattern === 'all-in-range' &&
        situation['transferrin-saturation'] === 'not-measured'
      )
        expect([situation['serum-iron'], situation.transferrin]).toEqual(['usual', 'usual']);
  });

  it('keeps a low ferritin with low haemoglobin a deficiency unless saturation contradicts it', () => {
    for (const { situation, decision } of decided)
      if (
        situation.haemoglobin === 'low' &&
        situation.ferritin === 'low' &&
        situation['transferrin-saturation'] !== 'high'
      )
        expect(['iron-deficiency-anaemia', 'mixed-inflammation-and-iron-deficiency']).toContain(
          decision.row.pattern,
        );
  });
});

const allUsual: Levels = {
  haemoglobin: 'usual',
  mcv: 'usual',
  'serum-iron': 'usual',
  transferrin: 'usual',
  'transferrin-saturation': 'usual',
  ferritin: 'usual',
  crp: 'usual',
};

/** Values clearly low, usual and high for the laboratory intervals beside them. */
const measured: Readonly<
  Record<keyof Levels, { low: number; high: number; at: Record<string, number> }>
> = {
  haemoglobin: { low: 130, high: 165, at: { low: 95, usual: 140, high: 185 } },
  mcv: { low: 80, high: 100, at: { low: 70, usual: 90, high: 110 } },
  'serum-iron': { low: 10, high: 30, at: { low: 5, usual: 18, high: 40 } },
  transferrin: { low: 2, high: 3.5, at: { low: 1.5, usual: 2.6, high: 4.2 } },
  'transferrin-saturation': { low: 16, high: 50, at: { low: 9, usual: 30, high: 70 } },
  ferritin: { low: 20, high: 300, at: { low: 8, usual: 120, high: 700 } },
  crp: { low: 0, high: 5, at: { usual: 2, high: 40 } },
};

const people: readonly Partial<Patient>[] = [
  { sex: 'male' },
  { sex: 'female', menstruating: true },
  { sex: 'unknown' },
  { sex: 'female', pregnancy: { weeks: 10, trimester: 1 } },
  { sex: 'female', pregnancy: { weeks: 32, trimester: 3 } },
];

describe('whole reports at every combination', () => {
  it.each(people)(
    'of %o give one pattern and no false comfort',
    (patient) => {
      let comforted = 0;
      const wrong: Levels[] = [];
      for (const situation of everySituation()) {
        const { pattern, results } = interpret(reportAt(situation, patient), today);
        if (!patterns.includes(pattern.main)) wrong.push(situation);
        if (pattern.main !== 'all-in-range') continue;
        comforted += 1;
        const seen = results.map(({ analyte }) => analyte);
        const enough = seen.includes('haemoglobin') && seen.includes('ferritin');
        if (!enough || results.some(({ position }) => position !== 'in-range'))
          wrong.push(situation);
      }
      expect(wrong).toEqual([]);
      expect(comforted).toBeGreaterThan(0);
    },
    120_000,
  );
});

function reportAt(situation: Levels, patient: Partial<Patient>) {
  const tests = Object.keys(measured) as (keyof Levels & Analyte)[];
  const values: Values = Object.fromEntries(
    tests.flatMap((test) => {
      const { low, high, at } = measured[test];
      const value = at[situation[test]];
      return value === undefined ? [] : [[test, { value, low, high }]];
    }),
  );
  return reportOf(values, { patient });
}
