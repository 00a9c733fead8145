// A written report in, its measured and graded states out.
import type { WrittenReport } from '../intake/written.js';
import { type Interpretation, interpret } from '../interpret/index.js';
import { type Checked, fine, type Problem } from '../problem.js';
import { checkReport, type Report, type Result } from '../report/index.js';
import type { Analyte } from '../terms.js';

export type Understood = { readonly report: Report; readonly interpretation: Interpretation };

/**
 * Measures and grades one report.
 * @param confirmed tests whose doubtful value somebody looked at and says it stands.
 * Problems: those of `checkReport`.
 */
export function understand(
  written: WrittenReport,
  today: string,
  confirmed: readonly Analyte[],
): Checked<Understood> {
  const report = measure(written, today, confirmed);
  if (!report.ok) return report;
  const value = { report: report.value, interpretation: interpret(report.value, today) };
  return fine(value, report.notes);
}

/** As `understand`, for who needs no grades: they take most of the time. */
export function measure(
  written: WrittenReport,
  today: string,
  confirmed: readonly Analyte[],
): Checked<Report> {
  return checkReport(confirm(written, confirmed), today);
}

function confirm(written: WrittenReport, confirmed: readonly Analyte[]): WrittenReport {
  const results = written.panel.results.map((result) =>
    confirmed.includes(result.analyte) ? { ...result, confirmed: true } : result,
  );
  return { ...written, panel: { ...written.panel, results } };
}

/** Questions that must be answered before a letter may be made. */
export function doubtsOf({ panel }: Report): readonly Problem[] {
  return panel.results.flatMap((result) => (result.doubt === null ? [] : [question(result)]));
}

function question({ analyte, copied, doubt, place }: Result): Problem {
  return {
    code: 'doubtful-result',
    place: { ...place, field: place.field ?? analyte },
    cannot: `cannot be sure of this result: ${doubt?.question ?? ''}`.replace(/\.$/, ''),
    found: `${copied.value} ${copied.unit}`,
    expected: null,
    remedy: `Correct it, or confirm that it stands: --confirm ${analyte}.`,
  };
}
