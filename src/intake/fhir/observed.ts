// One measurement of an Observation arrives (itself or a component); a written result leaves, or a problem or a note.
import { readUnit } from '../../knowledge/units.js';
import type { Place, Problem } from '../../problem.js';
import { fault } from '../fault.js';
import { markAmong } from '../mark-among-codes.js';
import { saysNoResult } from '../no-result.js';
import { readNumberAsWritten } from '../number-as-written.js';
import type { WrittenPatient, WrittenResult } from '../written.js';
import { rangeFor } from './range.js';
import type { Concept, Measured } from './resources.js';
import { testOf } from './test-of.js';

export type Around = {
  readonly place: Place;
  readonly status: string | null;
  readonly specimen: string | null;
  readonly patient: WrittenPatient;
  /** ISO day of the sample. */
  readonly day: string | null;
};

/** Problems: codes and names that disagree, a value that is no number, two comparators. */
export function observed(
  measured: Measured,
  { place, status, specimen, patient, day }: Around,
  problems: Problem[],
  notes: Problem[],
): WrittenResult | null {
  const quantity = measured.valueQuantity;
  const { unit, contradicted } = unitOf(quantity);
  const { which, name } = testOf(measured.code, unit, specimen);
  const value = writtenValue(measured);
  if (which.is === 'question' || (which.is === 'unknown' && which.near !== null)) {
    const asked = which.is === 'question';
    problems.push(
      fault('which-test', place, asked ? which.cannot : 'cannot tell which test this is', {
        found: asked ? which.found : name,
        expected: asked ? which.expected : 'a name this program knows',
        remedy: asked ? null : `Did you mean '${which.near}'?`,
      }),
    );
    return null;
  }
  if (which.is !== 'analyte') {
    if (value === null) return null;
    const what =
      which.is === 'other'
        ? (which.what ?? 'a test this program does not explain')
        : 'a test whose name is not known';
    notes.push(
      fault('passed-over', place, `passed over: ${what}`, { found: name === '' ? null : name }),
    );
    return null;
  }
  const here = {
    ...place,
    field: place.field === null ? which.analyte : `${place.field} (${which.analyte})`,
  };
  if (measured.dataAbsentReason !== undefined || value === null || saysNoResult(value)) {
    notes.push(
      fault('no-value', here, 'cannot find a value; the test was passed over', {
        found: wordOf(measured.dataAbsentReason),
      }),
    );
    return null;
  }
  if (contradicted !== null) {
    const more = { found: contradicted, expected: 'one unit' };
    problems.push(fault('two-units', here, 'cannot tell which of two units holds', more));
    return null;
  }
  const read = readNumberAsWritten(value);
  const spoken = quantity?.comparator ?? null;
  if (spoken !== null && !comparators.has(spoken)) {
    const more = { found: spoken, expected: `one of ${[...comparators].join(' ')}` };
    problems.push(fault('bad-comparator', here, 'cannot read what stands before the value', more));
    return null;
  }
  if (!read.ok || (spoken !== null && read.comparator !== null && spoken !== read.comparator)) {
    const cannot = read.ok ? 'cannot tell which comparator holds' : read.cannot;
    problems.push(
      fault('bad-value', here, cannot, {
        found: value,
        expected: read.ok ? 'one comparator' : read.expected,
      }),
    );
    return null;
  }
  const { interval, why } = rangeFor(measured.referenceRange ?? [], patient, day, unit);
  if (why !== null) notes.push(fault('interval-open', here, `${why}; none was taken`));
  return {
    place: here,
    analyte: which.analyte,
    name: name === '' ? which.analyte : name,
    value: read.value,
    comparator: read.comparator ?? spoken,
    unit,
    interval,
    labFlag: flagOf(measured.interpretation ?? []),
    status,
    confirmed: false,
  };
}

/** https://hl7.org/fhir/R4/valueset-quantity-comparator.html */
const comparators: ReadonlySet<string> = new Set(['<', '<=', '>=', '>']);

/** The unit as printed; its code where no table has the printed one. They must not be two units. */
function unitOf(quantity: Measured['valueQuantity']): {
  readonly unit: string | null;
  readonly contradicted: string | null;
} {
  const [printed = null, code = null] = [quantity?.unit, quantity?.code];
  if (printed === null || code === null) return { unit: printed ?? code, contradicted: null };
  const [a, b] = [readUnit(printed), readUnit(code)];
  if (a !== null && b !== null && a !== b)
    return { unit: printed, contradicted: `${printed} and ${code}` };
  return { unit: a === null && b !== null ? code : printed, contradicted: null };
}

function writtenValue(measured: Measured): string | null {
  const { valueQuantity, valueString, valueInteger, valueCodeableConcept } = measured;
  const value = valueQuantity?.value ?? valueString ?? valueInteger;
  return value === undefined ? wordOf(valueCodeableConcept) : String(value).trim();
}

function wordOf(concept: Concept | undefined): string | null {
  const coding = concept?.coding?.[0];
  return concept?.text ?? coding?.display ?? coding?.code ?? null;
}

function flagOf(concepts: readonly Concept[]): string | null {
  return markAmong(concepts.flatMap(({ coding = [], text }) => coding[0]?.code ?? text ?? []));
}
