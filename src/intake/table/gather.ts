// Facts of rows arrive; one written report a person leaves, with a bad row spoiling only its own.
import { type Checked, faulty, fine, type Problem } from '../../problem.js';
import { at, fault } from '../fault.js';
import { orderPanels } from '../order-panels.js';
import type { WrittenPatient, WrittenReport } from '../written.js';
import type { RowFacts } from './row-facts.js';

/** How rows are told apart: by id, by name and birth date, all one person, or each its own. */
export type Apart = 'id' | 'name-and-birth-date' | 'one-person' | 'each-row';

/** Reports in the order of their first rows. Problems: rows of one person that contradict each other. */
export function gather(
  file: string,
  facts: readonly RowFacts[],
  apart: Apart,
): readonly Checked<WrittenReport>[] {
  const people = new Map<string, RowFacts[]>();
  for (const row of facts) {
    const key = keyOf(row, apart);
    const rows = people.get(key) ?? [];
    rows.push(row);
    people.set(key, rows);
  }
  return [...people.values()].flatMap((rows) => reportOf(file, rows));
}

/** Whose row it is: rows with one key are of one person. */
export function keyOf(row: Pick<RowFacts, 'row' | 'patient'>, apart: Apart): string {
  const { id, name, birthDate } = row.patient;
  if (apart === 'one-person') return 'one';
  if (apart === 'id' && id !== null) return `id ${id}`;
  if (apart === 'name-and-birth-date' && name !== null && birthDate !== null)
    return `name ${JSON.stringify([name, birthDate])}`;
  return `row ${row.row}`;
}

/** Rows of one person: a lifetime of blood tests. More are held to be a mistake in the ids. */
export const mostRows = 5000;

export function tooManyRows(file: string, row: number | null): Problem {
  const more = { expected: `at most ${mostRows}`, remedy: 'Look whether the ids are right.' };
  return fault('too-many', at(file, row), 'cannot read so many rows of one person', more);
}

/** One report of the rows of one person; none of no rows. */
export function reportOf(
  file: string,
  rows: readonly RowFacts[],
): readonly Checked<WrittenReport>[] {
  const [first] = rows;
  if (first === undefined) return [];
  if (rows.length > mostRows) return [faulty([tooManyRows(file, first.row)])];
  const problems = [...rows.flatMap((row) => row.problems), ...contradictions(file, rows)];
  if (problems.length > 0) return [faulty(problems)];
  const dated = rows.flatMap((row) => row.results);
  if (dated.length === 0) {
    return [
      faulty([
        fault('no-results', at(file, first.row), 'cannot find an iron result of this person', {
          expected: 'at least one value',
        }),
      ]),
    ];
  }
  const { panel, previous } = orderPanels(dated);
  const newest = rows.filter((row) => row.collected === panel.collected);
  const latest = newest[0] ?? first;
  const merged = newest.slice(1).reduce((one, row) => filledIn(one, row), latest);
  const whole = rows.reduce((one, row) => filledIn(one, row, true), merged);
  return [
    fine({
      place: at(file, first.row),
      patient: whole.patient,
      panel,
      context: merged.context,
      previous,
      wishes: whole.language === null ? null : { language: whole.language },
    }),
  ];
}

/** What one row leaves open, another may say. What belongs to a day is not taken from another day. */
function filledIn(one: RowFacts, other: RowFacts, lastingOnly = false): RowFacts {
  const [a, b] = [one.patient, other.patient];
  const aged = a.ageYears !== null || a.ageMonths !== null || lastingOnly ? a : b;
  const patient: WrittenPatient = {
    ...a,
    id: a.id ?? b.id,
    name: a.name ?? b.name,
    birthDate: a.birthDate ?? b.birthDate,
    ageYears: aged.ageYears,
    ageMonths: aged.ageMonths,
    sex: a.sex ?? b.sex,
    pregnancy: a.pregnancy ?? (lastingOnly ? null : b.pregnancy),
    conditions: union(a.conditions, b.conditions),
    medicines: lastingOnly ? a.medicines : union(a.medicines, b.medicines),
  };
  const [c, d] = [one.context, other.context];
  const context = lastingOnly
    ? c
    : {
        ...c,
        symptoms: union(c.symptoms, d.symptoms),
        bleeding: union(c.bleeding, d.bleeding),
        fasting: c.fasting ?? d.fasting,
        sampleTime: c.sampleTime ?? d.sampleTime,
      };
  return { ...one, patient, context, language: one.language ?? other.language };
}

function union(a: readonly string[], b: readonly string[]): readonly string[] {
  return [...new Set([...a, ...b])];
}

/** Facts that cannot differ between two rows of one person; what stands there is never shown. */
const lasting = ['name', 'birthDate', 'sex'] as const;

function contradictions(file: string, rows: readonly RowFacts[]): readonly Problem[] {
  if (rows.length < 2) return [];
  return lasting.flatMap((fact) => {
    const known = rows.filter((row) => row.patient[fact] !== null);
    const [first] = known;
    const other = known.find((row) => row.patient[fact] !== first?.patient[fact]);
    if (first === undefined || other === undefined) return [];
    return [
      fault(
        'two-people',
        at(file, other.row, fact),
        `cannot tell whose row this is: row ${first.row} of the same id says something else here`,
        {
          expected: 'the same in every row of one person',
        },
      ),
    ];
  });
}
