// One OBX segment arrives; a written result leaves, or a problem, or a note why it was passed over.
import type { Place, Problem } from '../../problem.js';
import { fault } from '../fault.js';
import { readInterval } from '../interval-as-written.js';
import { markAmong } from '../mark-among-codes.js';
import { saysNoResult } from '../no-result.js';
import { readNumberAsWritten } from '../number-as-written.js';
import {
  saysPregnancy,
  saysPregnancyWeeks,
  saysYes,
  weeksOfPregnancy,
} from '../pregnancy-as-written.js';
import { whichAnalyte } from '../which-analyte.js';
import type { WrittenResult } from '../written.js';
import {
  component,
  decodeEscapes,
  field,
  type Message,
  partOf,
  repetitions,
  type Segment,
} from './segments.js';

export type Observed =
  | { readonly is: 'result'; readonly result: WrittenResult }
  | { readonly is: 'problem'; readonly problem: Problem }
  /** Weeks are null where the message says only that there is a pregnancy. */
  | { readonly is: 'pregnancy'; readonly weeks: number | null }
  | { readonly is: 'ignored'; readonly note: Problem };

/** HL7 table 0085, OBX-11. Letters not here mean a result that stands. */
const noResult: Readonly<Record<string, string>> = {
  X: 'the laboratory could not obtain a result',
  W: 'the result was withdrawn as wrong',
  D: 'the laboratory deleted this result',
  I: 'the specimen waits for its result',
  O: 'only an order, without a result',
};
const statuses: Readonly<Record<string, string>> = {
  P: 'preliminary',
  R: 'preliminary',
  S: 'preliminary',
  C: 'corrected',
  F: 'final',
};

/**
 * Reads an OBX: which test (OBX-3), value (OBX-5 by its type OBX-2), unit, interval, flags, status.
 * Problems: a contradiction between code, name and unit, or a value that is no number.
 */
export function observed(
  message: Message,
  obx: Segment,
  file: string,
  specimen: string | null,
): Observed {
  const place: Place = { file, row: obx.row, field: 'OBX-5' };
  if (field(obx, 3) === '') return ignored({ ...place, field: 'OBX-3' }, unnamed, null);
  const name = component(message, obx, 3, 2) ?? component(message, obx, 3, 5) ?? '';
  const code = codeOf(message, obx);
  const unit = component(message, obx, 6, 1) ?? component(message, obx, 6, 2);
  if (saysPregnancyWeeks(name)) return pregnancyIn(message, obx, place);
  if (saysPregnancy(name) && noResult[field(obx, 11).trim()] === undefined)
    if (saysYes(writtenValue(message, obx))) return { is: 'pregnancy', weeks: null };
  const which = whichAnalyte({ name, code, unit, specimen });
  if (which.is === 'unknown' && which.near !== null) {
    const problem = fault(
      'unknown-test',
      { ...place, field: 'OBX-3' },
      'cannot tell which test this is',
      {
        found: name,
        expected: 'a name this program knows',
        remedy: `Did you mean '${which.near}'?`,
      },
    );
    return { is: 'problem', problem };
  }
  if (which.is === 'other' || which.is === 'unknown') {
    const what =
      which.is === 'other' ? (which.what ?? 'a test this program does not explain') : null;
    const why = what === null ? unnamed : `passed over: ${what}`;
    return ignored({ ...place, field: 'OBX-3' }, why, name === '' ? code : name);
  }
  const letter = field(obx, 11).trim();
  const gone = noResult[letter];
  if (gone !== undefined) return ignored(place, `passed over: ${gone}`, name);
  if (which.is === 'question') {
    const { cannot, found, expected } = which;
    return {
      is: 'problem',
      problem: fault('which-test', { ...place, field: 'OBX-3' }, cannot, { found, expected }),
    };
  }
  const here: Place = { file, row: obx.row, field: which.analyte };
  const written = writtenValue(message, obx);
  if (saysNoResult(written ?? ''))
    return ignored(here, 'cannot find a value; the test was passed over', written);
  const number = readNumberAsWritten(written ?? '');
  if (!number.ok || repetitions(message, obx, 5).length > 1) {
    const cannot = number.ok ? 'cannot tell which of several values holds' : number.cannot;
    const expected = number.ok ? 'one value' : number.expected;
    return {
      is: 'problem',
      problem: fault('bad-value', here, cannot, { found: written, expected }),
    };
  }
  const result: WrittenResult = {
    place: here,
    analyte: which.analyte,
    name: name === '' ? which.analyte : name,
    value: number.value,
    comparator: number.comparator,
    unit,
    interval: readInterval(printedInterval(message, obx), unit),
    labFlag: flagOf(message, obx),
    status: statuses[letter] ?? null,
    confirmed: false,
  };
  return { is: 'result', result };
}

const unnamed = 'passed over: a test whose name is not known';

/** Limits in pregnancy differ: weeks that cannot be read are a question, not a line to pass over. */
function pregnancyIn(message: Message, obx: Segment, place: Place): Observed {
  const letter = field(obx, 11).trim();
  const gone = noResult[letter];
  if (gone !== undefined) return ignored(place, `passed over: ${gone}`, null);
  const written = writtenValue(message, obx) ?? '';
  const weeks = weeksOfPregnancy(written, component(message, obx, 6, 1));
  if (weeks !== null) return { is: 'pregnancy', weeks };
  const more = { found: written, expected: 'whole weeks such as 20, with weeks as the unit' };
  return { is: 'problem', problem: fault('bad-pregnancy', place, 'cannot read the weeks', more) };
}

/** LOINC stands in the first or the alternate triplet, with LN as its coding system. */
function codeOf(message: Message, obx: Segment): string | null {
  if (component(message, obx, 3, 3) === 'LN') return component(message, obx, 3, 1);
  return component(message, obx, 3, 6) === 'LN' ? component(message, obx, 3, 4) : null;
}

/** HL7 v2.5.1 section 2.A.66, SN.1; anything else there must not be glued to the number. */
const structuredSigns: ReadonlySet<string> = new Set(['', '=', '<', '<=', '>', '>=', '<>']);

/** SN is comparator^number^separator^number; a range or a ratio is no single value. */
function writtenValue(message: Message, obx: Segment): string | null {
  const [first = ''] = repetitions(message, obx, 5);
  const type = field(obx, 2).trim();
  if (type === 'SN') {
    const [sign, one, between, two] = [1, 2, 3, 4].map(
      (part) => partOf(message, first, part) ?? '',
    );
    if (!structuredSigns.has(sign ?? '')) return `${sign} ${one}`;
    return `${sign === '=' ? '' : sign}${one}${between}${two}`;
  }
  if (type === 'CE' || type === 'CWE')
    return partOf(message, first, 2) ?? partOf(message, first, 1);
  return partOf(message, first, 1);
}

/** OBX-7 is one text; parts of it would be another interval than the laboratory printed. */
function printedInterval({ separators }: Message, obx: Segment): string | null {
  const text = decodeEscapes(field(obx, 7), separators).trim();
  return text === '' || text === '""' ? null : text;
}

/** OBX-8 repeats. */
function flagOf(message: Message, obx: Segment): string | null {
  return markAmong(repetitions(message, obx, 8).flatMap((one) => partOf(message, one, 1) ?? []));
}

function ignored(place: Place, cannot: string, found: string | null): Observed {
  return { is: 'ignored', note: fault('passed-over', place, cannot, { found }) };
}
