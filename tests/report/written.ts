// In: the few facts a case is about. Out: a whole written report around them.
import type { WrittenPatient, WrittenReport, WrittenResult } from '../../src/intake/written.js';
import { nowhere, type Problem } from '../../src/problem.js';
import { checkReport, type Report, type Result } from '../../src/report/index.js';

export const today = '2026-03-01';

export const somebody: WrittenPatient = {
  id: null,
  name: null,
  birthDate: null,
  ageYears: 34,
  ageMonths: null,
  sex: 'female',
  pregnancy: null,
  afterBirthWeeks: null,
  menstruating: null,
  altitudeMetres: null,
  cigarettesPerDay: null,
  diet: null,
  conditions: [],
  medicines: [],
};

export const nothingElse: WrittenReport['context'] = {
  symptoms: [],
  bleeding: [],
  ironTabletHoursBefore: null,
  ironInjectionDaysBefore: null,
  transfusionDaysBefore: null,
  fasting: null,
  sampleTime: null,
  notes: [],
};

export function written(over: Partial<WrittenResult> = {}): WrittenResult {
  return {
    place: { file: 'sheet.csv', row: 2, field: over.analyte ?? 'ferritin' },
    analyte: 'ferritin',
    name: 'Ferritin',
    value: '60',
    comparator: null,
    unit: 'ug/L',
    interval: null,
    labFlag: null,
    status: null,
    confirmed: false,
    ...over,
  };
}

export function reportOf(
  results: readonly WrittenResult[],
  over: Partial<WrittenReport> & { readonly patient?: WrittenPatient } = {},
): WrittenReport {
  return {
    place: nowhere,
    patient: somebody,
    panel: { collected: '2026-02-20', results },
    context: nothingElse,
    previous: [],
    ...over,
  };
}

/** The measured report; a problem nobody expected fails the test that asked. */
export function measured(report: WrittenReport): Report {
  const checked = checkReport(report, today);
  if (!checked.ok) throw new Error(checked.problems.map((one) => one.code).join(', '));
  return checked.value;
}

export function problemsOf(report: WrittenReport): readonly Problem[] {
  const checked = checkReport(report, today);
  return checked.ok ? [] : checked.problems;
}

export const codesOf = (report: WrittenReport) => problemsOf(report).map(({ code }) => code);

export function notesOf(report: WrittenReport): readonly string[] {
  const checked = checkReport(report, today);
  return checked.ok ? checked.notes.map(({ code }) => code) : [];
}

/** The one result of a report with one result. */
export function only(over: Partial<WrittenResult>): Result {
  const result = measured(reportOf([written(over)])).panel.results[0];
  if (result === undefined) throw new Error('no result');
  return result;
}
