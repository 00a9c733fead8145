// FHIR R4, one observation: its value, status and test in every habit of a sender, and what is asked about.
import type { Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { fileOf, onlyReport, problemsIn, reportsOf, resultsOf, said } from './file.js';
import { alone, bundle, coded, ferritin, patient, read, text } from './fhir-samples.js';

describe('an observation', () => {
  it.each([
    [
      'a comparator',
      { valueQuantity: { value: 5, comparator: '<' as const, unit: 'ug/L' } },
      'ferritin <5 ug/L 30..400 L',
    ],
    ['a string', { valueQuantity: undefined, valueString: '<5' }, 'ferritin <5 - 30..400 L'],
    [
      'a unit in words beside its code',
      { valueQuantity: { value: 9, unit: 'micrograms in a litre', code: 'ug/L' } },
      'ferritin 9 ug/L 30..400 L',
    ],
    [
      'a change beside the mark',
      { interpretation: [{ coding: [{ code: 'D' }] }, { coding: [{ code: 'LL' }] }] },
      'ferritin 9 ug/L 30..400 LL',
    ],
    [
      'a panel of components',
      {
        code: { text: 'Iron studies' },
        valueQuantity: undefined,
        referenceRange: [],
        component: [{ code: { text: 'Ferritin' }, valueQuantity: { value: 9, unit: 'ug/L' } }],
      },
      'ferritin 9 ug/L',
    ],
  ])('reads %s', async (_, changes, expected) => {
    expect(await read(alone(changes as Partial<Observation>))).toEqual([expected]);
  });

  it.each([
    ['entered-in-error', 'does not stand'],
    ['cancelled', 'does not stand'],
  ] as const)('passes over a result with the status %s', async (status, expected) => {
    const wrong = { ...ferritin, id: 'o2', status, valueQuantity: { value: 900, unit: 'ug/L' } };
    const intake = await readInput(fileOf('a.json', text(bundle(patient, ferritin, wrong))));
    expect(reportsOf(intake).map(resultsOf)).toEqual([['ferritin 9 ug/L 30..400 L']]);
    expect(intake.ignored.map(({ cannot }) => cannot).join()).toContain(expected);
  });

  it.each([
    ['preliminary', 'preliminary'],
    ['amended', 'corrected'],
    ['corrected', 'corrected'],
    ['final', 'final'],
  ] as const)('tells the status %s as %s', async (status, expected) => {
    expect((await onlyReport('a.json', alone({ status }))).panel.results[0]?.status).toBe(expected);
  });

  it('lets an amended result replace the first', async () => {
    const amended = {
      ...ferritin,
      id: 'o2',
      status: 'amended' as const,
      valueQuantity: { value: 19, unit: 'ug/L' },
    };
    expect(await read(text(bundle(patient, ferritin, amended)))).toEqual([
      'ferritin 19 ug/L 30..400 L',
    ]);
  });

  it('passes over a value that is absent, with its reason', async () => {
    const absent = {
      ...ferritin,
      id: 'o2',
      code: { text: 'CRP' },
      valueQuantity: undefined,
      dataAbsentReason: { text: 'insufficient sample' },
    } as unknown as Observation;
    const intake = await readInput(fileOf('a.json', text(bundle(patient, ferritin, absent))));
    expect(intake.ignored.map(({ found }) => found)).toEqual(['insufficient sample']);
    expect(said(intake)).toEqual([]);
  });

  it.each([
    [
      'a code that contradicts the text',
      alone({
        code: { ...coded('3034-6', 'Transferrin'), text: 'Transferrin saturation' },
        valueQuantity: { value: 35, unit: '%' },
      }),
      'cannot tell which test this is',
    ],
    [
      'two codes of two tests',
      alone({
        code: {
          coding: [...coded('2276-4', 'Ferritin').coding, ...coded('2498-4', 'Ferritin').coding],
        },
      }),
      'the code says serum-iron',
    ],
    [
      'words for a value',
      alone({
        valueQuantity: undefined,
        valueString: 'haemolysed',
      } as unknown as Partial<Observation>),
      'cannot read this as a number',
    ],
    [
      'two units',
      alone({ valueQuantity: { value: 9, unit: 'mg/L', code: 'ug/L' } }),
      'cannot tell which of two units holds (found "mg/L and ug/L")',
    ],
    [
      'a comparator that is none of R4',
      alone({ valueQuantity: { value: 9, unit: 'ug/L', comparator: 'ad' as '<' } }),
      'cannot read what stands before the value (found "ad")',
    ],
    [
      'an extension that changes what is meant',
      alone({ modifierExtension: [{ url: 'urn:saltmarsh:not', valueBoolean: true }] }),
      'an unknown extension changes',
    ],
    ['a month for a day', alone({ effectiveDateTime: '2026-11' }), 'cannot read the day'],
    [
      'a person who has died',
      text(bundle({ ...patient, deceasedBoolean: true }, ferritin)),
      'has died',
    ],
    ['no iron result', alone({ code: { text: 'Sodium' } }), 'cannot find an iron result'],
    ['no observation', text(bundle(patient)), 'cannot find an observation'],
    [
      'a value of the wrong kind',
      text(bundle(patient, ferritin)).replace('"value":9,', '"value":{},'),
      'valueQuantity.value',
    ],
  ])('tells what is wrong with %s', async (_, json, expected) => {
    expect((await problemsIn('a.json', json)).join('\n')).toContain(expected);
  });

  it('passes over a specimen that is not blood', async () => {
    const urine = { ...ferritin, specimen: { display: 'Urine' } };
    const intake = await readInput(fileOf('a.json', text(bundle(patient, urine))));
    expect(intake.ignored.map(({ cannot }) => cannot).join()).toContain('in urine, not in blood');
  });
});
