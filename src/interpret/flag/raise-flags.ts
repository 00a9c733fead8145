// In: a reading, its panel, today. Out: every flag that blurs it, in the order of the closed list.
import type { Panel } from '../../report/report.js';
import { flags } from '../../terms.js';
import type { FlagRaised } from '../interpretation.js';
import type { Reading } from '../reading.js';
import { ironFlags } from './iron-flags.js';
import { missingFlags } from './missing-flags.js';
import { personFlags } from './person-flags.js';
import { resultFlags } from './result-flags.js';
import { sampleFlags } from './sample-flags.js';

/**
 * Flags of one or more readings of the same person; the same flag for the same test is raised once.
 * @example raiseFlags([reading], panel, '2026-11-20').map(({ flag }) => flag) // ['crp-not-measured', …]
 */
export function raiseFlags(
  readings: readonly Reading[],
  panel: Panel,
  today: string,
): readonly FlagRaised[] {
  const raised = readings.flatMap((reading) => [
    ...personFlags(reading),
    ...sampleFlags(reading, panel.collected, today),
    ...missingFlags(reading),
    ...resultFlags(reading, panel),
    ...ironFlags(reading),
  ]);
  const once = raised.filter(
    (one, at) =>
      raised.findIndex(
        (other) =>
          other.flag === one.flag &&
          other.analyte === one.analyte &&
          other.facts.tests === one.facts.tests,
      ) === at,
  );
  return once.sort((one, other) => flags.indexOf(one.flag) - flags.indexOf(other.flag));
}
