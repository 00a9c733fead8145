// Twenty-five published panels, entered as printed: which are taken, asked about or refused, and why.
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { WrittenReport } from '../../src/intake/written.js';
import { checkReport, crossCheck } from '../../src/report/index.js';
import { analytes } from '../../src/terms.js';
import panels from '../worked-panels.json' with { type: 'json' };
import { reportOf, somebody, today, written } from './written.js';

const printed = z.array(
  z.object({
    id: z.string(),
    source: z.string().min(1),
    patient: z.object({
      sex: z.enum(['F', 'M']),
      ageYears: z.number().nullable(),
      pregnant: z.boolean().optional(),
      gestationWeeks: z.number().optional(),
    }),
    results: z.array(
      z.object({
        analyte: z.enum(analytes),
        value: z.number(),
        unit: z.string(),
        comparator: z.string().optional(),
        refLow: z.number().optional(),
        refHigh: z.number().optional(),
      }),
    ),
    basis: z.enum(['direct', 'key-is-action', 'inferred']),
  }),
);
type Printed = z.infer<typeof printed>[number];

function asWritten({ patient, results }: Printed): WrittenReport {
  const { sex, ageYears, pregnant, gestationWeeks } = patient;
  return reportOf(
    results.map(({ analyte, value, unit, comparator, refLow, refHigh }) =>
      written({
        analyte,
        value: String(value),
        unit,
        comparator: comparator ?? null,
        interval:
          refLow === undefined && refHigh === undefined
            ? null
            : { low: String(refLow), high: String(refHigh), text: null },
      }),
    ),
    {
      patient: {
        ...somebody,
        sex,
        ageYears,
        pregnancy: pregnant ? { weeks: gestationWeeks ?? null, trimester: null } : null,
      },
    },
  );
}

function verdict(panel: Printed): string {
  const checked = checkReport(asWritten(panel), today);
  if (!checked.ok) return checked.problems.map(({ code }) => `refused: ${code}`).join('; ');
  const doubts = checked.value.panel.results.flatMap(({ analyte, doubt }) =>
    doubt === null ? [] : [`${analyte}: ${doubt.rule} (${doubt.likelyUnit ?? 'no unit'})`],
  );
  const crossed = crossCheck(checked.value.panel).map(({ rule }) => rule);
  return [...doubts, ...crossed].join('; ') || 'taken';
}

const cases = printed.parse(panels);

/** Every panel that is not simply taken, with what the source prints. */
const expected: Readonly<Record<string, string>> = {
  // Haemoglobin 10.2 over red cells 5.5 is 18.5 pg; the source prints MCH 21.
  E07: 'mch-from-haemoglobin',
  // Ferritin printed 558 ng/dL, that is 5.58 ug/L, beside a saturation of 83 %.
  E09: 'ferritin: ferritin-odd-mass-unit (ng/mL)',
  // Iron printed 30 ug/L beside TIBC 500 ug/dL.
  E11: 'serum-iron: iron-litre-for-decilitre (ug/dL)',
  // Sampled after an iron injection: true, but so far out that somebody has to say so.
  E13: 'transferrin-saturation: limits-transferrin-saturation (no unit); serum-iron: limits-serum-iron (no unit); tibc: limits-tibc (no unit)',
  // Still's disease: true, and above 5000.
  E16: 'ferritin: limits-ferritin (no unit)',
  // Saturation 2.9 % after repeated phlebotomy: true, and below 3.
  E17: 'transferrin-saturation: limits-transferrin-saturation (no unit)',
  // Ferritin printed 180 ug/dL; the source reads it as usual.
  E19: 'ferritin: ferritin-odd-mass-unit (ng/mL)',
  // Iron printed 30 umol/L beside its own interval 50 to 170, one of ug/dL.
  E22: 'serum-iron: printed-serum-iron (ug/dL)',
  // Still's disease again.
  E24: 'ferritin: limits-ferritin (no unit)',
};

describe('published panels', () => {
  it('are twenty-five, ten of them with a pattern their source names', () => {
    expect(cases).toHaveLength(25);
    expect(cases.filter(({ basis }) => basis === 'direct')).toHaveLength(10);
  });

  it.each(cases)('$id is judged as its source prints it', (panel) => {
    expect(verdict(panel)).toBe(expected[panel.id] ?? 'taken');
  });
});
