// FHIR R4, the file as a whole: whose results are in it, of which day, and how its parts may be put together.
import type { Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { fileOf, onlyReport, reportsOf, resultsOf } from './file.js';
import { alone, bundle, ferritin, patient, read, text } from './fhir-samples.js';

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
