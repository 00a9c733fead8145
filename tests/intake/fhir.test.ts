// FHIR R4: shapes of the official examples as types (@types/fhir 0.0.44), and every habit of a sender.
import type { Bundle, DiagnosticReport, Observation, Patient } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { fileOf, onlyReport, problemsIn, reportsOf, resultsOf, said } from './file.js';

const patient: Patient = {
  resourceType: 'Patient',
  id: 'p1',
  identifier: [{ system: 'urn:saltmarsh', value: '7' }],
  name: [{ use: 'official', family: 'Quill', given: ['Tamsin'] }],
  gender: 'female',
  birthDate: '1984-03-09',
};
const ferritin: Observation = {
  resourceType: 'Observation',
  id: 'o1',
  status: 'final',
  code: {
    coding: [
      {
        system: 'http://loinc.org',
        code: '2276-4',
        display: 'Ferritin [Mass/volume] in Serum or Plasma',
      },
    ],
    text: 'Ferritin',
  },
  subject: { reference: 'Patient/p1' },
  effectiveDateTime: '2026-11-20T08:40:00+01:00',
  valueQuantity: { value: 9, unit: 'ug/L', system: 'http://unitsofmeasure.org', code: 'ug/L' },
  interpretation: [{ coding: [{ code: 'L' }] }],
  referenceRange: [{ low: { value: 30 }, high: { value: 400 } }],
};
const bundle = (...resources: (Observation | Patient | DiagnosticReport)[]): Bundle => ({
  resourceType: 'Bundle',
  type: 'collection',
  entry: resources.map((resource) => ({ resource })),
});
const text = (value: unknown) => JSON.stringify(value);
const alone = (changes: Partial<Observation>) => text(bundle(patient, { ...ferritin, ...changes }));
const read = async (json: string) => resultsOf(await onlyReport('a.json', json));
const coded = (code: string, display: string) => ({
  coding: [{ system: 'http://loinc.org', code, display }],
});

describe('a bundle', () => {
  it('says who, when and what', async () => {
    const report = await onlyReport('a.json', text(bundle(patient, ferritin)));
    expect(report.patient).toMatchObject({
      id: '7',
      name: 'Tamsin Quill',
      birthDate: '1984-03-09',
      sex: 'female',
    });
    expect(report.panel.collected).toBe('2026-11-20');
    expect(report.context.sampleTime).toBe('08:40');
    expect(resultsOf(report)).toEqual(['ferritin 9 ug/L 30..400 L']);
  });

  it('keeps the digits of a decimal, as FHIR demands', async () => {
    const json = alone({}).replace('"value":9', '"value":9.50');
    expect(await read(json)).toEqual(['ferritin 9.50 ug/L 30..400 L']);
  });

  it('makes several days earlier panels and several patients several reports', async () => {
    const older = { ...ferritin, id: 'o2', effectiveDateTime: '2026-05-02' };
    const other = { ...ferritin, id: 'o3', subject: { reference: 'Patient/p2' } };
    const intake = await readInput(
      fileOf('a.json', text(bundle(patient, { ...patient, id: 'p2' }, older, ferritin, other))),
    );
    expect(
      reportsOf(intake).map(({ panel, previous }) => [panel.collected, previous.length]),
    ).toEqual([
      ['2026-11-20', 1],
      ['2026-11-20', 0],
    ]);
  });

  it.each([
    ['lines', `${text(patient)}\n${text(ferritin)}\n`],
    ['a list', text([patient, ferritin])],
    [
      'a report with contained parts',
      text({
        resourceType: 'DiagnosticReport',
        status: 'final',
        code: { text: 'Iron studies' },
        subject: { reference: '#p1' },
        result: [{ reference: '#o1' }],
        contained: [patient, { ...ferritin, subject: { reference: '#p1' } }],
      }),
    ],
    [
      'full urls',
      text({
        resourceType: 'Bundle',
        type: 'collection',
        entry: [
          { fullUrl: 'urn:uuid:1', resource: { ...patient, id: undefined } },
          {
            fullUrl: 'urn:uuid:2',
            resource: { ...ferritin, subject: { reference: 'urn:uuid:1' } },
          },
        ],
      }),
    ],
    [
      'an absolute reference',
      alone({ subject: { reference: 'https://example.org/fhir/Patient/p1' } }),
    ],
    [
      'the day and person of its report',
      text(
        bundle(
          patient,
          {
            ...ferritin,
            effectiveDateTime: undefined,
            subject: undefined,
          } as unknown as Observation,
          {
            resourceType: 'DiagnosticReport',
            status: 'final',
            code: {},
            subject: { reference: 'Patient/p1' },
            effectiveDateTime: '2026-11-20',
            result: [{ reference: 'Observation/o1' }],
          },
        ),
      ),
    ],
  ])('may come as %s', async (_, json) => {
    const report = await onlyReport('a.json', json);
    expect(report.patient.sex).toBe('female');
    expect(report.panel.collected).toBe('2026-11-20');
    expect(resultsOf(report)).toEqual(['ferritin 9 ug/L 30..400 L']);
  });

  it('does not mix two bundles that use one id for two people', async () => {
    const lines = [bundle(patient, ferritin), bundle({ ...patient, gender: 'male' }, ferritin)]
      .map(text)
      .join('\n');
    const reports = reportsOf(await readInput(fileOf('a.ndjson', lines)));
    expect(reports.map((report) => report.patient.sex)).toEqual(['female', 'male']);
  });
});

describe('an observation', () => {
  it.each([
    [
      'a comparator',
      { valueQuantity: { value: 5, comparator: '<' as const, unit: 'ug/L' } },
      'ferritin <5 ug/L 30..400 L',
    ],
    ['a string', { valueQuantity: undefined, valueString: '<5' }, 'ferritin <5 - 30..400 L'],
    [
      'an interval in words',
      { referenceRange: [{ text: '30 - 400' }] },
      'ferritin 9 ug/L 30..400 L',
    ],
    [
      'intervals by sex',
      {
        referenceRange: [
          { low: { value: 30 }, appliesTo: [{ text: 'male' }] },
          { low: { value: 15 }, appliesTo: [{ text: 'female' }] },
        ],
      },
      'ferritin 9 ug/L 15.. L',
    ],
    [
      'intervals by age, the patient being 42',
      {
        referenceRange: [
          { low: { value: 7 }, age: { high: { value: 17, unit: 'a' } } },
          { low: { value: 15 }, age: { low: { value: 18, unit: 'years' } } },
        ],
      },
      'ferritin 9 ug/L 15.. L',
    ],
    [
      'an interval for another age',
      { referenceRange: [{ low: { value: 200 }, age: { high: { value: 28, unit: 'd' } } }] },
      'ferritin 9 ug/L  L',
    ],
    [
      'intervals by sex and age',
      {
        referenceRange: [
          { low: { value: 7 }, age: { high: { value: 17 * 12, code: 'mo' } } },
          {
            low: { value: 30 },
            age: { low: { value: 18, code: 'a' } },
            appliesTo: [{ coding: [{ code: '248153007', display: 'Male' }] }],
          },
          {
            low: { value: 15 },
            age: { low: { value: 18, code: 'a' } },
            appliesTo: [{ coding: [{ code: '248152002', display: 'Female' }] }],
          },
        ],
      },
      'ferritin 9 ug/L 15.. L',
    ],
    [
      'an interval for the pregnant, which nobody says she is',
      { referenceRange: [{ low: { value: 10 }, appliesTo: [{ text: 'Pregnant' }] }] },
      'ferritin 9 ug/L  L',
    ],
    [
      'an interval in another unit',
      {
        referenceRange: [
          { low: { value: 0.03, unit: 'mg/L' }, high: { value: 0.4, unit: 'mg/L' } },
        ],
      },
      'ferritin 9 ug/L  L',
    ],
    [
      'an interval in the same unit, spelt otherwise',
      {
        referenceRange: [{ low: { value: 30, unit: 'µg/L' }, high: { value: 400, code: 'ug/L' } }],
      },
      'ferritin 9 ug/L 30..400 L',
    ],
    [
      'a unit in words beside its code',
      { valueQuantity: { value: 9, unit: 'micrograms in a litre', code: 'ug/L' } },
      'ferritin 9 ug/L 30..400 L',
    ],
    [
      'an interval for an age in a unit nobody knows',
      { referenceRange: [{ low: { value: 10 }, age: { low: { value: 18, unit: 'x' } } }] },
      'ferritin 9 ug/L  L',
    ],
    [
      'intervals that do not say for whom',
      { referenceRange: [{ low: { value: 30 } }, { low: { value: 15 } }] },
      'ferritin 9 ug/L  L',
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

  it.each([
    ['for another age', { high: { value: 28, unit: 'd' } }, 'no interval is for this person'],
    [
      'for an age nobody can read',
      { high: { value: 28, unit: 'x' } },
      'cannot tell whether the interval is for this person',
    ],
  ])('says why an interval %s was not taken', async (_, age, expected) => {
    const json = alone({ referenceRange: [{ low: { value: 200 }, age }] });
    const { ignored } = await readInput(fileOf('a.json', json));
    expect(ignored.map(({ cannot }) => cannot)).toEqual([`${expected}; none was taken`]);
  });

  it('has no age where no birth date is known, and takes no interval that asks for one', async () => {
    const young = { low: { value: 7 }, age: { high: { value: 17, unit: 'a' } } };
    const json = text(
      bundle({ ...patient, birthDate: undefined }, { ...ferritin, referenceRange: [young] }),
    );
    expect(await read(json)).toEqual(['ferritin 9 ug/L  L']);
  });

  it('passes over a specimen that is not blood', async () => {
    const urine = { ...ferritin, specimen: { display: 'Urine' } };
    const intake = await readInput(fileOf('a.json', text(bundle(patient, urine))));
    expect(intake.ignored.map(({ cannot }) => cannot).join()).toContain('in urine, not in blood');
  });
});
