// In: a report as written, today's date. Out: the measured report, or everything that is wrong with it.
import type { WrittenReport } from '../intake/written.js';
import { type Checked, faulty, fine } from '../problem.js';
import { checkContext } from './context.js';
import { readDate } from './date.js';
import { nothingFound } from './findings.js';
import { checkPanels } from './panel.js';
import { checkPatient } from './patient.js';
import type { Report } from './report.js';

/**
 * Measures a written report: quantities in our units with the written strings kept, the person, the dates.
 * All problems are collected; one is enough to refuse the report. Notes say what was left out or read with care.
 * Doubtful values stay in the report with their question; nothing is ever corrected.
 * @param today ISO date, handed in; a malformed one is our bug and throws.
 * @example checkReport(written, '2026-03-01') // { ok: true, value: { panel: { collected: '2026-02-27', … }, … }, notes: [] }
 */
export function checkReport(written: WrittenReport, today: string): Checked<Report> {
  if (readDate(today) !== today) throw new Error('today must be an ISO date');
  const into = nothingFound();
  const { place } = written;
  const { panel, previous } = checkPanels(written.panel, written.previous, today, place, into);
  const patient = checkPatient(written.patient, panel?.collected ?? null, place, into);
  const context = checkContext(written.context, place, into);
  // Stryker disable next-line ConditionalExpression,LogicalOperator: a panel or patient that is null left its problem.
  if (panel === null || patient === null) return faulty(into.problems);
  if (into.problems.length > 0) return faulty(into.problems);
  return fine({ place, patient, panel, context, previous }, into.notes);
}
