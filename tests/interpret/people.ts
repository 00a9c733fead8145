// In: nothing. Out: reports of invented people, each named after what is special about it.
import type { Context, Patient, Report } from '../../src/report/report.js';
import { deficient, panelOf, reportOf, type Values } from './build.js';

const usual: Values = { haemoglobin: 145, ferritin: 100, 'transferrin-saturation': 30, crp: 1 };
const pale: Values = { ...deficient, mch: 22, rbc: 4.9 };
const woman = { sex: 'female', ageMonths: 360, menstruating: true } as const;
const late = { ...woman, pregnancy: { weeks: 36, trimester: 3 } } as const;
const as = (values: Values, patient: Partial<Patient> = {}, context: Partial<Context> = {}) =>
  reportOf(values, { patient, context });
const since = (values: Values, now: Values, collected: string, patient: Partial<Patient> = {}) =>
  reportOf(now, { patient, previous: [panelOf(values, collected)] });
const tablets = { medicines: ['iron-tablets'] } as const;

export const people = {
  'a man with everything usual': as(usual),
  'a pale man': as(pale),
  'a pale woman': as(pale, woman),
  'a pale woman late in pregnancy': as(pale, late),
  'a pale child of 5': as(pale, { ageMonths: 60 }),
  'a high haemoglobin, sex unknown': as({ haemoglobin: 175, ferritin: 20 }, { sex: 'unknown' }),
  'a haemoglobin between the limits of the sexes': as(
    { haemoglobin: 135, ferritin: 20, 'transferrin-saturation': 17, crp: 1 },
    { sex: 'unknown' },
  ),
  'high haemoglobin and ferritin': as({
    haemoglobin: 190,
    ferritin: 450,
    'transferrin-saturation': 20,
    mcv: 105,
    mch: 30,
    crp: 1,
  }),
  'ferritin 40 with anaemia': as({ ...pale, ferritin: 40 }),
  'ferritin 60 while inflamed': as({ ...pale, ferritin: 60, crp: 20 }),
  'ferritin 90 while inflamed': as({ ...pale, ferritin: 90, crp: 20 }),
  'anaemia without CRP': as({ haemoglobin: 110, ferritin: 80 }),
  'deficiency with large cells': as({ ...pale, mcv: 105, mch: 30 }),
  'saturation 12 late in pregnancy': as(
    { haemoglobin: 120, ferritin: 100, 'transferrin-saturation': 12, crp: 1 },
    late,
  ),
  overload: as({
    ...usual,
    'serum-iron': 40,
    transferrin: 1.2,
    'transferrin-saturation': 70,
    ferritin: 1200,
  }),
  'all in range with iron and transferrin': as({
    ...usual,
    'serum-iron': 18,
    transferrin: 2.6,
    mcv: 90,
  }),
  'deficiency with sTfR and reticulocytes': as({
    ...pale,
    stfr: 8,
    'reticulocyte-haemoglobin': 24,
  }),
  'sTfR and reticulocytes that speak against it': as({
    ...usual,
    stfr: 1,
    'reticulocyte-haemoglobin': 33,
  }),
  'small cells with usual iron': as({ ...usual, mcv: 65, rbc: 6 }),
  'a high Mentzer index': as({ ...pale, rbc: 3.5 }),
  'a woman after an injury': as({ haemoglobin: 100, ferritin: 100 }, woman, {
    bleeding: ['recent-injury-or-surgery'],
  }),
  'a fall of haemoglobin': since(
    { haemoglobin: 150 },
    { haemoglobin: 110, ferritin: 50 },
    '2026-10-01',
  ),
  'a tablet three hours before': as(
    { ...usual, 'transferrin-saturation': 70 },
    {},
    { ironTabletHoursBefore: 3, fasting: false },
  ),
  'an injection three days before': as(
    { ...usual, 'transferrin-saturation': 70 },
    {},
    { ironInjectionDaysBefore: 3 },
  ),
  'a transfusion the day before': as(
    { ...usual, 'transferrin-saturation': 70 },
    {},
    { transfusionDaysBefore: 1 },
  ),
  'iron above TIBC': as({ haemoglobin: 145, 'serum-iron': 55, tibc: 50 }),
  'low ferritin with raised saturation': as({
    haemoglobin: 145,
    ferritin: 10,
    'transferrin-saturation': 60,
  }),
  'transferrin under the laboratory alone': as({
    ...usual,
    transferrin: { value: 1.5, low: 2, high: 3.5 },
  }),
  'MCV under the laboratory alone': as({ ...usual, mcv: { value: 90, low: 92, high: 100 } }),
  'three diseases, no rule met': as(usual, {
    conditions: ['heart-failure', 'kidney-disease', 'inflammatory-bowel-disease'],
  }),
  'heart failure with ferritin 80': as(
    { ...usual, ferritin: 80 },
    { conditions: ['heart-failure'] },
  ),
  'kidney disease with ferritin 90': as(
    { ...usual, ferritin: 90, 'transferrin-saturation': 18 },
    { conditions: ['kidney-disease'] },
  ),
  'bowel disease with ferritin 25': as(
    { ...usual, ferritin: 25 },
    { conditions: ['inflammatory-bowel-disease'] },
  ),
  'liver, alcohol, trait and overload': as(usual, {
    conditions: ['liver-disease', 'alcohol-related', 'thalassaemia-trait', 'iron-overload'],
  }),
  'a child of 3 months': as(usual, { ageMonths: 3 }),
  'a doubtful ferritin': as({ ...usual, ferritin: { value: 100, doubt: 'value' } }),
  'a ferritin in a doubtful unit': as({ ...usual, ferritin: { value: 100, doubt: 'unit' } }),
  'ferritin above 20': as({ ...usual, ferritin: { value: 20, comparator: '>' } }),
  'a preliminary ferritin marked low': as({
    ...usual,
    ferritin: { value: 30, preliminary: true, labFlag: 'L', low: 20, high: 500 },
  }),
  'ferritin 22 in an interval from 20': as({
    ...usual,
    ferritin: { value: 22, low: 20, high: 500 },
  }),
  'a pregnant woman at 65': as({ haemoglobin: 65, ferritin: 6 }, late, {
    symptoms: ['dizziness', 'chest-pain'],
  }),
  'a woman at 75 with symptoms': as({ haemoglobin: 75, ferritin: 6 }, woman, {
    symptoms: ['chest-pain', 'fever', 'jaundice'],
  }),
  'haemoglobin 205 with headache': as(
    { haemoglobin: 205, haematocrit: 0.62, ferritin: 100 },
    {},
    { symptoms: ['headache'] },
  ),
  'blood vomited': as(
    usual,
    {},
    { bleeding: ['vomited-blood', 'blood-donation', 'heavy-periods'] },
  ),
  'iron 61 and ferritin 12000': as(
    { ...usual, 'serum-iron': 61, ferritin: 12_000 },
    {},
    { symptoms: ['fever'] },
  ),
  'a panic mark': as({ ...usual, haemoglobin: { value: 145, labFlag: 'LL' } }),
  'a strong mark': as({ ...usual, haemoglobin: { value: 145, labFlag: 'HU' } }),
  'a man of 65 with haemoglobin 115': as({ ...usual, haemoglobin: 115 }, { ageMonths: 780 }),
  'a change of bowel habit': as(
    { ...usual, haemoglobin: 115 },
    { ageMonths: 800 },
    { symptoms: ['change-in-bowel-habit'] },
  ),
  '105 late in pregnancy': as({ haemoglobin: 105, ferritin: 120 }, late),
  '95 late in pregnancy': as({ haemoglobin: 95, ferritin: 6 }, late),
  'ferritin 1300 after a birth': as(
    { ...usual, 'serum-iron': 20, ferritin: 1300, tibc: 60 },
    { afterBirthWeeks: 3, sex: 'female' },
  ),
  'a home at 2600 metres': as(
    { haemoglobin: 145, 'serum-iron': 20, tibc: 60 },
    { altitudeMetres: 2600, cigarettesPerDay: 10 },
  ),
  'ferritin 1300, age unknown': as(
    { haemoglobin: 145, 'serum-iron': 20, tibc: 60, ferritin: 1300 },
    { ageMonths: null },
  ),
  'indices that disagree': as({ ...usual, 'serum-iron': 9.5, tibc: 75, rbc: 5, mch: 40 }),
  'a ferritin alone': as({ ferritin: 100 }),
  'anaemia with raised saturation': as({
    ...usual,
    haemoglobin: 100,
    'transferrin-saturation': 60,
  }),
  'a sample of January': reportOf(usual, { collected: '2026-01-01' }),
  'iron for three weeks, haemoglobin risen': since(
    { haemoglobin: 100 },
    { haemoglobin: 125, ferritin: 50 },
    '2026-10-26',
    tablets,
  ),
  'iron for three weeks, haemoglobin still': since(
    { haemoglobin: 100 },
    { haemoglobin: 102, ferritin: 50 },
    '2026-10-26',
    tablets,
  ),
  'iron for six days': since(
    { haemoglobin: 100 },
    { haemoglobin: 102, ferritin: 50 },
    '2026-11-10',
    tablets,
  ),
} satisfies Readonly<Record<string, Report>>;

export type Someone = keyof typeof people;
