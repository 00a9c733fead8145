// The reference ranges of an observation arrive; the one for this person leaves, or null where it cannot be told.
import { readUnit } from '../../knowledge/units.js';
import { readInterval } from '../interval-as-written.js';
import type { WrittenInterval, WrittenPatient } from '../written.js';
import { ageOn, type AgeUnit } from './age-on.js';
import type { Concept, FhirRange } from './resources.js';

export type RangeFor = {
  readonly interval: WrittenInterval | null;
  /** Why the observation has ranges and none was taken; null where one was, or there is none. */
  readonly why: string | null;
};

/**
 * The only usual range whose sex and age fit. A range for people this program cannot tell the person to be one of, or
 * for an age where the person's is not known, is taken for nobody.
 * @param day ISO day of the sample.
 * @example rangeFor([{ low: { value: '30' }, high: { value: '400' } }], patient, '2026-11-20', 'ug/L')
 */
export function rangeFor(
  ranges: readonly FhirRange[],
  patient: WrittenPatient,
  day: string | null,
  unit: string | null,
): RangeFor {
  const usual = ranges.filter(
    ({ type }) => type === undefined || wordsOf([type]).some((word) => /normal/i.test(word)),
  );
  const answers = usual.map((range) =>
    both(fitsPeople(range, patient.sex), fitsAge(range, patient, day)),
  );
  const fitting = usual.filter((_, i) => answers[i] !== 'no');
  const [only] = fitting;
  if (only === undefined)
    return { interval: null, why: usual.length === 0 ? null : 'no interval is for this person' };
  if (fitting.length > 1)
    return { interval: null, why: 'cannot tell which of several intervals is for this person' };
  if (answers.includes('unknown'))
    return { interval: null, why: 'cannot tell whether the interval is for this person' };
  if (unit !== null && [only.low, only.high].some((end) => isOfAnotherUnit(end, unit)))
    return { interval: null, why: 'the interval is in another unit than the value' };
  return { interval: intervalOf(only, unit), why: null };
}

function intervalOf(range: FhirRange, unit: string | null): WrittenInterval | null {
  const printed = readInterval(range.text ?? null, unit);
  const [low, high] = [range.low?.value, range.high?.value].map((value) =>
    value === undefined ? null : String(value),
  );
  const ends = { low: low ?? printed?.low ?? null, high: high ?? printed?.high ?? null };
  const text = printed?.text ?? null;
  const empty = ends.low === null && ends.high === null && text === null;
  return empty ? null : { ...ends, text };
}

/** An end without a unit is in that of the value. */
function isOfAnotherUnit(end: FhirRange['low'], unit: string): boolean {
  const own = end?.unit ?? end?.code;
  return own !== undefined && own !== unit && (readUnit(own) ?? own) !== (readUnit(unit) ?? unit);
}

type Fits = 'yes' | 'no' | 'unknown';

function both(one: Fits, other: Fits): Fits {
  if (one === 'no' || other === 'no') return 'no';
  return one === 'unknown' ? one : other;
}

const people: readonly (readonly [RegExp, string | null])[] = [
  [/^(?:adult\s+)?(?:females?|f|wom[ae]n|248152002)$/i, 'female'],
  [/^(?:adult\s+)?(?:males?|m|m[ae]n|248153007)$/i, 'male'],
  [/^(?:adults?|everyone|all|both|any)$/i, null],
];

/** `appliesTo` names a sex, or people of another kind: pregnant, of one descent, of one phase. */
function fitsPeople(range: FhirRange, sex: string | null): Fits {
  const answers = (range.appliesTo ?? []).map((concept): Fits => {
    const known = wordsOf([concept]).flatMap((word) => {
      const row = people.find(([shape]) => shape.test(word.trim()));
      return row === undefined ? [] : [row[1]];
    });
    const [wanted] = known;
    if (wanted === undefined) return 'unknown';
    if (wanted === null) return 'yes';
    if (sex !== 'female' && sex !== 'male') return 'unknown';
    return wanted === sex ? 'yes' : 'no';
  });
  return answers.reduce(both, 'yes');
}

const ageUnits: readonly (readonly [RegExp, AgeUnit])[] = [
  [/^(?:a|y|yrs?|years?)$/i, 'years'],
  [/^(?:mo|mths?|months?)$/i, 'months'],
  [/^(?:wks?|weeks?)$/i, 'weeks'],
  [/^(?:d|days?)$/i, 'days'],
];

function fitsAge({ age }: FhirRange, { birthDate }: WrittenPatient, day: string | null): Fits {
  if (age?.low?.value === undefined && age?.high?.value === undefined) return 'yes';
  if (birthDate === null || day === null) return 'unknown';
  const side = (
    end: NonNullable<typeof age>['low'],
    fits: (age: number, end: number) => boolean,
  ) => {
    if (end?.value === undefined) return 'yes';
    const unit = ageUnits.find(([shape]) => shape.test(end.code ?? end.unit ?? ''))?.[1];
    const [old, limit] = [unit && ageOn(birthDate, day, unit), Number(end.value)];
    if (old === undefined || old === null || Number.isNaN(limit)) return 'unknown';
    return fits(old, limit) ? 'yes' : 'no';
  };
  return both(
    side(age.low, (old, low) => old >= low),
    side(age.high, (old, high) => old <= high),
  );
}

function wordsOf(concepts: readonly Concept[]): readonly string[] {
  return concepts.flatMap(({ text, coding = [] }) =>
    [text, ...coding.flatMap(({ code, display }) => [code, display])].flatMap((word) => word ?? []),
  );
}
