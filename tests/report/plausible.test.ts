// Impossible and doubtful values: which rule, which unit is asked about, and that nothing is ever changed.
import { describe, expect, it } from 'vitest';
import type { WrittenResult } from '../../src/intake/written.js';
import { plausibleLimits } from '../../src/knowledge/plausible.js';
import { canonicalUnit } from '../../src/report/index.js';
import { type Analyte, analytes } from '../../src/terms.js';
import { codesOf, only, problemsOf, reportOf, written } from './written.js';

const of = (analyte: Analyte, value: string, unit: string, text: string | null = null) => ({
  analyte,
  value,
  unit,
  interval: text === null ? null : { low: null, high: null, text },
});
const remedyOf = (over: Partial<WrittenResult>) => problemsOf(reportOf([written(over)]))[0]?.remedy;

describe('impossible values', () => {
  it.each([
    // Slips between neighbouring units; arithmetic, no source.
    [of('haemoglobin', '13.2', 'g/L'), '13.2 g/dL would be 132 g/L. Check the report.'],
    [of('haemoglobin', '132', 'g/dL'), '132 g/L would be an everyday value. Check the report.'],
    [
      of('haemoglobin', '8.1', 'g/L'),
      '8.1 g/dL would be 81 g/L; 8.1 mmol/L would be 130.5 g/L. Check the report.',
    ],
    [
      of('haemoglobin', '5', 'g/L'),
      '5 g/dL would be 50 g/L; 5 mmol/L would be 80.56 g/L. Check the report.',
    ],
    [of('haemoglobin', '4.9', 'g/L'), '4.9 mmol/L would be 78.95 g/L. Check the report.'],
    // A printed interval decides between two readings.
    [
      of('haemoglobin', '8.1', 'g/L', '7.5 - 9.5'),
      '8.1 mmol/L would be 130.5 g/L. Check the report.',
    ],
    [
      of('haemoglobin', '8.1', 'g/L', '120 - 160'),
      '8.1 g/dL would be 81 g/L; 8.1 mmol/L would be 130.5 g/L. Check the report.',
    ],
    [
      of('haemoglobin', '8.1', 'g/L', '1 - 2'),
      '8.1 g/dL would be 81 g/L; 8.1 mmol/L would be 130.5 g/L. Check the report.',
    ],
    [of('transferrin', '250', 'g/L'), '250 mg/dL would be 2.5 g/L. Check the report.'],
    [of('transferrin', '31', 'g/L'), '31 umol/L would be 2.467 g/L. Check the report.'],
    [of('ferritin', '300', 'mg/mL'), '300 ng/mL would be 300 ug/L. Check the report.'],
    [of('tibc', '350', 'mg/dL'), '350 ug/dL would be 62.67 umol/L. Check the report.'],
    [of('tibc', '300', 'ug/L'), '300 ug/dL would be 53.72 umol/L. Check the report.'],
    [of('serum-iron', '90', 'mg/dL'), '90 ug/dL would be 16.12 umol/L. Check the report.'],
    [
      of('transferrin-saturation', '0.35', '%'),
      '0.35 as a fraction would be 35 %. Check the report.',
    ],
    [of('haematocrit', '36', '1'), '36 % would be 0.36 as a fraction. Check the report.'],
    [of('ferritin', '0', 'ug/L'), null],
    [of('mcv', '9', 'fL'), null],
  ] as const)('%o', (over, remedy) => {
    expect(codesOf(reportOf([written(over)]))).toEqual(['value-impossible']);
    expect(remedyOf(over)).toBe(remedy);
  });

  it('stay impossible when somebody confirmed them', () => {
    const over = { ...of('haemoglobin', '13.2', 'g/L'), confirmed: true };
    expect(codesOf(reportOf([written(over)]))).toEqual(['value-impossible']);
  });
});

describe('the limits of every analyte', () => {
  const step = (value: number, by: number) => String(Number((value + by).toFixed(4)));
  const doubtOf = (analyte: Analyte, value: string) =>
    only(of(analyte, value, canonicalUnit(analyte))).doubt?.rule ?? null;

  it.each(plausibleLimits)('$id are in our unit and in order', (row) => {
    expect(row.unit).toBe(canonicalUnit(row.analyte));
    expect(row.rejectBelow).toBeLessThanOrEqual(row.askBelow);
    expect(row.askBelow).toBeLessThan(row.askAbove);
    expect(row.askAbove).toBeLessThan(row.rejectAbove);
  });

  it('cover every analyte', () => {
    expect(plausibleLimits.map(({ analyte }) => analyte).toSorted()).toEqual(analytes.toSorted());
  });

  it.each(plausibleLimits)('$id: asks just outside, is silent on and within', (row) => {
    const { analyte, askBelow, askAbove, id } = row;
    const by = Math.min(0.01, askAbove / 1000);
    expect(doubtOf(analyte, step(askAbove, by))).toBe(id);
    expect(doubtOf(analyte, step(askAbove, 0))).toBeNull();
    expect(doubtOf(analyte, step(askAbove, -by))).toBeNull();
    if (askBelow > 0) {
      expect(doubtOf(analyte, step(askBelow, -by))).toBe(id);
      expect(doubtOf(analyte, step(askBelow, by))).toBeNull();
    }
    expect(doubtOf(analyte, step(askBelow, 0))).toBeNull();
  });

  it.each(plausibleLimits)('$id: refuses just outside, asks on the limit', (row) => {
    const { analyte, rejectBelow, rejectAbove, id } = row;
    const by = Math.min(0.01, rejectAbove / 1000);
    const refused = (value: string) =>
      codesOf(reportOf([written(of(analyte, value, canonicalUnit(analyte)))]));
    expect(refused(step(rejectAbove, by))).toEqual(['value-impossible']);
    expect(doubtOf(analyte, step(rejectAbove, 0))).toBe(id);
    if (rejectBelow === 0) return;
    expect(refused(step(rejectBelow, -by))).toEqual(['value-impossible']);
    expect(doubtOf(analyte, step(rejectBelow, 0))).toBe(id);
  });
});

describe('doubtful units', () => {
  it.each([
    // Exam panels of the MedQA-US set print these units (cases 567, 2527, 2964 and 3604).
    [of('ferritin', '558', 'ng/dL'), 'ferritin-odd-mass-unit', 'ng/mL'],
    [of('ferritin', '180', 'ug/dL'), 'ferritin-odd-mass-unit', 'ng/mL'],
    [of('serum-iron', '30', 'ug/L'), 'iron-litre-for-decilitre', 'ug/dL'],
    [of('serum-iron', '30', 'umol/L', '50 - 170'), 'printed-serum-iron', 'ug/dL'],
    // Constructed from published intervals; no source.
    [of('serum-iron', '200', 'ng/mL'), 'iron-litre-for-decilitre', 'ug/dL'],
    [of('tibc', '600', 'ug/L'), 'binding-litre-for-decilitre', 'ug/dL'],
    [of('haemoglobin', '8.1', 'g/dL', '7.5 - 9.5'), 'printed-haemoglobin', 'mmol/L'],
    [of('haemoglobin', '8.1', 'mmol/L', '12 - 16'), 'printed-haemoglobin', 'g/dL'],
    [of('crp', '0.4', 'mg/L', '< 0.5'), 'printed-crp', 'mg/dL'],
    [of('crp', '4', 'mg/dL', '< 5'), 'printed-crp', 'mg/L'],
    [of('haemoglobin', '20', 'g/L'), 'limits-haemoglobin', 'g/dL'],
  ] as const)('%o is asked about', (over, rule, likelyUnit) => {
    const { doubt, quantity, copied } = only(over);
    expect(doubt).toMatchObject({ kind: 'unit', rule, likelyUnit });
    expect(doubt?.question).toContain(likelyUnit);
    expect(copied).toMatchObject({ value: over.value, unit: over.unit });
    expect(quantity.unit).toBe(canonicalUnit(over.analyte));
  });

  it.each([
    [of('haemoglobin', '8.1', 'g/dL', '12 - 16')],
    [of('haemoglobin', '8.1', 'mmol/L', '7.5 - 9.5')],
    [of('serum-iron', '30', 'umol/L', '10 - 30')],
    [of('serum-iron', '90', 'ug/dL', '50 - 170')],
    [of('serum-iron', '900', 'ug/L')],
    [of('ferritin', '60', 'ng/mL', '15 - 150')],
    [of('ferritin', '300', 'ug/L', '20 - 500')],
    [of('transferrin', '2.3', 'g/L', '2 - 3.5')],
    [of('transferrin-saturation', '35', '%', '16 - 50')],
    [of('transferrin-saturation', '0.35', '1', '0.16 - 0.50')],
    [of('crp', '4', 'mg/L', '< 5')],
    [of('crp', '4', 'mg/L', '0 - 10')],
  ] as const)('%o is taken at its word', (over) => {
    expect(only(over).doubt).toBeNull();
  });

  it.each([
    // Reference intervals as printed: Nordin 2004 (Scand J Clin Lab Invest 64:385), women and men.
    [of('haemoglobin', '121', 'g/L', '117 - 153')],
    [of('haemoglobin', '140', 'g/L', '134 - 170')],
    [of('haematocrit', '0.4', '1', '0.348 - 0.459')],
    [of('haematocrit', '40', '%', '39.5 - 50.0')],
    // Laboratory handbooks and reviews: iron 5.83 to 34.5, 10 to 30, 42 to 135; TIBC 45 to 81, 250 to 450.
    [of('serum-iron', '12', 'umol/L', '5.83 - 34.5')],
    [of('serum-iron', '80', 'ug/dL', '42 - 135')],
    [of('tibc', '60', 'umol/L', '45 - 81')],
    [of('tibc', '300', 'ug/dL', '250 - 450')],
    // Iron indices in pregnant Chinese women, n=360: trimesters 1-2 and 3.
    [of('tibc', '60', 'umol/L', '36.5 - 68.8')],
    [of('tibc', '60', 'umol/L', '49.4 - 122.8')],
    [of('serum-iron', '12', 'umol/L', '5.83 - 21.52')],
    [of('transferrin-saturation', '30', '%', '8.2 - 52.8')],
    [of('ferritin', '30', 'ug/L', '7.2 - 122.2')],
    // Transferrin by age and sex, a United Kingdom teaching hospital.
    [of('transferrin', '2.3', 'g/L', '1.63 - 3.44')],
    [of('transferrin', '230', 'mg/dL', '188 - 391')],
    // Ferritin and CRP as laboratories print them: 220 to 620 upper limits, 3 to 10.
    [of('ferritin', '60', 'ng/mL', '11 - 620')],
    [of('ferritin', '60', 'ug/L', '6 - 67')],
    [of('crp', '1', 'mg/L', '< 3')],
    [of('crp', '0.3', 'mg/dL', '< 1.0')],
  ] as const)('%o agrees with its printed interval', (over) => {
    expect(only(over).doubt).toBeNull();
  });

  it.each([
    // Ends of the rows in src/knowledge/unit-slips.json, below, at and above; proposals.
    ['0.04', 'limits-transferrin-saturation'],
    ['0.05', 'refused'],
    ['0.06', 'refused'],
    ['0.89', 'refused'],
    ['0.9', 'refused'],
    ['0.91', 'limits-transferrin-saturation'],
  ])('of a saturation of %s per cent is %s', (value, expected) => {
    const over = of('transferrin-saturation', value, '%');
    const refused = codesOf(reportOf([written(over)])).length > 0;
    expect(refused ? 'refused' : only(over).doubt?.rule).toBe(expected);
  });

  it.each([
    ['199', 'iron-litre-for-decilitre'],
    ['200', 'iron-litre-for-decilitre'],
    ['201', undefined],
  ])('of an iron of %s ug/L is %s', (value, expected) => {
    expect(only(of('serum-iron', value, 'ug/L')).doubt?.rule).toBe(expected);
  });

  it.each([
    // Ends of the windows in src/knowledge/interval-windows.json, outside, at and within; proposals.
    [of('haemoglobin', '12', 'g/dL', '>= 8.4'), 'printed-haemoglobin'],
    [of('haemoglobin', '12', 'g/dL', '>= 8.5'), undefined],
    [of('haemoglobin', '12', 'g/dL', '>= 8.6'), undefined],
    [of('haemoglobin', '12', 'g/dL', '< 11.4'), 'printed-haemoglobin'],
    [of('haemoglobin', '12', 'g/dL', '< 11.5'), undefined],
    [of('haemoglobin', '12', 'g/dL', '< 11.6'), undefined],
    [of('haemoglobin', '12', 'g/dL', '8.4 - 12'), 'printed-haemoglobin'],
    [of('serum-iron', '20', 'umol/L', '>= 15'), undefined],
    [of('serum-iron', '20', 'umol/L', '>= 16'), undefined],
    [of('serum-iron', '20', 'umol/L', '>= 17'), 'printed-serum-iron'],
    [of('crp', '2', 'mg/L', '< 19'), undefined],
    [of('crp', '2', 'mg/L', '< 20'), undefined],
    [of('crp', '2', 'mg/L', '< 21'), 'printed-crp'],
  ] as const)('%o is judged by the window', (over, rule) => {
    expect(only(over).doubt?.rule).toBe(rule);
  });

  it('stays unasked where the printed interval fits two other units alike', () => {
    expect(only(of('haemoglobin', '120', 'g/L', '8.8 - 11.9')).doubt).toBeNull();
  });

  it('is a question of the value alone where the printed interval bears the unit out', () => {
    const { doubt } = only(of('serum-iron', '1400', 'ug/dL', '42 - 135'));
    expect(doubt).toMatchObject({ kind: 'value', likelyUnit: null });
    expect(only(of('serum-iron', '1400', 'ug/dL')).doubt).toMatchObject({ likelyUnit: 'ug/L' });
    expect(doubt?.question).toBe(
      '1400 ug/dL is above 60 umol/L, which is seldom seen; is it right?',
    );
  });

  it('puts the question in words, with both readings', () => {
    expect(only(of('ferritin', '558', 'ng/dL')).doubt?.question).toBe(
      '558 ng/dL is 5.58 ug/L; did the sheet say ng/mL (558 ug/L)?',
    );
  });

  it('is cleared when somebody confirmed the value', () => {
    expect(only({ ...of('ferritin', '558', 'ng/dL'), confirmed: true }).doubt).toBeNull();
  });

  it('does not ask about the end of an instrument scale', () => {
    expect(only({ ...of('ferritin', '1', 'ug/L'), comparator: '<' }).doubt).toBeNull();
    expect(only({ ...of('ferritin', '9000', 'ug/L'), comparator: '>' }).doubt).toBeNull();
    expect(only({ ...of('ferritin', '9000', 'ug/L'), comparator: '<' }).doubt).not.toBeNull();
  });

  it('leaves iron above the binding capacity to interpretation', () => {
    const results = [
      written(of('serum-iron', '250', 'ug/dL')),
      written(of('tibc', '200', 'ug/dL')),
    ];
    expect(codesOf(reportOf(results))).toEqual([]);
  });
});
