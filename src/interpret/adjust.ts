// In: altitude and smoking as told. Out: what to add to a WHO haemoglobin limit, with its rows.
import { altitudes, smokings } from '../knowledge/groups.js';
import type { Patient } from '../report/report.js';

export type Adjustment = {
  /** g/L to add to a WHO limit; null where the table ends and nothing may be extrapolated. */
  readonly altitude: { readonly add: number | null; readonly rules: readonly string[] };
  readonly smoking: { readonly add: number; readonly rules: readonly string[] };
};

const nothing = { add: 0, rules: [] } as const;

/**
 * What height above the sea and cigarettes add to a WHO limit, g/L. Never for a laboratory's own interval.
 * Source: WHO 2024 haemoglobin guideline, Tables 4 and 5.
 * @example adjustmentFor({ …, altitudeMetres: 2600, cigarettesPerDay: 10 }) // altitude 18, smoking 5
 */
export function adjustmentFor(patient: Patient): Adjustment {
  return { altitude: forAltitude(patient), smoking: forSmoking(patient) };
}

/** Rows stand in rising order: the first that ends above the place is the one. */
function forAltitude({ altitudeMetres: metres }: Patient): Adjustment['altitude'] {
  if (metres === null || metres < 0) return nothing;
  const row = altitudes.find(({ belowMetres }) => metres < belowMetres);
  return row === undefined ? { add: null, rules: [] } : { add: row.value, rules: [row.id] };
}

function forSmoking({ cigarettesPerDay: daily }: Patient): Adjustment['smoking'] {
  if (daily === null) return nothing;
  const row = smokings.find((one) =>
    daily === 'unknown-amount'
      ? one.fromCigarettes === null
      : one.belowCigarettes === null || daily < one.belowCigarettes,
  );
  // Stryker disable next-line ConditionalExpression: every amount has its row.
  return row === undefined ? nothing : { add: row.value, rules: [row.id] };
}

/** Sum in g/L, or null where the altitude lies beyond the table. */
export function totalAdjustment({ altitude, smoking }: Adjustment): number | null {
  return altitude.add === null ? null : altitude.add + smoking.add;
}
