// Resources of FHIR R4 as laboratories send them, by the official shapes as types (@types/fhir 0.0.44).
import type { Bundle, DiagnosticReport, Observation, Patient } from 'fhir/r4.js';
import { onlyReport, resultsOf } from './file.js';

export const patient: Patient = {
  resourceType: 'Patient',
  id: 'p1',
  identifier: [{ system: 'urn:saltmarsh', value: '7' }],
  name: [{ use: 'official', family: 'Quill', given: ['Tamsin'] }],
  gender: 'female',
  birthDate: '1984-03-09',
};
export const ferritin: Observation = {
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
export const bundle = (...resources: (Observation | Patient | DiagnosticReport)[]): Bundle => ({
  resourceType: 'Bundle',
  type: 'collection',
  entry: resources.map((resource) => ({ resource })),
});
export const text = (value: unknown) => JSON.stringify(value);
/** A bundle of the patient and one observation, changed. */
export const alone = (changes: Partial<Observation>) =>
  text(bundle(patient, { ...ferritin, ...changes }));
/** Results of a text, in short words. */
export const read = async (json: string) => resultsOf(await onlyReport('a.json', json));
export const coded = (code: string, display: string) => ({
  coding: [{ system: 'http://loinc.org', code, display }],
});
