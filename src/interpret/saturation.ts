// In: a person and a saturation. Out: how it reads, low, borderline, usual or raised.
import { type SaturationRow, saturationLimits } from '../knowledge/cut-offs.js';
import type { Quantity } from '../report/report.js';
import type { Level } from '../terms.js';
import type { Group } from './group.js';
import { above, below } from './measure.js';

type SaturationReading =
  | 'transferrin-saturation-low'
  | 'transferrin-saturation-borderline'
  | 'transferrin-saturation-usual'
  | 'transferrin-saturation-high'
  | 'comparator-undecided';

export type SaturationRead = {
  readonly reading: SaturationReading;
  readonly level: Level;
  readonly rules: readonly string[];
};

/** The cut-off of one role for the group; the row of the sex, or the only one. */
export function saturationLimit(group: Group, role: SaturationRow['role']): SaturationRow {
  const rows = saturationLimits.filter((row) => row.role === role);
  const row = rows.find(({ sex }) => sex === group.sex) ?? rows[0];
  // Stryker disable next-line all: every role has a row for any sex, so only a broken table comes here.
  if (row === undefined) throw new Error(`knowledge: no saturation limit ${role}`);
  return row;
}

/**
 * Saturation in per cent: under 16 low, 16 to under 20 borderline, over 45 (women) or 50 (men) raised.
 * Sources: Anemia 2016:6430214, Table 1; EASL 2022; rows in src/knowledge/saturation-limits.json.
 * @example readSaturation(men, quantity(19.6)).reading // 'transferrin-saturation-borderline'
 */
export function readSaturation(group: Group, quantity: Quantity): SaturationRead {
  const low = saturationLimit(group, 'low');
  const borderline = saturationLimit(group, 'borderline');
  const high = saturationLimit(group, 'high');
  const answers = [
    below(quantity, low.value),
    below(quantity, borderline.value),
    above(quantity, high.value),
  ] as const;
  if (answers[0] === 'yes')
    return { reading: 'transferrin-saturation-low', level: 'low', rules: [low.id] };
  if (answers[2] === 'yes')
    return { reading: 'transferrin-saturation-high', level: 'high', rules: [high.id] };
  if (answers.includes('undecided'))
    return {
      reading: 'comparator-undecided',
      level: 'not-measured',
      rules: [low.id, borderline.id, high.id],
    };
  if (answers[1] === 'yes')
    return {
      reading: 'transferrin-saturation-borderline',
      level: 'usual',
      rules: [low.id, borderline.id],
    };
  return {
    reading: 'transferrin-saturation-usual',
    level: 'usual',
    rules: [borderline.id, high.id],
  };
}
