// Weeks of pregnancy as a laboratory's system sends them: taken for the day of the sample, or a question.
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { weeksOfPregnancy } from '../../src/intake/pregnancy-as-written.js';
import { fileOf, onlyReport, problemsIn } from './file.js';

const hl7 = (value: string, unit: string, day = '20261120') =>
  [
    'MSH|^~\\&|LAB|S|C|S|20261120||ORU^R01|1|P|2.5.1',
    'PID|1||7||Quill^Tamsin||19940309|F',
    'OBR|1||1|FES|||20261120',
    'OBX|1|NM|^Ferritin||9|ug/L|30 - 400|L|||F',
    `OBR|2||2|OBS|||${day}`,
    `OBX|1|NM|^Gestational age||${value}|${unit}|||||F`,
  ].join('\r');

const observation = (name: string, value: number, unit: string) => ({
  resourceType: 'Observation',
  status: 'final',
  code: { text: name },
  subject: { reference: 'Patient/7' },
  effectiveDateTime: '2026-11-20',
  valueQuantity: { value, unit },
});
const fhir = (value: number, unit: string) =>
  JSON.stringify({
    resourceType: 'Bundle',
    entry: [observation('Gestational age', value, unit), observation('Ferritin', 9, 'ug/L')].map(
      (resource) => ({ resource }),
    ),
  });

describe('weeks of pregnancy', () => {
  it.each([
    ['20', 'weeks', 20],
    ['20', 'wk', 20],
    ['20.0', 'wk', 20],
    ['20w3d', null, 20],
    ['20 weeks 3 days', null, 20],
    ['20', null, null],
    ['140', 'd', null],
    ['20.5', 'wk', null],
    ['about 20', 'wk', null],
  ])('%s %s are %s', (value, unit, weeks) => {
    expect(weeksOfPregnancy(value, unit)).toBe(weeks);
  });

  it('are taken from an OBX and from an Observation of the day of the sample', async () => {
    const expected = { weeks: 20, trimester: null };
    expect((await onlyReport('a.hl7', hl7('20', 'weeks'))).patient.pregnancy).toEqual(expected);
    expect((await onlyReport('a.json', fhir(20, 'wk'))).patient.pregnancy).toEqual(expected);
  });

  it('of another day are not those of the sample', async () => {
    const report = await onlyReport('a.hl7', hl7('12', 'weeks', '20260920'));
    expect(report.patient.pregnancy).toBeNull();
  });

  it('that cannot be read are a question, for limits in pregnancy differ', async () => {
    expect(await problemsIn('a.hl7', hl7('140', 'd'))).toEqual([
      expect.stringContaining('cannot read the weeks (found "140")'),
    ]);
    expect(await problemsIn('a.json', fhir(140, 'd'))).toHaveLength(1);
  });

  it('that nobody says of a pregnancy are left open', async () => {
    const status = (answer: string) =>
      hl7('20', 'weeks').replace(
        /OBR\|2.*$/s,
        `OBX|2|CE|82810-3^Pregnancy status^LN||^${answer}||||||F`,
      );
    const of = async (name: string, text: string) =>
      (await onlyReport(name, text)).patient.pregnancy;
    const open = { weeks: null, trimester: null };
    expect(await of('a.hl7', status('Pregnant'))).toEqual(open);
    expect(await of('a.hl7', status('Not pregnant'))).toBeNull();
    const told = `${hl7('20', 'weeks')}\rOBX|2|CE|^Pregnancy status||^Pregnant||||||F`;
    expect(await of('a.hl7', told)).toEqual({ weeks: 20, trimester: null });
    const resource = (answer: string) => ({
      ...observation('Pregnancy status', 0, ''),
      valueQuantity: undefined,
      valueCodeableConcept: { text: answer },
    });
    const bundle = (answer: string) =>
      JSON.stringify({
        resourceType: 'Bundle',
        entry: [resource(answer), observation('Ferritin', 9, 'ug/L')].map((one) => ({
          resource: one,
        })),
      });
    expect(await of('a.json', bundle('Pregnant'))).toEqual(open);
    expect(await of('a.json', bundle('Not pregnant'))).toBeNull();
    const patient = { pregnancy: { weeks: 12, trimester: null } };
    const { reports } = await readInput(fileOf('a.json', bundle('Pregnant')), { patient });
    expect(reports.map((read) => read.ok && read.value.patient.pregnancy?.weeks)).toEqual([12]);
  });
});
