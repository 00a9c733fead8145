// The clinician's sheet and the call sheet: what a clinician must find on them.
import { describe, expect, it } from 'vitest';
import type { Interpretation } from '../../src/interpret/interpretation.js';
import {
  composeCallSheet,
  composeReasoning,
  type ReasoningBlock,
  type ReasoningContent,
  sayReasoning,
} from '../../src/letter/index.js';
import { holdTiers } from '../../src/terms.js';
import { examples } from './examples.js';
import { clinic, english, letterOf } from './fixtures.js';

const input = letterOf({ pattern: 'iron-deficiency-anaemia', flags: ['crp-raised'] });
const source = (checked: 'read' | 'proposal' | 'from-memory') => ({
  rule: `invented-${checked}`,
  source: 'An invented guideline',
  at: 'table 1',
  checked,
  number: '30 ug/L',
});
const interpretation: Interpretation = {
  ...input.interpretation,
  pattern: {
    ...input.interpretation.pattern,
    supports: [
      {
        code: 'ferritin-low',
        facts: { analyte: 'ferritin', value: 4, unit: 'ug/L', limit: 15 },
        rules: ['ferritin-low-5-and-over'],
      },
    ],
    against: [
      {
        code: 'crp-high',
        facts: { analyte: 'crp', value: 24, unit: 'mg/L', limit: 5 },
        rules: ['crp-raised'],
      },
    ],
    missing: ['stfr'],
  },
  sources: [source('read'), source('proposal'), source('from-memory')],
};
const sheet = composeReasoning(input.report, interpretation, input.advice, english);
const text = sayReasoning(sheet);
const everyExample = await examples();

const numbersIn = (texts: readonly string[]) =>
  texts.flatMap((text) => text.match(/\d+(?:\.\d+)?/g) ?? []);

const measured = ({ results }: Interpretation, analyte: string) =>
  results.find((result) => result.analyte === analyte)?.value ?? Number.NaN;

const tablesOf = ({ blocks }: ReasoningContent, look: ReasoningBlock['look']) =>
  blocks
    .filter((block) => block.look === look && (look !== 'part' || block.slug === 'results'))
    .flatMap(({ table }) => table?.rows.flat() ?? []);

describe("the clinician's sheet", () => {
  it('opens with pattern, why, what speaks against it, flags, hold and what is missing', () => {
    expect(sheet.blocks[0]?.table?.rows.map(([label]) => label)).toEqual([
      'Pattern',
      'Why',
      'Against',
      'Flags',
      'Letter',
      'Missing',
    ]);
  });

  it('shows a reason with its number, its limit and where the limit stands', () => {
    expect(text).toContain('Ferritin is 4 µg/L, below 15 µg/L (WHO 2020).');
  });

  it('marks a proposal and a number from memory so that nobody overlooks them', () => {
    expect(text).toContain('PROPOSAL');
    expect(text).toContain('FROM MEMORY');
    expect(text).toMatch(/\[1\] An invented guideline: .*30 µg\/L \(table 1\)\. Read\./);
    expect(text).toMatch(/\[2!\] An invented guideline/);
  });

  it('shows every result with its yardstick, as the laboratory wrote it', () => {
    const table = sheet.blocks.find(({ slug }) => slug === 'results')?.table;
    expect(table?.rows).toHaveLength(interpretation.results.length);
    expect(table?.rows[0]?.slice(0, 5)).toEqual([
      'Haemoglobin',
      '104 g/L',
      '115 to 155',
      'none printed',
      'a little below',
    ]);
  });

  it.each(everyExample)('can be made for $name', ({ input: example }) => {
    const made = composeReasoning(example.report, example.interpretation, example.advice, english);
    expect(sayReasoning(made)).not.toMatch(/\{\{|undefined|\bnull\b|NaN/);
    expect(made.blocks.every(({ heading }) => heading !== '')).toBe(true);
  });

  it.each(everyExample)('says the top of $name in ten lines', ({ input: example }) => {
    const made = composeReasoning(example.report, example.interpretation, example.advice, english);
    const lines = made.blocks[0]?.table?.rows.flatMap(([, ...beside]) => beside) ?? [];
    expect(lines.length).toBeGreaterThan(4);
    expect(lines.length).toBeLessThanOrEqual(10);
  });

  it.each(everyExample)(
    'prints no number at the top of $name that is neither a result nor in the sources',
    ({ input: example }) => {
      const { report, interpretation, advice } = example;
      const made = composeReasoning(report, interpretation, advice, english);
      const known = numbersIn([
        ...tablesOf(made, 'sources'),
        ...tablesOf(made, 'part'),
        JSON.stringify([report.panel, report.previous, report.context, report.patient]),
        ...report.previous.map(({ collected }) => english.date(collected)),
        // The Mentzer index is MCV over the red cell count (PMC4003757, abstract).
        (measured(interpretation, 'mcv') / measured(interpretation, 'rbc')).toFixed(1),
      ]);
      const top = tablesOf(made, 'summary').map((line) => line.replace(/ \[[\d!, ]+\]/g, ''));
      expect(numbersIn(top).filter((number) => !known.includes(number))).toEqual([]);
    },
  );

  it('is our bug when a code has no words, and says which', () => {
    const broken = {
      ...interpretation,
      nearMisses: [{ code: 'not-a-code', facts: {}, rules: [] }],
    };
    expect(() => composeReasoning(input.report, broken, input.advice, english)).toThrow(
      'reason.not-a-code',
    );
  });
});

describe('the call sheet', () => {
  const call = (tier: (typeof holdTiers)[number], name: string | null, ageMonths = 429) => {
    const held = letterOf({
      pattern: 'iron-deficiency-anaemia',
      tier,
      patient: { name, ageMonths },
    });
    const reasons = [
      {
        code: 'haemoglobin-below-emergency-limit',
        facts: { analyte: 'haemoglobin', value: 62, unit: 'g/L', limit: 70 },
        rules: ['hold-haemoglobin-emergency'],
        tier,
      },
    ];
    return sayReasoning(
      composeCallSheet(
        held.report,
        { ...held.interpretation, hold: { tier, reasons } },
        clinic,
        english,
      ),
    );
  };

  it.each(holdTiers)('at tier %s says who, why, what to say and what to write down', (tier) => {
    const said = call(tier, 'Noor Castellane');
    expect(said).toContain('Noor Castellane');
    expect(said).toContain('62 g/L');
    for (const heading of ['Who to call', 'Why', 'What to say', 'What to ask', 'Write down']) {
      expect(said).toContain(heading);
    }
  });

  it("gives the clinic's own emergency number", () => {
    expect(call('emergency', 'Noor Castellane')).toContain(clinic.emergencyNumber);
  });

  it('sends the caller to the parent of a child', () => {
    expect(call('emergency', 'Noor Castellane', 60)).toContain('parent or carer');
  });

  it('finds somebody without a name by number', () => {
    expect(call('same-day', null)).toContain('SB-2001');
  });
});
