// Properties over generated reports: worse is never held less, units and order change nothing, new facts never flip a statement unflagged.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  clinicianNoteCodes,
  holdReasonCodes,
  type Interpretation,
  interpret,
  patternReasonCodes,
  reasonCodes,
} from '../../src/interpret/index.js';
import { checkReport } from '../../src/report/index.js';
import type { Report } from '../../src/report/report.js';
import {
  type Analyte,
  analytes,
  bleedings,
  conditions,
  holdTiers,
  medicines,
  type Pattern,
  symptoms,
} from '../../src/terms.js';
import { somebody, written, reportOf as writtenReport } from '../report/written.js';
import { type Given, panelOf, reportOf, today, type Values } from './build.js';

/** The same reports every time. */
fc.configureGlobal({ seed: 20261125 });

/** Spans wide enough to cross every limit, in our units. */
const spans: Readonly<Partial<Record<Analyte, readonly [number, number]>>> = {
  haemoglobin: [50, 210],
  ferritin: [2, 1500],
  'transferrin-saturation': [3, 95],
  'serum-iron': [2, 59],
  transferrin: [1, 5],
  tibc: [25, 110],
  mcv: [55, 120],
  mch: [15, 40],
  rbc: [2, 7.5],
  haematocrit: [0.2, 0.64],
  crp: [0, 120],
  stfr: [0.6, 15],
  'reticulocyte-haemoglobin': [16, 40],
};
const measured = Object.keys(spans) as (keyof typeof spans)[];

function given(analyte: Analyte): fc.Arbitrary<Given> {
  const [from, to] = spans[analyte] ?? [1, 100];
  const value = fc
    .double({ min: from, max: to, noNaN: true })
    .map((one) => Number(one.toPrecision(3)));
  const intervals = fc.option(
    fc.tuple(
      fc.double({ min: 0.1, max: 0.5, noNaN: true }),
      fc.double({ min: 0.5, max: 0.9, noNaN: true }),
    ),
    { nil: null },
  );
  return fc
    .tuple(value, intervals)
    .map(([found, share]) =>
      share === null
        ? found
        : { value: found, low: from + share[0] * (to - from), high: from + share[1] * (to - from) },
    );
}

const values: fc.Arbitrary<Values> = fc.record(
  Object.fromEntries(measured.map((analyte) => [analyte, given(analyte)])),
  { requiredKeys: [] },
);

const patient = fc.record({
  sex: fc.constantFrom('female', 'male', 'unknown' as const),
  ageMonths: fc.option(fc.integer({ min: 6, max: 1100 }), { nil: null }),
  menstruating: fc.constantFrom(true, false, null),
  altitudeMetres: fc.option(fc.integer({ min: 0, max: 5500 }), { nil: null }),
  cigarettesPerDay: fc.option(fc.integer({ min: 0, max: 60 }), { nil: null }),
  conditions: fc.subarray([...conditions], { maxLength: 2 }),
  medicines: fc.subarray([...medicines], { maxLength: 2 }),
});
const someone = fc.oneof(
  { weight: 4, arbitrary: patient },
  {
    weight: 1,
    arbitrary: patient.chain((one) =>
      fc.constantFrom(1, 2, 3, null).map((trimester) => ({
        ...one,
        sex: 'female' as const,
        ageMonths: 360,
        pregnancy: { weeks: null, trimester: trimester as 1 | 2 | 3 | null },
      })),
    ),
  },
  {
    weight: 1,
    arbitrary: patient.map((one) => ({
      ...one,
      sex: 'female' as const,
      ageMonths: 360,
      afterBirthWeeks: 3,
    })),
  },
);
const context = fc.record({
  symptoms: fc.subarray([...symptoms], { maxLength: 2 }),
  bleeding: fc.subarray([...bleedings], { maxLength: 1 }),
  ironTabletHoursBefore: fc.option(fc.integer({ min: 1, max: 72 }), { nil: null, freq: 5 }),
  ironInjectionDaysBefore: fc.option(fc.integer({ min: 1, max: 60 }), { nil: null, freq: 5 }),
  transfusionDaysBefore: fc.option(fc.integer({ min: 0, max: 6 }), { nil: null, freq: 5 }),
  fasting: fc.constantFrom(true, false, null),
});
const facts = fc.record({
  patient: someone,
  context,
  previous: fc.array(
    values.map((one) => panelOf(one, '2026-09-10')),
    { maxLength: 2 },
  ),
});
const runs = { numRuns: 400 };

const rank = ({ hold }: Interpretation) => holdTiers.indexOf(hold.tier);

/** Which way is worse for a value, seen from where it already lies. */
const worse: Readonly<Partial<Record<Analyte, readonly ('down' | 'up')[]>>> = {
  haemoglobin: ['down', 'up'],
  haematocrit: ['up'],
  ferritin: ['up', 'down'],
  'transferrin-saturation': ['up', 'down'],
  'serum-iron': ['up'],
  crp: ['up'],
};

describe('a hold', () => {
  it('is never lowered by one value getting worse', () => {
    const step = fc.record({
      analyte: fc.constantFrom(...(Object.keys(worse) as (keyof typeof worse)[])),
      by: fc.double({ min: 0.01, max: 1.5, noNaN: true }),
    });
    fc.assert(
      fc.property(values, facts, step, (before, around, { analyte, by }) => {
        const report = reportOf(before, around);
        const first = interpret(report, today);
        const found = first.results.find((one) => one.analyte === analyte && one.derived === null);
        const now = before[analyte];
        if (found === undefined || now === undefined) return;
        const low = found.level === 'low';
        const high = found.level === 'high';
        if (!low && !high) return;
        const way = low ? 'down' : 'up';
        if (!worse[analyte]?.includes(way)) return;
        const plain = typeof now === 'number' ? { value: now } : now;
        const value = low ? plain.value / (1 + by) : plain.value * (1 + by);
        const after = interpret(
          reportOf({ ...before, [analyte]: { ...plain, value } }, around),
          today,
        );
        expect(rank(after)).toBeGreaterThanOrEqual(rank(first));
      }),
      { numRuns: 1500 },
    );
  });
});

describe('the order of results in a report', () => {
  it('changes nothing', () => {
    fc.assert(
      fc.property(values, facts, fc.integer({ min: 1, max: 9 }), (some, around, shift) => {
        const report = reportOf(some, around);
        const { results } = report.panel;
        const at = results.length === 0 ? 0 : shift % results.length;
        const turned: Report = {
          ...report,
          panel: {
            ...report.panel,
            results: [...results.slice(at), ...results.slice(0, at)].reverse(),
          },
        };
        const { changes, sources, flags, ...rest } = interpret(report, today);
        const other = interpret(turned, today);
        expect(other).toMatchObject(rest);
        expect(new Set(other.sources.map(({ rule }) => rule))).toEqual(
          new Set(sources.map(({ rule }) => rule)),
        );
        expect(other.changes).toEqual(expect.arrayContaining([...changes]));
        expect(other.flags.map(({ flag }) => flag)).toEqual(flags.map(({ flag }) => flag));
      }),
      runs,
    );
  });
});

describe('the unit of a quantity', () => {
  /** The same quantity, written twice: factors are powers of ten, so that no digit is lost. */
  const twice: readonly (readonly [Analyte, string, string, number])[] = [
    ['haemoglobin', 'g/L', 'g/dL', 10],
    ['ferritin', 'ug/L', 'ng/mL', 1],
    ['crp', 'mg/L', 'mg/dL', 10],
    ['transferrin', 'g/L', 'mg/dL', 0.01],
  ];
  it('changes nothing', () => {
    const numbers = fc.record({
      haemoglobin: fc.integer({ min: 60, max: 190 }),
      ferritin: fc.integer({ min: 3, max: 900 }),
      crp: fc.integer({ min: 1, max: 200 }),
      transferrin: fc.integer({ min: 11, max: 45 }).map((one) => one / 10),
    });
    fc.assert(
      fc.property(numbers, (some) => {
        const read = (which: 1 | 2) => {
          const results = twice.map(([analyte, ours, theirs, factor]) => {
            const value = (some as Record<string, number>)[analyte] ?? 0;
            const shown = which === 1 ? value : Number((value / factor).toPrecision(6));
            return written({ analyte, value: String(shown), unit: which === 1 ? ours : theirs });
          });
          const checked = checkReport(writtenReport(results, { patient: somebody }), today);
          if (!checked.ok) throw new Error(checked.problems.map(({ code }) => code).join(' '));
          return interpret(checked.value, today);
        };
        const bare = ({ results, ...rest }: Interpretation) => ({
          ...rest,
          results: results.map(({ copied, ...one }) => one),
        });
        expect(bare(read(2))).toEqual(bare(read(1)));
      }),
      { numRuns: 200 },
    );
  });
});

/** Statements that cannot both be true of one person; within a family they only sharpen. */
const families: readonly (readonly Pattern[])[] = [
  ['all-in-range'],
  [
    'early-low-intake',
    'iron-deficiency-without-anaemia',
    'iron-deficient-erythropoiesis',
    'iron-deficiency-anaemia',
    'mixed-inflammation-and-iron-deficiency',
  ],
  ['raised-ferritin-normal-tsat', 'raised-tsat-and-ferritin'],
];
const familyOf = (pattern: Pattern) => families.findIndex((some) => some.includes(pattern));

describe('adding a missing value', () => {
  it('never turns a firm statement into a contrary one without a flag or a named gap', () => {
    const added = fc.constantFrom<Analyte>(
      'haemoglobin',
      'ferritin',
      'transferrin-saturation',
      'crp',
    );
    fc.assert(
      fc.property(values, someone, added, fc.nat(), (some, person, analyte, seed) => {
        const { [analyte]: _, ...without } = some;
        const before = interpret(reportOf(without, { patient: person }), today);
        const value = fc.sample(given(analyte), { numRuns: 1, seed })[0];
        if (value === undefined) return;
        const after = interpret(
          reportOf({ ...without, [analyte]: value }, { patient: person }),
          today,
        );
        const [from, to] = [familyOf(before.pattern.main), familyOf(after.pattern.main)];
        if (from < 0 || to < 0 || from === to) return;
        const named: readonly string[] = before.pattern.missing;
        const flagged = [...before.flags, ...after.flags].some(({ flag }) =>
          /not-measured|crp-raised|differs|not-computed/.test(flag),
        );
        expect(named.includes(analyte) || flagged).toBe(true);
      }),
      { numRuns: 1500 },
    );
  });
});

describe('every interpretation', () => {
  it('uses codes of the closed lists only, and names every rule in its sources', () => {
    fc.assert(
      fc.property(values, facts, (some, around) => {
        const found = interpret(reportOf(some, around), today);
        const { pattern, hold, clinicianNotes, nearMisses, sources } = found;
        const known = (codes: readonly string[]) => (one: { readonly code: string }) =>
          codes.includes(one.code);
        const lines = [...pattern.supports, ...pattern.against, ...nearMisses];
        expect(lines.filter((one) => !known(patternReasonCodes)(one))).toEqual([]);
        expect(hold.reasons.filter((one) => !known(holdReasonCodes)(one))).toEqual([]);
        expect(clinicianNotes.filter((one) => !known(clinicianNoteCodes)(one))).toEqual([]);
        const listed = new Set(sources.map(({ rule }) => rule));
        const used = [
          ...found.groups,
          ...lines,
          ...found.flags,
          ...hold.reasons,
          ...found.changes,
          ...clinicianNotes,
        ].flatMap(({ rules }) => rules);
        const yardsticks = found.results
          .flatMap(({ comparedWith, also }) => [comparedWith, ...also])
          .flatMap((one) => (one?.rule == null ? [] : [one.rule]));
        expect([...used, ...yardsticks].filter((rule) => !listed.has(rule))).toEqual([]);
        expect(listed.size).toBe(sources.length);
        expect(sources.every(({ source, at }) => source !== '' && at !== '')).toBe(true);
      }),
      runs,
    );
  });

  it('is plain JSON, and the same twice', () => {
    fc.assert(
      fc.property(values, facts, (some, around) => {
        const report = reportOf(some, around);
        const found = interpret(report, today);
        expect(JSON.parse(JSON.stringify(found))).toEqual(found);
        expect(interpret(report, today)).toEqual(found);
      }),
      { numRuns: 100 },
    );
  });

  it('prints a computed saturation that lies where the exact one lies', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 59, noNaN: true }),
        fc.double({ min: 25, max: 110, noNaN: true }),
        (iron, tibc) => {
          const exact = { 'serum-iron': iron, tibc };
          const { results } = interpret(reportOf(exact), today);
          const derived = results.find(({ analyte }) => analyte === 'transferrin-saturation');
          const printed = Number(derived?.copied.value);
          const again = interpret(reportOf({ 'transferrin-saturation': printed }), today)
            .results[0];
          expect([again?.position, again?.level]).toEqual([derived?.position, derived?.level]);
        },
      ),
      runs,
    );
  });

  it('never says all is in range with anything outside, doubtful or missing that decides', () => {
    fc.assert(
      fc.property(values, facts, (some, around) => {
        const { pattern, results } = interpret(reportOf(some, around), today);
        if (pattern.main !== 'all-in-range') return;
        expect(
          results.every(({ position, doubt }) => position === 'in-range' && doubt === null),
        ).toBe(true);
        const seen = results.map(({ analyte }) => analyte);
        expect(seen).toEqual(expect.arrayContaining(['haemoglobin', 'ferritin']));
      }),
      { numRuns: 1500 },
    );
  });
});

it('lists each code once, for the words', () => {
  expect(new Set(reasonCodes).size).toBe(reasonCodes.length);
  expect(analytes.length).toBeGreaterThan(0);
});
