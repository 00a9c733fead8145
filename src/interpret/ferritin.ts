// In: a person and a ferritin. Out: how ferritin reads for that group, with or without inflammation.
import { type FerritinRow, ferritinLimits } from '../knowledge/cut-offs.js';
import type { Quantity, ReferenceInterval } from '../report/report.js';
import type { Level } from '../terms.js';
import { above, below } from './measure.js';
import type { Person } from './person.js';

/** How ferritin reads, finer than its level; also the code of the reason it gives. */
type FerritinReading =
  | 'ferritin-low'
  | 'ferritin-low-stores-likely'
  | 'ferritin-may-be-low'
  | 'ferritin-low-while-inflamed'
  | 'ferritin-may-be-low-while-inflamed'
  | 'ferritin-usual'
  | 'ferritin-high'
  | 'ferritin-cannot-tell';

export type FerritinRead = {
  readonly reading: FerritinReading;
  readonly level: Level;
  /** The limits it was read between, ug/L; null where that side decided nothing. */
  readonly low: number | null;
  readonly high: number | null;
  readonly rules: readonly string[];
};

/** The cut-off of one role for the group, or undefined where none is published. */
export function ferritinLimit(person: Person, role: FerritinRow['role']): FerritinRow | undefined {
  return ferritinLimits.find((row) => row.role === role && row.groups.includes(person.group.slug));
}

/** The upper limit: the laboratory's own where printed, else WHO 2020's for the group. */
function ferritinHigh(
  person: Person,
  interval: ReferenceInterval | null,
): { readonly value: number; readonly row: FerritinRow | null } | null {
  const own = interval?.high ?? null;
  if (own !== null) return { value: own, row: null };
  const row = guidelineFerritinHigh(person);
  return row === undefined ? null : { value: row.value, row };
}

/** WHO 2020's upper limit for the group; inflammation and the end of menstruation have their own. */
export function guidelineFerritinHigh(person: Person): FerritinRow | undefined {
  const inflamed =
    person.inflammation === 'raised' ? ferritinLimit(person, 'high-inflamed') : undefined;
  if (inflamed !== undefined) return inflamed;
  const notMenstruating =
    person.patient.menstruating === false
      ? ferritinLimit(person, 'high-not-menstruating')
      : undefined;
  return notMenstruating ?? ferritinLimit(person, 'high');
}

/**
 * Ferritin in ug/L read for the group: under 15 low, 15 to 29 low stores likely, 30 to 44 with anaemia may be low;
 * 70 and 100 while CRP is raised; children and pregnancy by their own rows.
 * Sources: WHO 2020 ferritin guideline, AGA 2020, BSH 2020, RCPA; rows in src/knowledge/ferritin-limits.json.
 * @example readFerritin(man, quantity(22), null, 'usual').reading // 'ferritin-low-stores-likely'
 */
export function readFerritin(
  person: Person,
  quantity: Quantity,
  interval: ReferenceInterval | null,
  haemoglobin: Level,
): FerritinRead {
  const anaemic = haemoglobin === 'low';
  const steps: readonly [FerritinRow['role'], boolean, FerritinReading, Level][] = [
    ['low', true, 'ferritin-low', 'low'],
    ['stores-likely-low', true, 'ferritin-low-stores-likely', 'low'],
    ['low-inflamed', person.inflammation === 'raised', 'ferritin-low-while-inflamed', 'low'],
    [
      'may-be-low-inflamed',
      person.inflammation === 'raised' && anaemic,
      'ferritin-may-be-low-while-inflamed',
      'low',
    ],
    ['may-be-low-with-anaemia', anaemic, 'ferritin-may-be-low', 'low'],
    [
      'cannot-tell-without-crp',
      person.inflammation === 'not-measured' && anaemic,
      'ferritin-cannot-tell',
      'not-measured',
    ],
  ];
  let passed = ferritinLimit(person, 'low');
  // Stryker disable next-line all: every group has its lower limit, so only a broken table comes here.
  if (passed === undefined) throw new Error(`knowledge: no ferritin limit of ${person.group.slug}`);
  for (const [role, applies, reading, level] of steps) {
    const row = applies ? ferritinLimit(person, role) : undefined;
    if (row === undefined) continue;
    const answer = below(quantity, row.value);
    const at = { low: row.value, high: null, rules: [row.id] };
    if (answer === 'yes') return { reading, level, ...at };
    if (answer === 'undecided')
      return { reading: 'ferritin-cannot-tell', level: 'not-measured', ...at };
    passed = row;
  }
  return readHigh(person, quantity, interval, passed);
}

function readHigh(
  person: Person,
  quantity: Quantity,
  interval: ReferenceInterval | null,
  passed: FerritinRow,
): FerritinRead {
  const high = ferritinHigh(person, interval);
  const answer = high === null ? null : above(quantity, high.value);
  const rules = high?.row ? [high.row.id] : [];
  const at = { low: null, high: high?.value ?? null, rules };
  if (answer === 'yes') return { reading: 'ferritin-high', level: 'high', ...at };
  if (answer === 'undecided')
    return { reading: 'ferritin-cannot-tell', level: 'not-measured', ...at };
  return {
    reading: 'ferritin-usual',
    level: 'usual',
    low: passed.value,
    // A laboratory's upper limit has no row, and the lower one is a guideline's: only that one is cited.
    high: high?.row?.value ?? null,
    rules: [passed.id, ...rules],
  };
}
