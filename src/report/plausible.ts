// In: a value in its written unit, with the printed interval. Out: impossible, doubtful with a question, or nothing to say.
import {
  intervalWindows,
  type LimitRow,
  plausibleLimits,
  type SlipRow,
  unitSlips,
} from '../knowledge/plausible.js';
import { type UnitRow, unitsOf } from '../knowledge/units.js';
import type { Analyte } from '../terms.js';
import { canonicalUnit, convert, express } from './convert.js';
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
    unusual(candidate, ours, limits, intended);
  return doubt === null ? { verdict: 'plausible' } : { verdict: 'doubtful', doubt };
}

function limitsOf(analyte: Analyte): LimitRow {
  const row = plausibleLimits.find((limits) => limits.analyte === analyte);
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

function slipDoubt(slip: SlipRow | undefined, candidate: Candidate): Doubt | null {
  if (slip === undefined) return null;
  const { analyte, value, unit } = candidate;
  const ours = `${shown(value)} ${unit} is ${inOurs(analyte, value, unit)}`;
  const likely = `${slip.likely} (${inOurs(analyte, value, slip.likely)})`;
  return {
    kind: 'unit',
    rule: slip.id,
    question: `${ours}; did the sheet say ${likely}?`,
    likelyUnit: slip.likely,
  };
}

/** The printed interval makes no sense in the printed unit, and does in exactly one other. */
function contradictedByInterval(candidate: Candidate): Doubt | null {
  const { analyte, unit, interval, value } = candidate;
  const row = intervalWindows.find((window) => window.analyte === analyte);
  if (row === undefined || interval === null) return null;
  const { low, high } = interval;
  if (low === null && high === null) return null;
  const fits = (code: string) => {
    const end = (side: number | null) =>
      side === null ? null : convert(analyte, express(analyte, side, unit), code);
    const [from, to] = [end(low), end(high)];
    return (
      (from === null || (from >= row.lowFrom && from <= row.lowTo)) &&
      (to === null || (to >= row.highFrom && to <= row.highTo))
    );
  };
  if (fits(unit)) return null;
  const likely = otherUnits(analyte, unit).filter((other) => fits(other.code));
  const only = likely[0];
  if (only === undefined || likely.length > 1) return null;
  return {
    kind: 'unit',
    rule: row.id,
    question: `the printed interval is one in ${only.code}, not ${unit}; did the sheet say ${shown(value)} ${only.code} (${inOurs(analyte, value, only.code)})?`,
    likelyUnit: only.code,
  };
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
  const seldom = `${shown(value)} ${unit} is ${low ? 'below' : 'above'} ${limit} ${limits.unit}, which is seldom seen`;
  const ask =
    only === null
      ? 'is it right?'
      : `is it right, or did the sheet say ${only} (${inOurs(analyte, value, only)})?`;
  return {
    kind: only === null ? 'value' : 'unit',
    rule: limits.id,
    question: `${seldom}; ${ask}`,
    likelyUnit: only,
  };
}

/** Other accepted units in which the same digits would be an everyday value. */
function otherReadings({ analyte, value, unit }: Candidate, limits: LimitRow): string[] {
  return otherUnits(analyte, unit)
    .filter(({ code }) => {
      const ours = convert(analyte, value, code);
      return ours >= limits.askBelow && ours <= limits.askAbove;
    })
    .map(({ code }) => code);
}

/** Accepted units whose factor differs from the written one's, each factor once. */
function otherUnits(analyte: Analyte, unit: string): readonly UnitRow[] {
  const factor = (row: UnitRow) => `${row.times}/${row.over}`;
  const rows = unitsOf(analyte);
  const written = rows.find((row) => row.code === unit);
  const seen = new Set(written === undefined ? [] : [factor(written)]);
  return rows.filter((row) => {
    const isNew = !seen.has(factor(row));
    seen.add(factor(row));
    return isNew;
  });
}

function wouldBe({ analyte, value }: Candidate, intended: readonly string[]): string | null {
  if (intended.length === 0) return null;
  return intended
    .map((code) => `${shown(value)} ${code} would be ${inOurs(analyte, value, code)}`)
    .join('; ');
}

function inOurs(analyte: Analyte, value: number, unit: string): string {
  return `${shown(convert(analyte, value, unit))} ${canonicalUnit(analyte)}`;
}

/** Up to four significant digits, for an operator's question; never for a letter. */
function shown(value: number): string {
  return new Intl.NumberFormat('en', { maximumSignificantDigits: 4, useGrouping: false }).format(
    value,
  );
}
