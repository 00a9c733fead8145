// Values and the usual range arrive; where a linear scale begins and ends leaves.

/** Ends of a linear scale, in the unit of the values; `from` is never below zero. */
export type Scale = { readonly from: number; readonly to: number };

/**
 * A scale in which distances can be trusted: it covers every value with a tenth to spare and shows, on both
 * sides, at least half as much as the usual range is wide. So a value just outside lies just outside, and a
 * value far outside lies far outside; 26,000 beside 30 to 400 leaves the range a sliver, which is the truth.
 * It stays linear: on a logarithmic line equal steps look like equal amounts to most readers.
 * Source: covering the value with a tenth to spare and not cutting the scale are the project's own rules.
 * @example scaleFor([118], 120, 160) // { from: 100, to: 180 }
 */
export function scaleFor(
  values: readonly number[],
  low: number | null,
  high: number | null,
): Scale {
  const limits = [low, high].filter((limit) => limit !== null);
  const least = Math.min(...values, ...limits);
  const most = Math.max(...values, ...limits);
  const spread = low !== null && high !== null ? high - low : (limits[0] ?? most);
  const side = spread / 2;
  const from = Math.max(0, Math.min((low ?? high ?? least) - side, Math.min(...values) * 0.9));
  const to = Math.max((high ?? low ?? most) + side, Math.max(...values) * 1.1);
  return to > from ? { from, to } : { from: 0, to: from + 1 };
}
