// Values that must agree with each other by the definitions of the indices.
import { describe, expect, it } from 'vitest';
import { crossCheck } from '../../src/report/index.js';
import type { Analyte } from '../../src/terms.js';
import { measured, reportOf, written } from './written.js';

const units: Partial<Record<Analyte, string>> = {
  haemoglobin: 'g/L',
  haematocrit: '1',
  rbc: '10*12/L',
  mcv: 'fL',
  mch: 'pg',
  tibc: 'umol/L',
  transferrin: 'g/L',
};

function checks(values: Partial<Record<Analyte, string>>) {
  const results = Object.entries(values).map(([analyte, value]) =>
    written({
      analyte: analyte as Analyte,
      value,
      unit: units[analyte as Analyte] ?? null,
      comparator: value.startsWith('<') ? '<' : null,
    }),
  );
  return crossCheck(measured(reportOf(results)).panel).map(({ rule }) => rule);
}

describe('values that belong together', () => {
  it.each([
    // Definitions: MCV = Hct / RBC, MCH = Hb / RBC, MCHC = Hb / Hct; the tolerance is a proposal.
    [{ mcv: '90', rbc: '5', haematocrit: '0.45' }, []],
    [{ mcv: '90', rbc: '5', haematocrit: '0.50' }, []],
    [{ mcv: '90', rbc: '5', haematocrit: '0.51' }, ['haematocrit-from-mcv']],
    [{ mcv: '90', rbc: '5', haematocrit: '0.41' }, []],
    [{ mcv: '90', rbc: '5', haematocrit: '0.40' }, ['haematocrit-from-mcv']],
    [{ haemoglobin: '150', rbc: '5', mch: '30' }, []],
    [{ haemoglobin: '150', rbc: '5', mch: '34' }, ['mch-from-haemoglobin']],
    [{ haemoglobin: '150', rbc: '5', mch: '27' }, ['mch-from-haemoglobin']],
    // MedQA-US exam item, dev split 30: printed MCH 21, haemoglobin over red cells 18.5.
    [{ haemoglobin: '102', rbc: '5.5', mch: '21', mcv: '65' }, ['mch-from-haemoglobin']],
    [{ haemoglobin: '130', haematocrit: '0.50' }, []],
    [{ haemoglobin: '129', haematocrit: '0.50' }, ['mchc']],
    [{ haemoglobin: '190', haematocrit: '0.50' }, []],
    [{ haemoglobin: '191', haematocrit: '0.50' }, ['mchc']],
    // Gambino 1997: TIBC umol/L = 25 times transferrin g/L; other laboratories print 22.4 to 25.6.
    [{ tibc: '62.5', transferrin: '2.5' }, []],
    [{ tibc: '50', transferrin: '2.5' }, []],
    [{ tibc: '49.9', transferrin: '2.5' }, ['tibc-over-transferrin']],
    [{ tibc: '75', transferrin: '2.5' }, []],
    [{ tibc: '75.1', transferrin: '2.5' }, ['tibc-over-transferrin']],
  ] as const)('%o: %j', (values, expected) => {
    expect(checks(values)).toEqual(expected);
  });

  it('are not checked when one is missing, off scale or doubtful', () => {
    expect(checks({ mcv: '90', rbc: '5' })).toEqual([]);
    expect(checks({ tibc: '75.1', transferrin: '<2.5' })).toEqual([]);
    expect(checks({ haemoglobin: '230', haematocrit: '0.50' })).toEqual([]);
  });

  it('come with the ratio found and the span it left', () => {
    const results = [
      written({ analyte: 'tibc', value: '80', unit: 'umol/L' }),
      written({ analyte: 'transferrin', value: '2.5', unit: 'g/L' }),
    ];
    expect(crossCheck(measured(reportOf(results)).panel)).toEqual([
      {
        rule: 'tibc-over-transferrin',
        analytes: ['tibc', 'transferrin'],
        found: 32,
        low: 20,
        high: 30,
      },
    ]);
  });
});
