// Which test is it: names in many languages, look-alikes, codes and units that must agree.
import { describe, expect, it } from 'vitest';
import { whichAnalyte } from '../../src/intake/which-analyte.js';

const named = (name: string, unit: string | null = null, code: string | null = null) =>
  whichAnalyte({ name, unit, code, specimen: null });
const asked = (...args: Parameters<typeof named>) => named(...args).is;
const analyte = (...args: Parameters<typeof named>) => {
  const which = named(...args);
  return which.is === 'analyte' ? which.analyte : which.is;
};

describe('a name', () => {
  // Names laboratories print, from memory.
  it.each([
    ['Ferritin', 'ferritin'],
    ['FERRITINE', 'ferritin'],
    ['S-Ferritin', 'ferritin'],
    ['Ferritin, serum', 'ferritin'],
    ['Ferritina sérica', 'ferritin'],
    ['Ферритин', 'ferritin'],
    ['الفيريتين', 'ferritin'],
    ['血清铁蛋白', 'ferritin'],
    ['फेरिटिन', 'ferritin'],
    ['Haemoglobin (Hb)', 'haemoglobin'],
    ['hemoglobina', 'haemoglobin'],
    ['B-Hemoglobin', 'haemoglobin'],
    ['Hb', 'haemoglobin'],
    ['% Saturation', 'transferrin-saturation'],
    ['Transferrin saturation', 'transferrin-saturation'],
    ['Coefficient de saturation de la transferrine', 'transferrin-saturation'],
    ['Transferrinsättigung', 'transferrin-saturation'],
    ['Iron', 'serum-iron'],
    ['Eisen', 'serum-iron'],
    ['fS-Jern', 'serum-iron'],
    ['TIBC', 'tibc'],
    ['UIBC', 'uibc'],
    ['VGM', 'mcv'],
    ['HCM', 'mch'],
    ['Erythrocytes', 'rbc'],
    ['PCV', 'haematocrit'],
    ['hs-CRP', 'crp'],
    ['Soluble transferrin receptor', 'stfr'],
    ['RET-He', 'reticulocyte-haemoglobin'],
  ])('%s is %s', (name, expected) => {
    expect(analyte(name)).toBe(expected);
  });

  // Long names as LOINC prints them (loinc.org), seen in the opened code maps.
  it.each([
    ['Ferritin [Mass/volume] in Serum or Plasma', '2276-4', 'ferritin'],
    ['Hemoglobin [Mass/volume] in Blood', '718-7', 'haemoglobin'],
    ['Iron [Mass/volume] in Serum or Plasma', '2498-4', 'serum-iron'],
    ['Iron saturation [Mass Fraction] in Serum or Plasma', '2502-3', 'transferrin-saturation'],
    ['Iron binding capacity [Mass/volume] in Serum or Plasma', '2500-7', 'tibc'],
    ['Erythrocytes [#/volume] in Blood by Automated count', '789-8', 'rbc'],
    ['C reactive protein [Mass/volume] in Serum or Plasma', '1988-5', 'crp'],
  ])('%s with its code %s is %s', (name, code, expected) => {
    expect(analyte(name, null, code)).toBe(expected);
  });

  it.each([
    'HbA1c',
    'Hemoglobin A1c/Hemoglobin.total in Blood',
    'Haemoglobin A2',
    'Hemoglobin A',
    'HbF',
    'Haemoglobin F',
    'Carboxyhaemoglobin',
    'COHb',
    'Methemoglobin',
    'Free haemoglobin',
    'Plasma haemoglobin',
    'Haemoglobin, urine',
    'Urine iron',
    'Iron, urine',
    'U-Fe',
    'Iron stain, bone marrow',
    'Liver iron',
    'Ceruloplasmin',
    'sCD163',
    'Soluble CD163',
    'Carbohydrate deficient transferrin',
    'sTfR/log ferritin index',
    'Lactoferrin',
    'Oxygen saturation',
    'MCHC',
    'Ferritin, CSF',
    'Faecal haemoglobin',
  ])('%s is none of ours', (name) => {
    expect(asked(name)).toBe('other');
  });

  it('takes the transferrin receptor for itself, not for transferrin', () => {
    expect(analyte('Transferrin receptor')).toBe('stfr');
  });

  it('offers the nearest name for a misspelt one', () => {
    expect(named('Feritinn')).toEqual({ is: 'unknown', near: 'ferritin' });
    expect(named('Quibbleglobin')).toEqual({ is: 'unknown', near: null });
    expect(named('Ferritin (SF)')).toEqual({ is: 'unknown', near: 'ferritin' });
  });
});

describe('a contradiction is a question', () => {
  it.each([
    ['the name transferrin with the unit %', 'Transferrin', '%', null],
    ['the code of transferrin beside the name saturation', 'Transferrin saturation', '%', '3034-6'],
    ['iron in %', 'Iron', '%', null],
    ['saturation in g/L', 'Transferrin saturation', 'g/L', null],
    ['the code of iron beside ferritin', 'Ferritin', 'ug/L', '2498-4'],
    ['the code of MCHC beside haemoglobin', 'Haemoglobin', 'g/L', '786-4'],
    ['a code for mass with a unit of amount', 'Iron', 'umol/L', '2498-4'],
    ['a look-alike under a code of ours', 'HbA1c', 'g/L', '718-7'],
    ['a code alone', 'Test 17', null, '2276-4'],
    ['PCR counted in percent', 'PCR', '%', null],
  ])('%s', (_, name, unit, code) => {
    expect(asked(name, unit, code)).toBe('question');
  });

  it('takes a code with a fitting unit where the name is not known', () => {
    expect(analyte('FER-X', 'ug/L', '2276-4')).toBe('ferritin');
  });

  it('leaves a unit nobody knows to the next room', () => {
    expect(analyte('Ferritin', 'ug/mL?')).toBe('ferritin');
  });

  it.each([
    ['urine', 'Iron'],
    ['Cerebrospinal fluid', 'Ferritin'],
    ['plasma', 'Haemoglobin'],
  ])('a specimen of %s makes %s another test', (specimen, name) => {
    expect(whichAnalyte({ name, unit: null, code: null, specimen }).is).toBe('other');
  });
});
