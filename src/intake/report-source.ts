// The shape of a file whose reports are read one at a time, by number.
import type { Checked, Problem } from '../problem.js';
import type { Intake, WrittenReport } from './written.js';

export type ReportRead = {
  readonly report: Checked<WrittenReport>;
  /** Lines or fields of this report passed over, with why. */
  readonly ignored: readonly Problem[];
};

export type ReportSource = {
  readonly format: Intake['format'];
  /** How many reports the file holds. */
  readonly count: number;
  /** What was passed over that belongs to no report. */
  readonly ignored: readonly Problem[];
  /** Reads one report, from 0; the same each time. */
  readonly read: (index: number) => ReportRead;
};

/** Reports already read, as such a source. */
export function sourceOf({ format, reports, ignored }: Intake): ReportSource {
  return {
    format,
    count: reports.length,
    ignored,
    read: (index) => {
      const report = reports[index];
      if (report === undefined) throw new Error('there is no such report');
      return { report, ignored: [] };
    },
  };
}

/** A file that as a whole cannot be read: one report, refused. */
export function refusedSource(
  format: Intake['format'],
  problems: readonly Problem[],
  ignored: readonly Problem[] = [],
): ReportSource {
  return sourceOf({ format, reports: [{ ok: false, problems }], ignored });
}
