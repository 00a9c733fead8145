// Text arrives; an input file leaves, and short words for what a reader made of it.
import { readInput } from '../../src/intake/index.js';
import type { Intake, WrittenReport } from '../../src/intake/written.js';
import { sayProblem } from '../../src/problem.js';

export function fileOf(name: string, text: string) {
  return { name, bytes: new TextEncoder().encode(text) };
}

/** Every report of an intake that could be read. */
export function reportsOf(intake: Intake): readonly WrittenReport[] {
  return intake.reports.flatMap((read) => (read.ok ? [read.value] : []));
}

/** Every problem of an intake as the operator sees it. */
export function said(intake: Intake): readonly string[] {
  return intake.reports.flatMap((read) => (read.ok ? [] : read.problems.map(sayProblem)));
}

/** The one report of a text that must be readable. */
export async function onlyReport(name: string, text: string): Promise<WrittenReport> {
  const intake = await readInput(fileOf(name, text));
  const [first, ...others] = reportsOf(intake);
  if (first === undefined || others.length > 0 || said(intake).length > 0)
    throw new Error(`expected one report: ${said(intake).join('\n')}`);
  return first;
}

export async function problemsIn(name: string, text: string): Promise<readonly string[]> {
  return said(await readInput(fileOf(name, text)));
}

/** Values of a report as 'analyte comparator value unit low..high flag'. */
export function resultsOf(report: WrittenReport): readonly string[] {
  return report.panel.results.map(({ analyte, comparator, value, unit, interval, labFlag }) =>
    [
      analyte,
      `${comparator ?? ''}${value}`,
      unit ?? '-',
      interval === null ? '' : `${interval.low ?? ''}..${interval.high ?? ''}`,
      labFlag ?? '',
    ]
      .join(' ')
      .trim(),
  );
}
