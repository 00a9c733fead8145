// The text of a JSON file arrives (one report, a list, or one a line); written reports leave.
import { type Checked, faulty, type Problem } from '../../problem.js';
import { at, fault } from '../fault.js';
import { readJsonTree } from '../json-tree.js';
import type { Intake, WrittenReport } from '../written.js';
import { readReport } from './read-report.js';

export { reportFileSchema } from './report-file.js';

type Reports = Intake['reports'];

/** A text of JSON cut into its objects, each with its own line or number; or why it cannot be. */
export type JsonPart =
  | { readonly row: number | null; readonly value: unknown }
  | { readonly problem: Problem };

/**
 * Objects of a JSON text: the whole, the members of a list, or one a line.
 * Problems: not JSON, a field that stands twice. A bad line stops no other line.
 */
export function jsonParts(name: string, text: string): readonly JsonPart[] {
  const whole = readJsonTree(text);
  if (whole.ok) {
    const repeated = whole.twice[0];
    if (repeated !== undefined) return [{ problem: twice(name, null, repeated) }];
    return Array.isArray(whole.value)
      ? whole.value.map((value: unknown, i) => ({ row: i + 1, value }))
      : [{ row: null, value: whole.value }];
  }
  const lines = text.split(/\r\n|\r|\n/).map((line, i) => ({ line: line.trim(), row: i + 1 }));
  const filled = lines.filter(({ line }) => line !== '');
  const oneEach =
    filled.length > 1 && filled.slice(0, 2).every(({ line }) => /^\{.*\}$/.test(line));
  if (!oneEach) return [{ problem: notJson(name, null, whole.cannot) }];
  const parts: JsonPart[] = [];
  let broken = 0;
  for (const { line, row } of filled) {
    const part = partOf(name, row, line);
    parts.push(part);
    if ('problem' in part) broken += 1;
    if (broken > mostRefused) break;
  }
  return parts;
}

/** One object of a file of many. Problems: not JSON, a field that stands twice. */
export function partOf(name: string, row: number, text: string): JsonPart {
  const read = readJsonTree(text);
  if (!read.ok) return { problem: notJson(name, row, read.cannot.replace(/line \d+, /, '')) };
  const repeated = read.twice[0];
  return repeated === undefined
    ? { row, value: read.value }
    : { problem: twice(name, row, repeated) };
}

/** Written reports from JSON already cut into its objects. */
export function fromParts(name: string, parts: readonly JsonPart[]): Reports {
  if (parts.length === 0) {
    const empty = fault('no-reports', at(name, null), 'cannot find a report in an empty list', {
      expected: 'at least one report',
    });
    return [faulty([empty])];
  }
  const reports: Checked<WrittenReport>[] = [];
  let refused = 0;
  for (const part of parts) {
    if (refused === mostRefused) return [...reports, faulty([tooManyFaults(name, part)])];
    const report =
      'problem' in part
        ? faulty<WrittenReport>([part.problem])
        : readReport(part.value, at(name, part.row));
    if (!report.ok) refused += 1;
    reports.push(report);
  }
  return reports;
}

/** Nobody reads so many faults of one file: it is of another kind than its reader takes it for. */
const mostRefused = 5000;

function tooManyFaults(name: string, part: JsonPart): Problem {
  const row = 'row' in part ? part.row : part.problem.place.row;
  return fault('too-many-faults', at(name, row), 'gave up here: too many reports are wrong', {
    found: `${mostRefused} so far`,
    expected: 'reports as ironleaf schema describes them',
  });
}

function notJson(name: string, row: number | null, cannot: string): Problem {
  return fault('not-json', at(name, row), cannot, { expected: 'a report file' });
}

function twice(name: string, row: number | null, path: string): Problem {
  const field = /^[A-Za-z0-9_.[\]-]{1,80}$/.test(path) ? path : null;
  return fault(
    'field-twice',
    at(name, row, field),
    'cannot tell which of two fields of one name holds',
    {
      expected: 'each field once',
    },
  );
}
