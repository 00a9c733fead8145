// In: a person with laid-out results. Out: the level of each test of the decision table, and finer readings.
import { limit } from '../knowledge/limit.js';
import type { TableTest } from '../knowledge/pattern-rules.js';
import type { Quantity } from '../report/report.js';
import type { Analyte, Level } from '../terms.js';
import { type FerritinRead, readFerritin } from './ferritin.js';
import { layBeside, usable } from './grade.js';
import { belowGuideline } from './haemoglobin.js';
import { above, type Answer, below, either } from './measure.js';
import type { Person } from './person.js';
import { levelOf } from './position.js';
import { readSaturation, type SaturationRead } from './saturation.js';
import { yardsticksFor } from './yardstick.js';

export type Levels = Readonly<Record<TableTest, Level>>;

/** What levels are made of, kept for the reasons given later. */
export type LevelsRead = {
  readonly levels: Levels;
  readonly ferritin: FerritinRead | null;
  readonly saturation: SaturationRead | null;
  /** Low late in pregnancy, where it is not used alone, or raised just after a transfusion. */
  readonly saturationSetAside: boolean;
};

/** A saturation that may decide: printed and sure, or computed. */
export type SaturationUsed = { readonly quantity: Quantity } | null;

/**
 * Levels by guideline cut-offs, by the laboratory's own interval where no cut-off decides.
 * Doubtful and undecided values count as not measured.
 * @example readLevels(person, saturation).levels.ferritin // 'low'
 */
export function readLevels(person: Person, saturation: SaturationUsed): LevelsRead {
  const haemoglobin = haemoglobinLevel(person);
  const ferritinResult = person.sure.get('ferritin');
  const ferritin =
    ferritinResult === undefined
      ? null
      : readFerritin(person, ferritinResult.quantity, usable(ferritinResult.interval), haemoglobin);
  const read = saturation === null ? null : readSaturation(person.group, saturation.quantity);
  const setAside = lateInPregnancy(person, read, ferritin) || afterTransfusion(person, read);
  return {
    levels: {
      haemoglobin,
      mcv: plainLevel(person, 'mcv'),
      'serum-iron': plainLevel(person, 'serum-iron'),
      transferrin: carriersLevel(person),
      'transferrin-saturation': setAside ? 'not-measured' : (read?.level ?? 'not-measured'),
      ferritin: ferritin?.level ?? 'not-measured',
      crp: crpLevel(person),
    },
    ferritin,
    saturation: read,
    saturationSetAside: setAside,
  };
}

function lateInPregnancy(
  { group }: Person,
  read: SaturationRead | null,
  ferritin: FerritinRead | null,
): boolean {
  const last = group.slug === 'pregnant-trimester-3';
  return last && read?.level === 'low' && ferritin?.level !== 'low';
}

/** Given blood brings its own iron for a day or two. */
function afterTransfusion({ context }: Person, read: SaturationRead | null): boolean {
  const days = context.transfusionDaysBefore;
  return days !== null && days <= limit('transfusion-days').value && read?.level === 'high';
}

/**
 * Low when the guideline says so or, for an adult, when the laboratory does; a laboratory's adult
 * interval does not decide for children, in pregnancy or after birth.
 */
function haemoglobinLevel(person: Person): Level {
  const result = person.sure.get('haemoglobin');
  if (result === undefined) return 'not-measured';
  const { quantity } = result;
  const own = usable(result.interval);
  const guideline = belowGuideline(person, quantity);
  const laboratory: Answer | null =
    own === null || own.low === null ? null : below(quantity, own.low);
  const trusted = person.group.kind === 'adult' || guideline === null ? laboratory : null;
  const answers = [guideline, trusted].filter((answer) => answer !== null);
  if (answers.length === 0) return 'not-measured';
  const low = either(...answers);
  if (low !== 'no') return low === 'yes' ? 'low' : 'not-measured';
  const top = own?.high ?? yardsticksFor(person, 'haemoglobin')[0]?.high ?? null;
  if (top === null) return 'usual';
  const high = above(quantity, top);
  if (high === 'undecided') return 'not-measured';
  return high === 'yes' ? 'high' : 'usual';
}

export function plainLevel(person: Person, analyte: Analyte): Level {
  const result = person.sure.get(analyte);
  if (result === undefined) return 'not-measured';
  return levelOf(layBeside(person, analyte, result.quantity, result.interval).position);
}

/** Transferrin itself, else TIBC, which measures the same carriers. */
function carriersLevel(person: Person): Level {
  const transferrin = plainLevel(person, 'transferrin');
  return transferrin === 'not-measured' ? plainLevel(person, 'tibc') : transferrin;
}

function crpLevel({ inflammation }: Person): Level {
  if (inflammation === 'not-measured') return 'not-measured';
  return inflammation === 'raised' ? 'high' : 'usual';
}
