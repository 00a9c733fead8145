// What a reader and the measuring room made of a file arrives; a line for each thing in it leaves, with why.
import type { Intake, WrittenPatient, WrittenReport, WrittenResult } from '../intake/written.js';
import { nowhere, type Place, type Problem, sayProblem, visible } from '../problem.js';
import type { Report, Result } from '../report/index.js';
import type { Analyte } from '../terms.js';
import { measure } from './understand.js';

export const standings = ['understood', 'doubtful', 'ignored', 'wrong'] as const;
export type Standing = (typeof standings)[number];

export type CheckedLine = {
  readonly standing: Standing;
  readonly place: Place;
  readonly words: string;
};

export type CheckedFile = {
  readonly format: Intake['format'];
  readonly people: readonly string[];
  readonly lines: readonly CheckedLine[];
  /** Reports that could become letters once the doubtful ones are answered. */
  readonly usable: number;
};

/**
 * Says line by line what would be understood. Nothing is made and nothing is corrected.
 * @param confirmed tests whose doubtful value somebody looked at.
 */
export function sayUnderstanding(
  intake: Intake,
  today: string,
  confirmed: readonly Analyte[],
): CheckedFile {
  const people: string[] = [];
  const lines: CheckedLine[] = [];
  let usable = 0;
  const passed = (problem: Problem) => lines.push(lineOf('ignored', problem));
  for (const written of intake.reports) {
    if (!written.ok) {
      lines.push(...written.problems.map((problem) => lineOf('wrong', problem)));
      continue;
    }
    const read = measure(written.value, today, confirmed);
    people.push(personOf(written.value));
    if (read.ok) {
      usable += 1;
      lines.push(...measured(read.value));
      read.notes.forEach(passed);
    } else {
      lines.push(...panelsOf(written.value).map(asWritten));
      lines.push(...read.problems.map((problem) => lineOf('wrong', problem)));
    }
  }
  lines.push(...(intake.partly ?? []).map(asWritten));
  intake.ignored.forEach(passed);
  return { format: intake.format, people, lines: inOrder(lines), usable };
}

/** The line of the file or the path stands in front of the words; the column of a line is theirs to name. */
function lineOf(standing: Standing, problem: Problem): CheckedLine {
  const { row, field } = problem.place;
  const place = { ...nowhere, field: row === null ? null : field };
  const words = sayProblem({ ...problem, place });
  return { standing, place: problem.place, words };
}

function measured({ panel, previous }: Report): readonly CheckedLine[] {
  return [panel, ...previous].flatMap(({ collected, results }) =>
    results.map((result) => resultLine(result, collected)),
  );
}

function resultLine(result: Result, collected: string): CheckedLine {
  const { analyte, copied, quantity, doubt, place, labFlag } = result;
  const same = copied.unit === quantity.unit;
  const words = [
    `${analyte} ${copied.value} ${copied.unit}`,
    ...(same ? [] : [`= ${quantity.comparator ?? ''}${rounded(quantity.value)} ${quantity.unit}`]),
    ...(copied.interval === null ? ['(no interval)'] : [`(${copied.interval})`]),
    ...(labFlag === null ? [] : [labFlag]),
    `on ${collected}`,
    ...(result.preliminary ? ['preliminary'] : []),
  ].join(' ');
  const standing = doubt === null ? 'understood' : 'doubtful';
  const why = doubt === null ? '' : `: ${doubt.question}`;
  return { standing, place, words: visible(words, longestLine) + why };
}

const longestLine = 200;
/** Enough figures to compare with the sheet; the letter copies the laboratory's own. */
const rounded = (value: number) => Number(value.toPrecision(4));

/** A result of a report that cannot be used as it stands. */
function asWritten({ analyte, comparator, value, unit, place }: WrittenResult): CheckedLine {
  const words = [analyte, `${comparator ?? ''}${value}`, unit ?? '(no unit)'].join(' ');
  const standing = unit === null ? 'doubtful' : 'understood';
  return { standing, place, words: visible(words, longestLine) };
}

function panelsOf({ panel, previous }: WrittenReport): readonly WrittenResult[] {
  return [panel, ...previous].flatMap(({ results }) => results);
}

function personOf({ patient, panel }: WrittenReport): string {
  const facts: readonly (readonly [name: string, fact: string | null])[] = [
    ['id', patient.id],
    ['name', patient.name],
    ['sex', patient.sex],
    ['born', patient.birthDate],
    ['age', ageOf(patient)],
    ['pregnant', pregnancyOf(patient)],
    ['sample of', panel.collected],
  ];
  const known = facts.filter(([, fact]) => fact !== null);
  const missing = facts.filter(([name, fact]) => fact === null && needed.has(name));
  return [
    ...known.map(([name, fact]) => `${name} ${visible(fact ?? '')}`),
    ...missing.map(([name]) => `${name} NOT GIVEN`),
  ].join(', ');
}

const needed: ReadonlySet<string> = new Set(['sex', 'sample of']);

function ageOf({ ageYears, ageMonths }: WrittenPatient): string | null {
  if (ageYears !== null) return `${ageYears} years`;
  return ageMonths === null ? null : `${ageMonths} months`;
}

function pregnancyOf({ pregnancy }: WrittenPatient): string | null {
  if (pregnancy === null) return null;
  if (pregnancy.weeks !== null) return `${pregnancy.weeks} weeks`;
  return pregnancy.trimester === null ? 'yes' : `trimester ${pregnancy.trimester}`;
}

/** By line of the file; what has no line keeps its order, before all others. */
function inOrder(lines: readonly CheckedLine[]): readonly CheckedLine[] {
  return [...lines].sort((a, b) => (a.place.row ?? 0) - (b.place.row ?? 0));
}
