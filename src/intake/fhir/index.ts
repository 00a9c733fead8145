// Parts of a FHIR R4 file arrive; written reports leave, one a patient.
import { type Checked, faulty, fine, type Place, type Problem } from '../../problem.js';
import { blankContext } from '../blank.js';
import { readDate } from '../date-as-written.js';
import { at, fault } from '../fault.js';
import type { JsonPart } from '../json/index.js';
import { type DatedResult, orderPanels } from '../order-panels.js';
import {
  pregnantOn,
  saysPregnancy,
  saysPregnancyWeeks,
  saysYes,
  weeksOfPregnancy,
} from '../pregnancy-as-written.js';
import { standing } from '../standing.js';
import type { Intake, WrittenPatient, WrittenReport } from '../written.js';
import { observed } from './observed.js';
import { patientOf } from './patient.js';
import { type Found, type Pool, poolOf, readAs } from './pool.js';
import {
  type DiagnosticReport,
  diagnosticReportShape,
  type Observation,
  observationShape,
  specimenShape,
} from './resources.js';

type Person = {
  readonly row: number | null;
  readonly patient: WrittenPatient;
  readonly dated: DatedResult[];
  readonly problems: Problem[];
  readonly texts: Set<string>;
  readonly times: Map<string | null, string | null>;
  /** Weeks of pregnancy by the day they were told for. */
  readonly weeks: Map<string | null, number>;
  /** Days of which the file says only that there was a pregnancy. */
  readonly pregnant: Set<string | null>;
};

/** What a DiagnosticReport says for its observations. */
type Frame = { readonly found: Found; readonly report: DiagnosticReport };

const dropped = new Set(['entered-in-error', 'cancelled']);
const statuses: Readonly<Record<string, string>> = {
  preliminary: 'preliminary',
  registered: 'preliminary',
  partial: 'preliminary',
  final: 'final',
  amended: 'corrected',
  corrected: 'corrected',
  appended: 'final',
};

/**
 * Reads Bundle, DiagnosticReport, Observation and Patient, contained or referenced, from one text or many lines.
 * Problems: resources that do not fit, codes and names that disagree, values that are no numbers.
 * @example readFhir('lab.json', jsonParts('lab.json', text)).reports
 */
export function readFhir(file: string, parts: readonly JsonPart[]): Intake {
  const pool = poolOf(parts);
  const notes: Problem[] = [];
  const broken = parts.flatMap((part) =>
    'problem' in part ? [faulty<WrittenReport>([part.problem])] : [],
  );
  const frames = framesOf(pool, file, broken);
  const people = new Map<Found | string, Person>();
  for (const found of pool.all) {
    if (found.resource.resourceType !== 'Observation') continue;
    const wrong: Problem[] = [];
    const observation = readAs(found, observationShape, file, wrong);
    if (observation === null) broken.push(faulty(wrong));
    else
      takeObservation({ file, pool, notes, people }, found, observation, frames.get(found) ?? null);
  }
  const reports = [...people.values()].map((person) => reportOf(file, person, notes));
  const all = [...reports, ...broken];
  const partly = [...people.values()].flatMap(({ problems, dated }) =>
    problems.length === 0 ? [] : dated.map(({ result }) => result),
  );
  if (all.length > 0) return { format: 'fhir', reports: all, ignored: notes, partly };
  const none = fault('no-results', at(file, null), 'cannot find an observation in this file', {
    expected: 'a Bundle, DiagnosticReport or Observation of FHIR R4',
  });
  return { format: 'fhir', reports: [faulty([none])], ignored: notes };
}

function framesOf(
  pool: Pool,
  file: string,
  broken: Checked<WrittenReport>[],
): ReadonlyMap<Found, Frame> {
  const frames = new Map<Found, Frame>();
  for (const found of pool.all) {
    if (found.resource.resourceType !== 'DiagnosticReport') continue;
    const wrong: Problem[] = [];
    const report = readAs(found, diagnosticReportShape, file, wrong);
    if (report === null) broken.push(faulty(wrong));
    for (const { reference } of report?.result ?? []) {
      const result = pool.follow(found, reference);
      if (result !== null && report !== null) frames.set(result, { found, report });
    }
  }
  return frames;
}

type Reading = {
  readonly file: string;
  readonly pool: Pool;
  readonly notes: Problem[];
  readonly people: Map<Found | string, Person>;
};

function takeObservation(
  reading: Reading,
  found: Found,
  observation: Observation,
  frame: Frame | null,
): void {
  const { file, notes } = reading;
  const place = at(file, found.row, found.path === '' ? null : found.path);
  const gone = [observation.status, frame?.report.status].find(
    (status) => status !== undefined && dropped.has(status),
  );
  if (gone !== undefined) {
    notes.push(
      fault('dropped', place, 'passed over a result that does not stand', { found: gone }),
    );
    return;
  }
  const person = personOf(reading, found, observation, frame);
  const when =
    observation.effectiveDateTime ??
    observation.effectiveInstant ??
    observation.effectivePeriod?.start ??
    frame?.report.effectiveDateTime ??
    frame?.report.effectivePeriod?.start;
  const day = when === undefined ? null : readDate(when);
  if (takePregnancy(person, observation, day?.date ?? null, place)) return;
  const status = observation.status ?? frame?.report.status;
  const around = {
    place,
    status: status === undefined ? null : (statuses[status] ?? null),
    specimen: specimenOf(reading, found, observation),
    patient: person.patient,
    day: day?.date ?? null,
  };
  const results = [observation, ...(observation.component ?? [])].flatMap((measured, i) => {
    const inside =
      i === 0
        ? place
        : {
            ...place,
            field: `${place.field === null ? '' : `${place.field}.`}component[${i - 1}]`,
          };
    return observed(measured, { ...around, place: inside }, person.problems, notes) ?? [];
  });
  if (results.length === 0) return;
  if ((observation.modifierExtension ?? []).length > 0) {
    const cannot = 'cannot use a result whose meaning an unknown extension changes';
    person.problems.push(fault('modifier', place, cannot, { found: 'modifierExtension' }));
  }
  if (when !== undefined && day === null) {
    person.problems.push(
      fault('bad-date', place, 'cannot read the day of this result', {
        found: when,
        expected: 'such as 2026-11-20',
      }),
    );
  }
  const collected = day?.date ?? null;
  person.times.set(collected, person.times.get(collected) ?? day?.time ?? null);
  person.dated.push(...results.map((result) => ({ collected, result })));
  const said = [...(observation.note ?? []).map(({ text }) => text), frame?.report.conclusion];
  for (const text of said) if (text !== undefined) person.texts.add(text);
}

/** True where the observation is about weeks of pregnancy; weeks that cannot be read are a question. */
function takePregnancy(
  person: Person,
  { code, valueQuantity, valueString, valueCodeableConcept }: Observation,
  day: string | null,
  place: Place,
): boolean {
  const names = [code?.text, ...(code?.coding ?? []).map(({ display }) => display)];
  const { text, coding = [] } = valueCodeableConcept ?? {};
  const answers = [valueString, text, ...coding.map(({ display }) => display)];
  if (
    names.some((name) => name !== undefined && saysPregnancy(name)) &&
    answers.some((answer) => saysYes(answer ?? null))
  ) {
    person.pregnant.add(day);
    return true;
  }
  if (!names.some((name) => name !== undefined && saysPregnancyWeeks(name))) return false;
  const written = String(valueQuantity?.value ?? valueString ?? '');
  const unit = valueQuantity?.unit ?? valueQuantity?.code ?? null;
  const weeks = weeksOfPregnancy(written, unit);
  if (weeks !== null) person.weeks.set(day, weeks);
  else {
    const more = { found: written, expected: 'whole weeks such as 20, with weeks as the unit' };
    person.problems.push(fault('bad-pregnancy', place, 'cannot read the weeks', more));
  }
  return true;
}

/** Observations of one patient resource, or of one reference that leads nowhere, belong together; others stand alone. */
function personOf(
  reading: Reading,
  found: Found,
  observation: Observation,
  frame: Frame | null,
): Person {
  const own = observation.subject?.reference;
  const framed = frame?.report.subject?.reference;
  const patient =
    reading.pool.follow(found, own) ??
    (frame === null || own !== undefined ? null : reading.pool.follow(frame.found, framed));
  const key = patient ?? own ?? framed ?? found.path + String(found.row);
  const before = reading.people.get(key);
  if (before !== undefined) return before;
  const problems: Problem[] = [];
  const person: Person = {
    row: found.row,
    patient: patientOf(patient, reading.file, problems, reading.notes),
    dated: [],
    problems,
    texts: new Set(),
    times: new Map(),
    weeks: new Map(),
    pregnant: new Set(),
  };
  reading.people.set(key, person);
  return person;
}

function specimenOf(reading: Reading, found: Found, observation: Observation): string | null {
  const specimen = reading.pool.follow(found, observation.specimen?.reference);
  const read = specimen === null ? null : readAs(specimen, specimenShape, reading.file, []);
  return (
    read?.type?.text ?? read?.type?.coding?.[0]?.display ?? observation.specimen?.display ?? null
  );
}

function reportOf(file: string, person: Person, notes: Problem[]): Checked<WrittenReport> {
  if (person.problems.length > 0) return faulty(person.problems);
  if (person.dated.length === 0) {
    return faulty([
      fault('no-results', at(file, person.row), 'cannot find an iron result of this person', {
        expected: 'at least one, such as ferritin',
      }),
    ]);
  }
  const { panel, previous } = orderPanels(standing(person.dated, notes));
  return fine({
    place: at(file, person.row),
    patient: pregnantOn(panel.collected, person),
    panel,
    context: {
      ...blankContext,
      notes: [...person.texts],
      sampleTime: person.times.get(panel.collected) ?? null,
    },
    previous,
    wishes: null,
  });
}
