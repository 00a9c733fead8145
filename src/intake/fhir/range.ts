// The reference ranges of an observation arrive; the one for this person leaves, or null where it cannot be told.
import { readInterval } from '../interval-as-written.js';
import type { WrittenInterval, WrittenPatient } from '../written.js';
import type { Concept, FhirRange } from './resources.js';

/**
 * The only range, or the only one whose sex fits. Ranges by age are taken only when they stand alone.
 * @example rangeFor([{ low: { value: '30' }, high: { value: '400' } }], patient, 'ug/L')
 */
export function rangeFor(
  ranges: readonly FhirRange[],
  patient: WrittenPatient,
  unit: string | null,
): { readonly interval: WrittenInterval | null; readonly several: boolean } {
  const usual = ranges.filter(
    ({ type }) => type === undefined || wordsOf([type]).some((word) => /normal/i.test(word)),
  );
  const fitting = usual.filter((range) => fitsSex(range, patient.sex));
  const [only] = fitting;
  if (only === undefined || fitting.length > 1)
    return { interval: null, several: fitting.length > 1 };
  const printed = readInterval(only.text ?? null, unit);
  const [low, high] = [only.low?.value, only.high?.value].map((value) =>
    value === undefined ? null : String(value),
  );
  const ends = { low: low ?? printed?.low ?? null, high: high ?? printed?.high ?? null };
  const text = printed?.text ?? null;
  const empty = ends.low === null && ends.high === null && text === null;
  return { interval: empty ? null : { ...ends, text }, several: false };
}

function fitsSex(range: FhirRange, sex: string | null): boolean {
  const words = wordsOf(range.appliesTo ?? []).map((word) => word.toLowerCase());
  const said = words.flatMap((word) => sexWords[word] ?? []);
  return said.length === 0 || (sex !== null && said.includes(sex));
}

const sexWords: Readonly<Record<string, string>> = {
  female: 'female',
  f: 'female',
  women: 'female',
  male: 'male',
  m: 'male',
  men: 'male',
};

function wordsOf(concepts: readonly Concept[]): readonly string[] {
  return concepts.flatMap(({ text, coding = [] }) =>
    [text, ...coding.flatMap(({ code, display }) => [code, display])].flatMap((word) => word ?? []),
  );
}
