// Every code's sentence says what its facts carry and nothing else, over readings that raise every code.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import { reasonCodes } from '../../src/interpret/reason-codes.js';
import { explainer, sentencesOf } from '../../src/letter/explain.js';
import { sayFacts, shortSource } from '../../src/letter/say-facts.js';
import { analytes, flags, patterns } from '../../src/terms.js';
import { reportOf, today } from '../interpret/build.js';
import { examples } from './examples.js';
import { english } from './fixtures.js';
import { readings } from './generated-readings.js';

const explain = explainer(english);

type Seen = { readonly key: string; readonly names: string; readonly analytes: Set<string> };

/** Each code with each set of fact names it was raised with, and the tests it was raised for. */
async function seenFacts(): Promise<readonly Seen[]> {
  const found = new Map<string, Seen>();
  const add = (
    key: string,
    facts: Readonly<Record<string, string | number>>,
    rules: readonly string[],
  ) => {
    const { source: _source, analyte, ...told } = sayFacts(facts, rules, explain);
    const names = Object.keys(told).sort().join(' ');
    const id = `${key} ${names}`;
    const seen = found.get(id) ?? { key, names, analytes: new Set<string>() };
    if (analyte !== undefined) seen.analytes.add(analyte);
    found.set(id, seen);
  };
  const shown = (await examples()).map(({ input }) => input.interpretation);
  const injected = interpret(reportOf({ 'serum-iron': 100, tibc: 95 }), today);
  for (const reading of [...shown, injected, ...readings(4000)]) {
    const { pattern, hold, nearMisses, clinicianNotes } = reading;
    for (const { code, facts, rules } of [
      ...pattern.supports,
      ...pattern.against,
      ...hold.reasons,
      ...nearMisses,
      ...clinicianNotes,
    ])
      add(`reason.${code}`, facts, rules);
    for (const { flag, analyte, facts, rules } of reading.flags)
      add(`flag.${flag}`, analyte === null ? facts : { analyte, ...facts }, rules);
  }
  return [...found.values()];
}

const seen = await seenFacts();
const severalTests = (key: string) =>
  new Set(seen.filter((one) => one.key === key).flatMap(({ analytes }) => [...analytes])).size > 1;

/** The sentences whose variables are exactly these facts; the test is named unless the code is about one test only. */
function exact({ key, names }: Seen) {
  return sentencesOf(key).filter(({ variables }) => {
    const said = new Set(variables);
    const own = [...said].filter((name) => name !== 'source' && name !== 'analyte').sort();
    return own.join(' ') === names && (said.has('analyte') || !severalTests(key));
  });
}

describe("the sentences of the clinician's sheet", () => {
  it('name every test and every pattern', () => {
    const needed = [
      ...analytes.map((each) => `analyte.${each}`),
      ...patterns.map((each) => `pattern.${each}`),
    ];
    expect(needed.filter((key) => sentencesOf(key).length === 0)).toEqual([]);
  });

  it('say every fact that a code carries, and ask for none that it does not', () => {
    const without = seen.filter((one) => exact(one).length === 0);
    expect(without.map(({ key, names }) => `${key}: ${names}`)).toEqual([]);
  });

  it('are all of use: none waits for facts that no code carries', () => {
    const used = new Set(seen.flatMap((one) => exact(one).map(({ key }) => key)));
    // A plain sentence beside those with facts is the label of its code, for lists that name codes only.
    const labels = new Set(
      [
        ...reasonCodes.map((code) => `reason.${code}`),
        ...flags.map((flag) => `flag.${flag}`),
      ].filter((code) => code.startsWith('flag.') || sentencesOf(code).length > 1),
    );
    const reserved = ['reason.mch-low'];
    const idle = [...new Set([...reasonCodes.map((code) => `reason.${code}`), ...labels])]
      .flatMap(sentencesOf)
      .filter(({ key }) => !used.has(key) && !labels.has(key) && !reserved.includes(key));
    expect(idle.map(({ key }) => key)).toEqual([]);
  });

  it.each([
    ['WHO 2024 guideline on haemoglobin cutoffs to define anaemia', 'WHO 2024'],
    ['AGA 2020 guideline on iron deficiency anaemia (Ko)', 'AGA 2020'],
    ['RCPA Manual, ferritin', 'RCPA Manual'],
    ['NICE NG12 as changed in 2023 / DG56', 'NICE NG12'],
    ['BSG 2021 guideline on iron deficiency anaemia (Snook); AGA 2020 guideline', 'BSG 2021'],
    ['policy of this program', 'policy of this program'],
  ])('call %s by its short name', (source, short) => {
    expect(shortSource(source)).toBe(short);
  });

  it('put values, units and dates in words', () => {
    const facts = { value: 104, unit: 'g/L', limit: 120, collected: '2026-11-16', days: 1 };
    expect(sayFacts({ ...facts, hours: 6, low: 15, high: 150 }, ['crp-raised'], explain)).toEqual({
      value: '104 g/L',
      limit: '120 g/L',
      collected: '16 November 2026',
      days: '1 day',
      hours: '6 hours',
      range: '15 to 150 g/L',
      source: 'PMC4785469',
    });
  });

  it.each([
    [{ high: 165, unit: 'g/L' }, 'up to 165 g/L'],
    [{ low: 12, unit: 'ug/L' }, 'from 12 µg/L'],
  ])('say a limit on one side in words: %j', (facts, range) => {
    expect(sayFacts(facts, [], explain).range).toBe(range);
  });

  it('keep the sign that the laboratory wrote', () => {
    const facts = { value: 5, unit: 'ug/L', comparator: '<' };
    expect(sayFacts(facts, [], explain).value).toBe('<5 µg/L');
  });
});
