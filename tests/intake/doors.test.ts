// The same facts by several doors give the same written report, but for places and the test's printed name.
import { describe, expect, it } from 'vitest';
import type { WrittenReport } from '../../src/intake/written.js';
import { onlyReport } from './file.js';

const json = JSON.stringify({
  patient: { id: '7', name: 'Tamsin Quill', birthDate: '1984-03-09', sex: 'female' },
  collected: '2026-11-20',
  results: [
    {
      analyte: 'ferritin',
      name: 'Ferritin',
      value: 9,
      unit: 'ug/L',
      interval: { low: '30', high: '400' },
      labFlag: 'L',
      status: 'final',
    },
    {
      analyte: 'crp',
      name: 'CRP',
      value: '<5',
      unit: 'mg/L',
      interval: { high: '5' },
      status: 'final',
    },
  ],
  previous: [
    {
      collected: '2026-05-02',
      results: [
        { analyte: 'ferritin', name: 'Ferritin', value: '14', unit: 'ug/L', status: 'final' },
      ],
    },
  ],
});
const csv = [
  'patient id,name,birth date,sex,collected,test,value,unit,low,high,flag,status',
  '7,Tamsin Quill,1984-03-09,F,2026-11-20,Ferritin,9,ug/L,30,400,L,final',
  '7,Tamsin Quill,1984-03-09,F,2026-11-20,CRP,<5,mg/L,,5,,final',
  '7,Tamsin Quill,1984-03-09,F,2026-05-02,Ferritin,14,ug/L,,,,final',
].join('\n');
const hl7 = [
  'MSH|^~\\&|LAB|S|C|S|20261120||ORU^R01|1|P|2.5.1',
  'PID|1||7||Quill^Tamsin||19840309|F',
  'OBR|1||1|FES|||20261120',
  'OBX|1|NM|^Ferritin||9|ug/L|30 - 400|L|||F',
  'OBX|2|SN|^CRP||<^5|mg/L|<5||||F',
  'OBR|2||2|FES|||20260502',
  'OBX|1|NM|^Ferritin||14|ug/L|||||F',
].join('\r');
const observation = (name: string, value: object, unit: string, day: string, more: object) => ({
  resource: {
    resourceType: 'Observation',
    status: 'final',
    code: { text: name },
    subject: { reference: 'Patient/p' },
    effectiveDateTime: day,
    valueQuantity: { ...value, unit },
    ...more,
  },
});
const fhir = JSON.stringify({
  resourceType: 'Bundle',
  entry: [
    {
      resource: {
        resourceType: 'Patient',
        id: 'p',
        identifier: [{ value: '7' }],
        name: [{ family: 'Quill', given: ['Tamsin'] }],
        birthDate: '1984-03-09',
        gender: 'female',
      },
    },
    observation('Ferritin', { value: 9 }, 'ug/L', '2026-11-20', {
      referenceRange: [{ low: { value: 30 }, high: { value: 400 } }],
      interpretation: [{ coding: [{ code: 'L' }] }],
    }),
    observation('CRP', { value: 5, comparator: '<' }, 'mg/L', '2026-11-20', {
      referenceRange: [{ high: { value: 5 } }],
    }),
    observation('Ferritin', { value: 14 }, 'ug/L', '2026-05-02', {}),
  ],
});

/** A report without where it stood; an interval without how it was printed. */
function facts(report: WrittenReport): unknown {
  return JSON.parse(
    JSON.stringify(report, (key, value: unknown) =>
      key === 'place' || key === 'text' ? null : value,
    ),
  );
}

describe('the same facts', () => {
  it.each([
    ['CSV', 'a.csv', csv],
    ['HL7 v2', 'a.hl7', hl7],
    ['FHIR', 'b.json', fhir],
  ])('by %s are the same report as by JSON', async (_, name, text) => {
    const expected = facts(await onlyReport('a.json', json));
    expect(facts(await onlyReport(name, text))).toEqual(expected);
  });
});
