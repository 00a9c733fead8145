// In: a person with results. Out: saturation computed from iron and its carriers, or why it is not.
import { limit } from '../knowledge/limit.js';
import type { Result } from '../report/report.js';
import type { Analyte } from '../terms.js';
import { above } from './measure.js';
import type { Person } from './person.js';

export type Computed = {
  readonly kind: 'computed';
  /** Per cent, exact. */
  readonly value: number;
  /** umol/L. */
  readonly iron: number;
  /** umol/L. */
  readonly tibc: number;
  readonly from: readonly Analyte[];
  /** The row that gave the binding capacity, or the identity where it was measured. */
  readonly rule: string;
  readonly rules: readonly string[];
};
export type NotComputed = {
  readonly kind: 'not-computed';
  readonly why: 'ferritin-too-high' | 'iron-injection' | 'comparator';
  readonly rules: readonly string[];
};

/**
 * Saturation = 100 x iron / TIBC, per cent; TIBC as printed, else iron + UIBC, else 25.1 x transferrin (g/L).
 * Null when a part is missing or doubtful; not computed after an injection or with ferritin over 1200 ug/L.
 * @example computeSaturation(person) // iron 20 umol/L, transferrin 2.3 g/L: 34.6 %
 */
export function computeSaturation(person: Person): Computed | NotComputed | null {
  const computed = saturationFrom(person.sure);
  if (computed === null || computed.kind === 'not-computed') return computed;
  const tooHigh = limit('saturation-not-computed-ferritin');
  const ferritin = person.all.get('ferritin');
  if (ferritin !== undefined && above(ferritin.quantity, tooHigh.value) === 'yes')
    return { kind: 'not-computed', why: 'ferritin-too-high', rules: [tooHigh.id] };
  const recent = limit('iron-injection-days');
  const days = person.context.ironInjectionDaysBefore;
  if (days !== null && days <= recent.value)
    return { kind: 'not-computed', why: 'iron-injection', rules: [recent.id] };
  return computed;
}

/** The arithmetic alone, for whatever results are given. */
export function saturationFrom(
  results: ReadonlyMap<Analyte, Result>,
): Computed | NotComputed | null {
  const iron = results.get('serum-iron');
  const carriers = bindingCapacity(results);
  if (iron === undefined || carriers === null) return null;
  const parts = [iron, ...carriers.parts];
  if (parts.some(({ quantity }) => quantity.comparator !== null))
    return { kind: 'not-computed', why: 'comparator', rules: [] };
  const identity = limit('saturation-identity');
  const ironValue = iron.quantity.value;
  const tibc = carriers.value(ironValue);
  if (tibc <= 0) return null;
  return {
    kind: 'computed',
    value: (identity.value * ironValue) / tibc,
    iron: ironValue,
    tibc,
    from: parts.map(({ analyte }) => analyte),
    rule: carriers.rule ?? identity.id,
    rules: carriers.rule === null ? [identity.id] : [identity.id, carriers.rule],
  };
}

type Carriers = {
  readonly parts: readonly Result[];
  readonly value: (iron: number) => number;
  readonly rule: string | null;
};

function bindingCapacity(results: ReadonlyMap<Analyte, Result>): Carriers | null {
  const tibc = results.get('tibc');
  if (tibc !== undefined) return { parts: [tibc], value: () => tibc.quantity.value, rule: null };
  const uibc = results.get('uibc');
  if (uibc !== undefined) {
    const sum = limit('tibc-from-uibc');
    return {
      parts: [uibc],
      value: (iron) => iron + sum.value * uibc.quantity.value,
      rule: sum.id,
    };
  }
  const transferrin = results.get('transferrin');
  if (transferrin === undefined) return null;
  const factor = limit('tibc-per-transferrin');
  return {
    parts: [transferrin],
    value: () => factor.value * transferrin.quantity.value,
    rule: factor.id,
  };
}
