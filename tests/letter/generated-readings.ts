// Nothing arrives; interpretations of many generated reports leave, the same every time, wide enough to raise every code.
import { type Interpretation, interpret } from '../../src/interpret/index.js';
import type { Context, LabFlag, Patient } from '../../src/report/report.js';
import { type Analyte, bleedings, conditions, medicines, symptoms } from '../../src/terms.js';
import { type Given, panelOf, reportOf, today, type Values } from '../interpret/build.js';

/** Spans wide enough to cross every limit, in our units, and how often the test is there. */
const spans: readonly (readonly [Analyte, from: number, to: number, often: number])[] = [
  ['haemoglobin', 40, 215, 0.95],
  ['ferritin', 1, 400, 0.9],
  ['transferrin-saturation', 2, 90, 0.3],
  ['serum-iron', 1, 60, 0.7],
  ['transferrin', 1, 5, 0.5],
  ['tibc', 25, 110, 0.3],
  ['mcv', 55, 115, 0.8],
  ['mch', 18, 38, 0.3],
  ['rbc', 2.5, 7, 0.5],
  ['haematocrit', 0.2, 0.65, 0.3],
  ['crp', 0.5, 40, 0.6],
  ['stfr', 0.5, 9, 0.3],
  ['reticulocyte-haemoglobin', 18, 38, 0.3],
];

/** mulberry32: a short generator whose numbers are the same on every machine. */
function dice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export function* readings(count: number): Generator<Interpretation> {
  const roll = dice(20261125);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(roll() * list.length)] as T;
  const often = (share: number) => roll() < share;
  const some = <T>(list: readonly T[], share: number): readonly T[] =>
    often(share) ? [pick(list), pick(list)] : [];
  const given = (analyte: Analyte, from: number, to: number): Given => {
    const steep = analyte === 'ferritin' && often(0.2) ? 40 : 1;
    const value = Number((steep * (from + roll() * (to - from))).toFixed(2));
    if (often(0.4)) return value;
    const low = from + 0.2 * (to - from);
    return {
      value: often(0.1) ? low : value,
      ...(often(0.8) ? { low, high: from + 0.6 * (to - from) } : {}),
      ...(often(0.06) ? { comparator: pick(['<', '>'] as const) } : {}),
      ...(often(0.2) ? { labFlag: pick<LabFlag>(['N', 'L', 'H', 'LL', 'HH', 'LU', 'A']) } : {}),
      ...(often(0.05) ? { doubt: pick(['unit', 'value'] as const) } : {}),
      ...(often(0.03) ? { preliminary: true } : {}),
    };
  };
  const values = (): Values =>
    Object.fromEntries(
      spans.flatMap(([analyte, from, to, share]) =>
        often(share) ? [[analyte, given(analyte, from, to)]] : [],
      ),
    );
  const patient = (): Partial<Patient> => {
    const [sex, ageMonths] = [pick(['female', 'male', 'unknown'] as const), pick(ages)];
    const stage = roll();
    const weeks = pick([null, 8, 20, 36]);
    const trimester = weeks === null ? null : weeks < 13 ? 1 : weeks < 28 ? 2 : 3;
    return {
      sex: stage < 0.3 ? 'female' : sex,
      ageMonths: stage < 0.3 ? 360 : ageMonths,
      pregnancy: stage < 0.2 ? { weeks, trimester } : null,
      afterBirthWeeks: stage >= 0.2 && stage < 0.3 ? 3 : null,
      menstruating: pick([true, false, null]),
      altitudeMetres: often(0.2) ? roll() * 5500 : null,
      cigarettesPerDay: often(0.2) ? Math.floor(roll() * 40) : null,
      conditions: some(conditions, 0.5),
      medicines: some(medicines, 0.5),
    };
  };
  const context = (): Partial<Context> => ({
    symptoms: some(symptoms, 0.4),
    bleeding: some(bleedings, 0.3),
    ironTabletHoursBefore: often(0.15) ? Math.ceil(roll() * 30) : null,
    ironInjectionDaysBefore: often(0.15) ? Math.ceil(roll() * 40) : null,
    transfusionDaysBefore: often(0.15) ? Math.floor(roll() * 4) : null,
    fasting: pick([true, false, null]),
  });
  for (let made = 0; made < count; made += 1) {
    const previous = often(0.4)
      ? [panelOf(values(), pick(['2026-11-05', '2026-10-25', '2026-09-30']))]
      : [];
    const collected = often(0.1) ? '2026-03-01' : '2026-11-16';
    const report = reportOf(values(), { patient: patient(), context: context(), previous });
    yield interpret({ ...report, panel: { ...report.panel, collected } }, today);
  }
}

const ages = [3, 10, 40, 100, 160, 240, 480, 660, 780, 900, null] as const;
