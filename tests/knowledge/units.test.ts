// Units and their factors, against the UCUM library of the US National Library of Medicine (@lhncbc/ucum-lhc 7.1.10).
import ucum from '@lhncbc/ucum-lhc';
import { describe, expect, it } from 'vitest';
import { readUnit, unitSpellings, units, unitsOf } from '../../src/knowledge/units.js';
import { canonicalUnit, convert, express } from '../../src/report/index.js';
import { type Analyte, analytes } from '../../src/terms.js';

const outside = ucum.UcumLhcUtils.getInstance();

/**
 * Molar masses handed to the library, g/mol, with how near the printed factor must come to them.
 * Iron: IUPAC CIAAW 55.845. Haemoglobin per iron atom: ICSH/IFCC 16,114.5 (from memory); our row carries the
 * printed 0.62063, which is 16,112.7. Ferritin: 445,000, the mass behind the printed 2.247. Transferrin 79,570,
 * CRP 105,000 (from memory). sTfR: 2.5 mg/L printed beside 29.5 nmol/L gives 84,746.
 */
const molarMass: Partial<Record<Analyte, { readonly mass: number; readonly within: number }>> = {
  haemoglobin: { mass: 16114.5, within: 2e-4 },
  mch: { mass: 16114.5, within: 2e-4 },
  'reticulocyte-haemoglobin': { mass: 16114.5, within: 2e-4 },
  'serum-iron': { mass: 55.845, within: 1e-12 },
  tibc: { mass: 55.845, within: 1e-12 },
  uibc: { mass: 55.845, within: 1e-12 },
  ferritin: { mass: 445000, within: 1e-4 },
  transferrin: { mass: 79570, within: 1e-12 },
  crp: { mass: 105000, within: 1e-12 },
  stfr: { mass: 84745.7627118644, within: 1e-12 },
};

const grid = [0.05, 0.9, 1, 4.5, 12.1, 35, 99.96, 132, 450, 5000];

describe('units', () => {
  it.each(units.map((row) => [row.analyte, row.code] as const))(
    '%s in %s converts as the UCUM library does, there and back',
    (analyte, code) => {
      const { mass, within } = molarMass[analyte] ?? { mass: undefined, within: 1e-12 };
      const options = mass === undefined ? {} : { molecularWeight: mass };
      for (const value of grid) {
        const { toVal, msg } = outside.convertUnitTo(code, value, canonicalUnit(analyte), options);
        expect(msg).toEqual([]);
        const ours = convert(analyte, value, code);
        expect(Math.abs(ours / (toVal ?? Number.NaN) - 1)).toBeLessThan(within);
        expect(Math.abs(express(analyte, ours, code) / value - 1)).toBeLessThan(1e-14);
      }
    },
  );

  it('are all valid UCUM codes', () => {
    const codes = new Set([...units, ...unitSpellings].map(({ code }) => code));
    for (const code of codes)
      expect([code, outside.validateUnitString(code).status]).toEqual([code, 'valid']);
  });

  it('begin with our own unit for every analyte', () => {
    for (const analyte of analytes)
      expect(unitsOf(analyte)[0]).toMatchObject({ times: '1', over: '1' });
  });

  it.each([
    // Oracle values worked out with the UCUM library beforehand.
    ['serum-iron', 100, 'ug/dL', 17.90670606142],
    ['tibc', 335.07, 'ug/dL', 60],
    ['ferritin', 100, 'pmol/L', 44.5],
    // Printed beside each other in the iron studies reference table of PMC3934467, Table 1.
    ['haemoglobin', 1, 'mmol/L', 16.1127],
  ] as const)('turns %s %d %s into %d', (analyte, value, unit, expected) => {
    expect(convert(analyte, value, unit)).toBeCloseTo(expected, 2);
  });

  it.each([
    ['haemoglobin', 12.1, 'g/dL', 121],
    ['haemoglobin', 7.3, 'g/dL', 73],
    ['transferrin', 229, 'mg/dL', 2.29],
    ['crp', 0.29, 'mg/dL', 2.9],
    ['haematocrit', 41.3, '%', 0.413],
    ['transferrin-saturation', 0.07, '1', 7],
    ['ferritin', 4.1, 'ng/mL', 4.1],
  ] as const)('loses no digit of %s %d %s', (analyte, value, unit, expected) => {
    expect(convert(analyte, value, unit)).toBe(expected);
  });

  it('throws for a unit that the analyte does not have', () => {
    expect(() => convert('mcv', 80, 'g/L')).toThrow("no unit 'g/L' for mcv");
  });
});

describe('spellings of units', () => {
  it.each([
    // Common practice of laboratories, no source; the two micro signs are Unicode U+00B5 and U+03BC.
    ['\u00B5g/L', 'ug/L'],
    ['\u03BCg/L', 'ug/L'],
    ['µg/l', 'ug/L'],
    ['mcg/L', 'ug/L'],
    ['UG/L', 'ug/L'],
    [' ug / L ', 'ug/L'],
    ['ng/ml', 'ng/mL'],
    ['g/dl', 'g/dL'],
    ['G/DL', 'g/dL'],
    ['gm%', 'g/dL'],
    ['µmol/l', 'umol/L'],
    ['μmol⁄L', 'umol/L'],
    ['µg/100 ml', 'ug/dL'],
    ['10^12/L', '10*12/L'],
    ['10¹²/L', '10*12/L'],
    ['×10¹²/l', '10*12/L'],
    ['x10*12/L', '10*12/L'],
    ['x10^6/µL', '10*6/uL'],
    ['T/L', '10*12/L'],
    ['10e6/mm³', '10*6/mm3'],
    ['％', '%'],
    ['L/L', '1'],
    ['г/л', 'g/L'],
    ['мкмоль/л', 'umol/L'],
    ['fl', 'fL'],
  ])('reads %s as %s', (spelling, code) => {
    expect(readUnit(spelling)).toBe(code);
  });

  it.each([
    // Giga per litre, giga grams, mega, pico or nothing at all: case carries meaning.
    'G/L',
    'Mg/L',
    'Ug/L',
    'G/l',
    'mG/L',
    'x10*9/L',
    '10^9/L',
    'IU/L',
    '',
    'constructor',
    '__proto__',
  ])('does not read "%s"', (spelling) => {
    expect(readUnit(spelling)).toBeNull();
  });
});
