// In: a person and an analyte. Out: the guideline intervals that apply, the deciding one first.
import { type UsualIntervalRow, usualIntervals } from '../knowledge/cut-offs.js';
import { limit } from '../knowledge/limit.js';
import type { Row } from '../knowledge/row.js';
import type { Analyte } from '../terms.js';
import { ferritinLimit, guidelineFerritinHigh } from './ferritin.js';
import { haemoglobinLimitsFor } from './haemoglobin.js';
import type { Person } from './person.js';
import { saturationLimit } from './saturation.js';

/** A guideline's limits in our unit; `rules[0]` names it, further rows stand behind the other side. */
export type Yardstick = {
  readonly low: number | null;
  readonly high: number | null;
  readonly source: string;
  readonly rules: readonly string[];
};

/**
 * Guideline intervals for one analyte and person.
 * @example yardsticksFor(woman, 'haemoglobin')[0] // { low: 120, high: 165, source: 'WHO 2024 …', … }
 */
export function yardsticksFor(person: Person, analyte: Analyte): readonly Yardstick[] {
  switch (analyte) {
    case 'haemoglobin':
      return haemoglobinYardsticks(person);
    case 'ferritin':
      return ferritinYardsticks(person);
    case 'transferrin-saturation': {
      const [low, high] = [
        saturationLimit(person.group, 'low'),
        saturationLimit(person.group, 'high'),
      ];
      return [fromRows(low, low.value, high.value, [high])];
    }
    case 'mcv':
      return person.group.kind === 'child' ? childCells(person) : usual(person, analyte);
    default:
      return usual(person, analyte);
  }
}

function fromRows(
  first: Row,
  low: number | null,
  high: number | null,
  others: readonly Row[] = [],
): Yardstick {
  return { low, high, source: first.source, rules: [first.id, ...others.map(({ id }) => id)] };
}

function intervalRow(person: Person, analyte: Analyte): UsualIntervalRow | undefined {
  const { slug, sex, kind } = person.group;
  return usualIntervals.find(
    (row) =>
      row.analyte === analyte && row.kinds.includes(kind) && ['any', sex, slug].includes(row.sex),
  );
}

function usual(person: Person, analyte: Analyte): readonly Yardstick[] {
  const row = intervalRow(person, analyte);
  return row === undefined ? [] : [fromRows(row, row.low, row.high)];
}

/** WHO's limit (or the adult one past 65) first, with the level worth looking into above; BSH beside it. */
function haemoglobinYardsticks(person: Person): readonly Yardstick[] {
  const high = intervalRow(person, 'haemoglobin');
  const lines = haemoglobinLimitsFor(person).filter(({ band }) => band === 'anaemia');
  // Beyond WHO's table of altitude there is no lower limit, and an upper one alone would call any anaemia in range.
  return lines.map((line) =>
    fromRows(line.row, line.value, high?.high ?? null, high === undefined ? [] : [high]),
  );
}

function ferritinYardsticks(person: Person): readonly Yardstick[] {
  const low =
    (person.inflammation === 'raised' ? ferritinLimit(person, 'low-inflamed') : undefined) ??
    ferritinLimit(person, 'stores-likely-low') ??
    ferritinLimit(person, 'low');
  const high = guidelineFerritinHigh(person);
  // Stryker disable next-line all: every group has its lower limit, so only a broken table comes here.
  if (low === undefined) return [];
  return [fromRows(low, low.value, high?.value ?? null, high === undefined ? [] : [high])];
}

/** Children's lower limit of MCV grows with age; no upper limit is published here. */
function childCells({ patient }: Person): readonly Yardstick[] {
  if (patient.ageMonths === null) return [];
  const [base, perYear, until] = [
    limit('mcv-child-base'),
    limit('mcv-child-per-year'),
    limit('mcv-child-years'),
  ];
  const years = Math.min(patient.ageMonths / 12, until.value);
  // To one decimal, so that the limit that decides is the one that is shown.
  const low = Math.round(10 * (base.value + perYear.value * years)) / 10;
  return [fromRows(base, low, null, [perYear, until])];
}
