// In: a value in its written unit, with the printed interval. Out: impossible, doubtful with a question, or nothing to say.
import {
  intervalWindows,
  type LimitRow,
  plausibleLimits,
  type SlipRow,
  unitSlips,
  type WindowRow,
} from '../knowledge/plausible.js';
import { type UnitRow, unitsOf } from '../knowledge/units.js';
import type { Analyte } from '../terms.js';
import { canonicalUnit, convert, express, sayUnit } from './convert.js';
import type { Comparator, Doubt, ReferenceInterval } from './report.js';

/** A value as measured: number and UCUM code as written, with the printed interval in our unit. */
export type Candidate = {
  readonly analyte: Analyte;
  readonly value: number;
  readonly unit: string;
  readonly comparator: Comparator | null;
  readonly interval: ReferenceInterval | null;
};

export type Judgement =
  | { readonly verdict: 'plausible' }
  | { readonly verdict: 'impossible'; readonly rule: string; readonly likely: string | null }
  | { readonly verdict: 'doubtful'; readonly doubt: Doubt };

/**
 * Judges one value against the limits and the known unit slips; it never changes it.
 * `likely` says what another unit would make of the same digits.
 * @example judge({ analyte: 'haemoglobin', value: 13.2, unit: 'g/L', comparator: null, interval: null })
 *   // { verdict: 'impossible', rule: 'limits-haemoglobin', likely: '13.2 g/dL would be 132 g/L' }
 */
export function judge(candidate: Candidate): Judgement {
  const limits = limitsOf(candidate.analyte);
  const ours = convert(candidate.analyte, candidate.value, candidate.unit);
  const slip = unitSlips.find((row) => applies(row, candidate));
  const intended = slip === undefined ? otherReadings(candidate, limits) : [slip.likely];
  const impossible = ours < limits.rejectBelow || ours > limits.rejectAbove;
  if (impossible || slip?.verdict === 'reject') {
    const rule = impossible ? limits.id : (slip?.id ?? limits.id);
    return { verdict: 'impossible', rule, likely: wouldBe(candidate, intended) };
  }
  const doubt =
    slipDoubt(slip, candidate) ??
    contradictedByInterval(candidate) ??
    unusual(candidate, ours, limits, printedFits(candidate, candidate.unit) ? [] : intended);
  return doubt === null ? { verdict: 'plausible' } : { verdict: 'doubtful', doubt };
}

function limitsOf(analyte: Analyte): LimitRow {
  const row = plausibleLimits.find((limits) => limits.analyte === analyte);
  // Stryker disable next-line all: every analyte has a row, so only a broken table comes here.
  if (row === undefined) throw new Error(`knowledge table plausible: no row for ${analyte}`);
  return row;
}

function applies(row: SlipRow, { analyte, unit, value }: Candidate): boolean {
  return (
    row.analyte === analyte &&
    row.codes.includes(unit) &&
    value >= (row.fromValue ?? Number.NEGATIVE_INFINITY) &&
    value <= (row.toValue ?? Number.POSITIVE_INFINITY)
  );
}

/** Whether the same digits in another unit would be asked about as well, so that it is no suggestion. */
function isSlip(candidate: Candidate, code: string): boolean {
  return unitSlips.some((row) => applies(row, { ...candidate, unit: code }));
}

function slipDoubt(slip: SlipRow | undefined, candidate: Candidate): Doubt | null {
  if (slip === undefined) return null;
  const { analyte, value, unit } = candidate;
  const ours = `${shown(value)} ${sayUnit(unit)} is ${inOurs(analyte, value, unit)}`;
  const likely = `${sayUnit(slip.likely)} (${inOurs(analyte, value, slip.likely)})`;
  return {
    kind: 'unit',
    rule: slip.id,
    question: `${ours}; did the sheet say ${likely}?`,
    likelyUnit: slip.likely,
  };
}

/** The printed interval makes no sense in the printed unit, and does in exactly one other. */
function contradictedByInterval(candidate: Candidate): Doubt | null {
  const { analyte, unit, value } = candidate;
  if (printedFits(candidate, unit) !== false) return null;
  const row = windowOf(analyte);
  const likely = unitsOnce(analyte).filter(
    ({ code }) => printedFits(candidate, code) && !isSlip(candidate, code),
  );
  const only = likely[0];
  // Stryker disable next-line ConditionalExpression: an interval that does not fit was judged by a row.
  if (row === undefined) return null;
  if (only === undefined || likely.length > 1) return null;
  const fits = `the printed interval fits ${sayUnit(only.code)}, not ${sayUnit(unit)}`;
  const digits = `${shown(value)} ${sayUnit(only.code)} (${inOurs(analyte, value, only.code)})`;
  return {
    kind: 'unit',
    rule: row.id,
    question: `${fits}; did the sheet say ${digits}?`,
    likelyUnit: only.code,
  };
}

function windowOf(analyte: Analyte): WindowRow | undefined {
  return intervalWindows.find((window) => window.analyte === analyte);
}

/** Whether the printed ends, read in `code`, lie where such ends lie; null when there is nothing to judge by. */
function printedFits({ analyte, unit, interval }: Candidate, code: string): boolean | null {
  const row = windowOf(analyte);
  if (row === undefined || interval === null) return null;
  const end = (side: number | null) =>
    side === null ? null : convert(analyte, express(analyte, side, unit), code);
  const [low, high] = [end(interval.low), end(interval.high)];
  return (
    (low === null || (low >= row.lowFrom && low <= row.lowTo)) &&
    (high === null || (high >= row.highFrom && high <= row.highTo))
  );
}

/** Outside the ask limits; an instrument's own end of scale ('<2', '>5000') is no question. */
function unusual(
  { analyte, value, unit, comparator }: Candidate,
  ours: number,
  limits: LimitRow,
  intended: readonly string[],
): Doubt | null {
  const low = ours < limits.askBelow && !comparator?.startsWith('<');
  const high = ours > limits.askAbove && !comparator?.startsWith('>');
  if (!low && !high) return null;
  const only = intended.length === 1 ? (intended[0] ?? null) : null;
  const limit = shown(low ? limits.askBelow : limits.askAbove);
  const seldom = `${shown(value)} ${sayUnit(unit)} is ${low ? 'below' : 'above'} ${limit} ${sayUnit(limits.unit)}, which is seldom seen`;
  const ask =
    only === null
      ? 'is it right?'
      : `is it right, or did the sheet say ${sayUnit(only)} (${inOurs(analyte, value, only)})?`;
  return {
    kind: only === null ? 'value' : 'unit',
    rule: limits.id,
    question: `${seldom}; ${ask}`,
    likelyUnit: only,
  };
}

/**
 * Other accepted units in which the same digits would be an everyday value, none of them a slip itself.
 * A printed interval that fits some of them and not the written unit decides between them.
 */
function otherReadings(candidate: Candidate, limits: LimitRow): readonly string[] {
  const { analyte, value, unit } = candidate;
  const everyday = unitsOnce(analyte)
    .map(({ code }) => code)
    .filter((code) => {
      const ours = convert(analyte, value, code);
      return ours >= limits.askBelow && ours <= limits.askAbove && !isSlip(candidate, code);
    });
  const printed = everyday.filter((code) => printedFits(candidate, code));
  // Stryker disable next-line ConditionalExpression: the windows are too narrow to fit the written unit and one of several others.
  return printedFits(candidate, unit) === false && printed.length > 0 ? printed : everyday;
}

/** Accepted units, each factor once; the written one is among them, for in it the digits are no everyday value. */
function unitsOnce(analyte: Analyte): readonly UnitRow[] {
  const rows = unitsOf(analyte);
  const factors = rows.map(({ times, over }) => `${times}/${over}`);
  return rows.filter((_, at) => factors.indexOf(factors[at] ?? '') === at);
}

function wouldBe({ analyte, value }: Candidate, intended: readonly string[]): string | null {
  if (intended.length === 0) return null;
  return intended
    .map((code) => {
      const meant =
        code === canonicalUnit(analyte) ? 'an everyday value' : inOurs(analyte, value, code);
      return `${shown(value)} ${sayUnit(code)} would be ${meant}`;
    })
    .join('; ');
}

function inOurs(analyte: Analyte, value: number, unit: string): string {
  return `${shown(convert(analyte, value, unit))} ${sayUnit(canonicalUnit(analyte))}`;
}

/** Four digits that count. For an operator's question; never for a letter. */
function shown(value: number): string {
  return String(Number(value.toPrecision(4)));
}
