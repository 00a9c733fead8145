// In: one written result. Out: the measured result, or null when it was dropped or refused.
import type { WrittenResult } from '../intake/written.js';
import { readUnit } from '../knowledge/units.js';
import type { Place } from '../problem.js';
import type { Analyte } from '../terms.js';
import { copiedText } from './clean-text.js';
import { acceptedUnits, canonicalUnit, convert, sayUnit } from './convert.js';
import { type Findings, fault } from './findings.js';
import { readInterval } from './interval.js';
import { readLabFlag, readStanding, type Standing } from './marks.js';
import { readComparator, readNumber } from './number.js';
import { judge } from './plausible.js';
import type { Comparator, Result } from './report.js';

/** A result with what its status says of it, needed only until two for one test are settled. */
export type StandingResult = { readonly result: Result; readonly standing: Standing };

/**
 * One measured result. The written strings travel along untouched in `copied`.
 * @example checkResult(written, into) // haemoglobin '12.1' 'g/dL': quantity { value: 121, unit: 'g/L', comparator: null }
 */
export function checkResult(written: WrittenResult, into: Findings): StandingResult | null {
  const { analyte, place } = written;
  const standing = readStanding(written.status);
  if (standing === null) {
    const expected = 'final, preliminary, corrected, cancelled or entered-in-error';
    const found = written.status;
    into.problems.push(
      fault('status-unknown', place, 'cannot read the status', { found, expected }),
    );
  }
  if (standing === 'void') {
    into.notes.push(
      fault('result-withdrawn', place, `left out ${analyte}, withdrawn by the laboratory`),
    );
    return null;
  }
  const flag = readLabFlag(written.labFlag);
  if (!flag.known)
    into.notes.push(
      fault('flag-unread', place, 'took an unknown laboratory flag as abnormal', {
        found: written.labFlag,
      }),
    );
  const number = checkNumber(written, flag.offScale, into);
  const unit = checkUnit(analyte, written.unit, place, into);
  if (unit === null) return null;
  const { interval, copied } = readInterval(written.interval, analyte, unit, place, into);
  if (number === null || standing === null) return null;

  const { value, comparator } = number;
  const judgement = judge({ analyte, value, unit, comparator, interval });
  if (judgement.verdict === 'impossible') {
    const found = `${written.value.trim()} ${sayUnit(unit)}`;
    const remedy =
      judgement.likely === null ? null : `${capital(judgement.likely)}. Check the report.`;
    into.problems.push(
      fault('value-impossible', place, `${analyte} of ${found} is not possible`, { remedy }),
    );
    return null;
  }
  const doubt = judgement.verdict === 'doubtful' && !written.confirmed ? judgement.doubt : null;
  const quantity = {
    value: convert(analyte, value, unit),
    unit: canonicalUnit(analyte),
    comparator,
  };
  const result: Result = {
    place,
    analyte,
    quantity,
    interval,
    copied: {
      value: copiedValue(written),
      unit: copiedText(written.unit ?? ''),
      interval: copied,
    },
    labFlag: flag.flag,
    preliminary: standing === 'preliminary',
    doubt,
  };
  return { result, standing };
}

type Measured = { readonly value: number; readonly comparator: Comparator | null };

function checkNumber(
  { analyte, place, value, comparator }: WrittenResult,
  offScale: Comparator | null,
  into: Findings,
): Measured | null {
  const read = readNumber(value);
  const sign = comparator === null || comparator.trim() === '' ? null : comparator;
  const apart = sign === null ? null : readComparator(sign);
  if (!read.ok) {
    const { code, expected } = read;
    const found = value.trim() === '' ? null : value;
    into.problems.push(
      fault(code, place, `cannot read the value of ${analyte} as a number`, { found, expected }),
    );
  }
  if (sign !== null && apart === null) {
    const expected = 'one of < <= > >=';
    into.problems.push(
      fault('comparator-unread', place, 'cannot read the comparator', { found: sign, expected }),
    );
    return null;
  }
  if (!read.ok) return null;
  if (apart !== null && read.comparator !== null && apart !== read.comparator) {
    const found = `${apart} and ${read.comparator}`;
    into.problems.push(
      fault('comparator-contradiction', place, 'cannot use two different comparators', { found }),
    );
    return null;
  }
  return { value: read.value, comparator: apart ?? read.comparator ?? offScale };
}

/** Comparator and digits as written; some sheets carry the comparator twice, in a field and with the digits. */
function copiedValue({ comparator, value }: WrittenResult): string {
  const digits = copiedText(value);
  return /^\d/.test(digits) ? `${copiedText(comparator ?? '')}${digits}` : digits;
}

function checkUnit(
  analyte: Analyte,
  written: string | null,
  place: Place,
  into: Findings,
): string | null {
  const expected = `one of ${acceptedUnits(analyte).map(sayUnit).join(', ')}`;
  if (written === null || written.trim() === '') {
    const remedy = 'A unit is never guessed: copy it from the report.';
    into.problems.push(
      fault('unit-missing', place, `no unit for ${analyte}`, { expected, remedy }),
    );
    return null;
  }
  const unit = readUnit(written);
  const accepted = acceptedUnits(analyte).find((code) => code === unit);
  if (accepted !== undefined) return accepted;
  into.problems.push(
    fault('unit-not-accepted', place, `cannot use this unit for ${analyte}`, {
      found: written,
      expected,
      remedy: caseOnly(analyte, written),
    }),
  );
  return null;
}

/** 'G/L' is giga per litre to some laboratories and grams to others: name the spelling, leave the choice. */
function caseOnly(analyte: Analyte, written: string): string | null {
  const plain = written.trim().toLowerCase();
  const alike = acceptedUnits(analyte).find((code) => code.toLowerCase() === plain);
  return alike === undefined ? null : `If the report means ${alike}, write it so.`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
