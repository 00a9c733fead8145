// In: a reading. Out: flags of the iron tests read together.
import { holdRules } from '../../knowledge/follow-up.js';
import { limit } from '../../knowledge/limit.js';
import { saturationFrom } from '../derive.js';
import type { FlagRaised } from '../interpretation.js';
import { above } from '../measure.js';
import { bowelPathway } from '../pathway.js';
import type { Reading } from '../reading.js';
import { mentzer } from '../index-of-cells.js';
import { raise } from './raise.js';

/** Flags of saturation, small cells, ferritin and the bowel pathway. */
export function ironFlags(reading: Reading): readonly FlagRaised[] {
  return [
    ...printedDiffers(reading),
    ...notComputed(reading),
    ...smallCells(reading),
    ...highSaturationAnaemia(reading),
    ...referralFerritin(reading),
    ...bowelPathway(reading).map(({ facts, rules }) =>
      raise('bowel-check-pathway', { facts, rules }),
    ),
  ];
}

/** The laboratory's saturation against the one computed: both more points and a larger share than the rows allow. */
function printedDiffers({ person }: Reading): readonly FlagRaised[] {
  const printed = person.sure.get('transferrin-saturation')?.quantity;
  const found = saturationFrom(person.sure);
  if (printed === undefined || printed.comparator !== null || found?.kind !== 'computed') return [];
  const [points, share] = [limit('saturation-differs-points'), limit('saturation-differs-share')];
  const gap = Math.abs(printed.value - found.value);
  if (gap <= points.value || (100 * gap) / found.value <= share.value) return [];
  const facts = { printed: printed.value, computed: Math.round(found.value * 10) / 10 };
  const rules = [points.id, share.id, ...found.rules];
  return [raise('tsat-printed-differs', { analyte: 'transferrin-saturation', facts, rules })];
}

function notComputed({ computed, person }: Reading): readonly FlagRaised[] {
  if (computed?.kind !== 'not-computed' || person.all.has('transferrin-saturation')) return [];
  const facts = { why: computed.why };
  return [
    raise('tsat-not-computed', { analyte: 'transferrin-saturation', facts, rules: computed.rules }),
  ];
}

/** Cells smaller than the haemoglobin explains: haemoglobin not low, many red cells, or a low Mentzer index. */
function smallCells({ person, read, results }: Reading): readonly FlagRaised[] {
  if (read.levels.mcv !== 'low') return [];
  const index = mentzer(person);
  const cells = results.find(({ analyte }) => analyte === 'rbc')?.level;
  const { haemoglobin } = read.levels;
  const odd =
    haemoglobin === 'usual' || haemoglobin === 'high' || cells === 'high' || index?.low === true;
  if (!odd) return [];
  const facts = index === null ? {} : { mentzer: index.value };
  const rules = index?.rules ?? [];
  return [raise('microcytosis-out-of-proportion', { analyte: 'mcv', facts, rules })];
}

function highSaturationAnaemia({ read }: Reading): readonly FlagRaised[] {
  const { haemoglobin } = read.levels;
  return haemoglobin === 'low' && read.saturation?.level === 'high'
    ? [raise('anaemia-with-high-tsat', { rules: read.saturation.rules })]
    : [];
}

function referralFerritin({ person }: Reading): readonly FlagRaised[] {
  const row = holdRules.find(({ code }) => code === 'ferritin-above-referral-limit');
  const ferritin = person.all.get('ferritin')?.quantity;
  // Stryker disable next-line ConditionalExpression: the row is in the table; where it is not, nothing can be flagged.
  if (row === undefined) return [];
  if (ferritin === undefined) return [];
  if (above(ferritin, row.value) !== 'yes') return [];
  const facts = { ferritin: ferritin.value };
  return [raise('ferritin-above-referral-limit', { analyte: 'ferritin', facts, rules: [row.id] })];
}
