// Every code of the closed lists is said of somebody, with the facts that its sentence asks for.
import { describe, expect, it } from 'vitest';
import {
  clinicianNoteCodes,
  holdReasonCodes,
  interpret,
  patternReasonCodes,
} from '../../src/interpret/index.js';
import type { Context, Patient, Report } from '../../src/report/report.js';
import { flags } from '../../src/terms.js';
import { panelOf, reportOf, today, type Values } from './build.js';

const usual: Values = { haemoglobin: 145, ferritin: 100, 'transferrin-saturation': 30, crp: 1 };
const deficient: Values = {
  haemoglobin: 100,
  ferritin: 6,
  'transferrin-saturation': 8,
  'serum-iron': 6,
  transferrin: 4,
  mcv: 72,
  mch: 22,
  rbc: 4.9,
  crp: 1,
};
const woman = { sex: 'female', ageMonths: 360, menstruating: true } as const;
const late = { ...woman, pregnancy: { weeks: 36, trimester: 3 } } as const;
const as = (values: Values, patient: Partial<Patient> = {}, context: Partial<Context> = {}) =>
  reportOf(values, { patient, context });
const since = (values: Values, now: Values, collected: string, patient: Partial<Patient> = {}) =>
  reportOf(now, { patient, previous: [panelOf(values, collected)] });
const tablets = { medicines: ['iron-tablets'] } as const;

const reports: readonly Report[] = [
  as(usual),
  as(deficient),
  as(deficient, woman),
  as(deficient, late),
  as(deficient, { ageMonths: 60 }),
  as({ haemoglobin: 175, ferritin: 20 }, { sex: 'unknown' }),
  as({ haemoglobin: 135, ferritin: 20, 'transferrin-saturation': 17, crp: 1 }, { sex: 'unknown' }),
  as({ haemoglobin: 190, ferritin: 450, 'transferrin-saturation': 20, mcv: 105, mch: 30, crp: 1 }),
  as({ ...deficient, ferritin: 40 }),
  as({ ...deficient, ferritin: 60, crp: 20 }),
  as({ ...deficient, ferritin: 90, crp: 20 }),
  as({ haemoglobin: 110, ferritin: 80 }),
  as({ ...deficient, mcv: 105, mch: 30 }),
  as({ haemoglobin: 120, ferritin: 100, 'transferrin-saturation': 12, crp: 1 }, late),
  as({
    ...usual,
    'serum-iron': 40,
    transferrin: 1.2,
    'transferrin-saturation': 70,
    ferritin: 1200,
  }),
  as({ ...usual, 'serum-iron': 18, transferrin: 2.6, mcv: 90 }),
  as({ ...deficient, stfr: 8, 'reticulocyte-haemoglobin': 24 }),
  as({ ...usual, stfr: 1, 'reticulocyte-haemoglobin': 33 }),
  as({ ...usual, mcv: 65, rbc: 6 }),
  as({ ...deficient, rbc: 3.5 }),
  as({ haemoglobin: 100, ferritin: 100 }, woman, { bleeding: ['recent-injury-or-surgery'] }),
  since({ haemoglobin: 150 }, { haemoglobin: 110, ferritin: 50 }, '2026-10-01'),
  as({ ...usual, 'transferrin-saturation': 70 }, {}, { ironTabletHoursBefore: 3, fasting: false }),
  as({ ...usual, 'transferrin-saturation': 70 }, {}, { ironInjectionDaysBefore: 3 }),
  as({ ...usual, 'transferrin-saturation': 70 }, {}, { transfusionDaysBefore: 1 }),
  as({ haemoglobin: 145, 'serum-iron': 55, tibc: 50 }),
  as({ haemoglobin: 145, ferritin: 10, 'transferrin-saturation': 60 }),
  as({ ...usual, transferrin: { value: 1.5, low: 2, high: 3.5 } }),
  as({ ...usual, mcv: { value: 90, low: 92, high: 100 } }),
  as(usual, { conditions: ['heart-failure', 'kidney-disease', 'inflammatory-bowel-disease'] }),
  as({ ...usual, ferritin: 80 }, { conditions: ['heart-failure'] }),
  as({ ...usual, ferritin: 90, 'transferrin-saturation': 18 }, { conditions: ['kidney-disease'] }),
  as({ ...usual, ferritin: 25 }, { conditions: ['inflammatory-bowel-disease'] }),
  as(usual, {
    conditions: ['liver-disease', 'alcohol-related', 'thalassaemia-trait', 'iron-overload'],
  }),
  as(usual, { ageMonths: 3 }),
  as({ ...usual, ferritin: { value: 100, doubt: 'value' } }),
  as({ ...usual, ferritin: { value: 100, doubt: 'unit' } }),
  as({ ...usual, ferritin: { value: 20, comparator: '>' } }),
  as({ ...usual, ferritin: { value: 30, preliminary: true, labFlag: 'L', low: 20, high: 500 } }),
  as({ ...usual, ferritin: { value: 22, low: 20, high: 500 } }),
  as({ haemoglobin: 65, ferritin: 6 }, late, { symptoms: ['dizziness', 'chest-pain'] }),
  as({ haemoglobin: 75, ferritin: 6 }, woman, { symptoms: ['chest-pain', 'fever', 'jaundice'] }),
  as({ haemoglobin: 205, haematocrit: 0.62, ferritin: 100 }, {}, { symptoms: ['headache'] }),
  as(usual, {}, { bleeding: ['vomited-blood', 'blood-donation', 'heavy-periods'] }),
  as({ ...usual, 'serum-iron': 61, ferritin: 12_000 }, {}, { symptoms: ['fever'] }),
  as({ ...usual, haemoglobin: { value: 145, labFlag: 'LL' } }),
  as({ ...usual, haemoglobin: { value: 145, labFlag: 'HU' } }),
  as({ ...usual, haemoglobin: 115 }, { ageMonths: 780 }),
  as({ ...usual, haemoglobin: 115 }, { ageMonths: 800 }, { symptoms: ['change-in-bowel-habit'] }),
  as({ haemoglobin: 105, ferritin: 120 }, late),
  as({ haemoglobin: 95, ferritin: 6 }, late),
  as(
    { ...usual, 'serum-iron': 20, ferritin: 1300, tibc: 60 },
    { afterBirthWeeks: 3, sex: 'female' },
  ),
  as(
    { haemoglobin: 145, 'serum-iron': 20, tibc: 60 },
    { altitudeMetres: 2600, cigarettesPerDay: 10 },
  ),
  as({ haemoglobin: 145, 'serum-iron': 20, tibc: 60, ferritin: 1300 }, { ageMonths: null }),
  as({ ...usual, 'serum-iron': 9.5, tibc: 75, rbc: 5, mch: 40 }),
  as({ ferritin: 100 }),
  as({ ...usual, haemoglobin: 100, 'transferrin-saturation': 60 }),
  reportOf(usual, { collected: '2026-01-01' }),
  since({ haemoglobin: 100 }, { haemoglobin: 125, ferritin: 50 }, '2026-10-26', tablets),
  since({ haemoglobin: 100 }, { haemoglobin: 102, ferritin: 50 }, '2026-10-26', tablets),
  since({ haemoglobin: 100 }, { haemoglobin: 102, ferritin: 50 }, '2026-11-10', tablets),
];

const read = reports.map((report) => interpret(report, today));
const sorted = (codes: Iterable<string>) => [...new Set(codes)].toSorted();

describe('every code', () => {
  it('of the reasons is said of somebody, and no other', () => {
    const said = read.flatMap(({ pattern, nearMisses }) => [
      ...pattern.supports,
      ...pattern.against,
      ...nearMisses,
    ]);
    expect(sorted(said.map(({ code }) => code))).toEqual(sorted(patternReasonCodes));
  });

  it('of the holds is said of somebody, and no other', () => {
    const said = read.flatMap(({ hold }) => hold.reasons.map(({ code }) => code));
    expect(sorted(said)).toEqual(sorted(holdReasonCodes));
  });

  it('of the notes for the clinician is said of somebody, and no other', () => {
    const said = read.flatMap((one) => one.clinicianNotes.map(({ code }) => code));
    expect(sorted(said)).toEqual(sorted(clinicianNoteCodes));
  });

  it('of the flags is raised of somebody', () => {
    const raised = read.flatMap((one) => one.flags.map(({ flag }) => flag));
    expect(sorted(raised)).toEqual(sorted(flags));
  });
});
