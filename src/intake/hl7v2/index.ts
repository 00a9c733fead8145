// The bytes of an HL7 v2 file arrive (ORU^R01, one or a batch); written reports leave, one a person.
import { type Checked, faulty, fine, type Problem } from '../../problem.js';
import { blankContext, blankPatient } from '../blank.js';
import { readDate } from '../date-as-written.js';
import { at, fault } from '../fault.js';
import { type DatedResult, orderPanels } from '../order-panels.js';
import { pregnantOn } from '../pregnancy-as-written.js';
import { standing } from '../standing.js';
import type {
  InputFile,
  Intake,
  WrittenContext,
  WrittenPatient,
  WrittenReport,
} from '../written.js';
import { decodeMessage } from './charset.js';
import { observed } from './observation.js';
import {
  component,
  decodeEscapes,
  field,
  type Message,
  messagesOf,
  type Segment,
} from './segments.js';

export type Gathering = {
  readonly row: number;
  readonly patient: WrittenPatient;
  readonly dated: DatedResult[];
  readonly notes: string[];
  readonly times: Map<string | null, string | null>;
  /** Weeks of pregnancy by the day they were told for. */
  readonly weeks: Map<string | null, number>;
  /** Days of which the message says only that there was a pregnancy. */
  readonly pregnant: Set<string | null>;
  readonly problems: Problem[];
};

/**
 * Reads ORU^R01 messages, decoded as they say; notes tell what had to be guessed. Messages of one patient id become
 * one report, older days its earlier panels.
 * Problems: no message, no iron results, a value or test that cannot be told.
 * @example readHl7(file).reports
 */
export function readHl7({ name, bytes }: InputFile): Intake {
  const { text, notes } = decodeMessage(name, bytes);
  const ignored: Problem[] = [...notes];
  const people = peopleIn(messagesOf(text), name, ignored);
  const reports = [...people.values()].map((person) => reportOf(name, person, ignored));
  const partly = [...people.values()].flatMap(({ problems, dated }) =>
    problems.length === 0 ? [] : dated.map(({ result }) => result),
  );
  if (reports.length > 0) return { format: 'hl7v2', reports, ignored, partly };
  return { format: 'hl7v2', reports: [faulty([noMessage(name)])], ignored };
}

export function noMessage(name: string): Problem {
  return fault('no-results', at(name, null), 'cannot find a message with results', {
    expected: 'ORU^R01',
  });
}

/** Everybody in these messages by a key that stays the same for one person throughout a file. */
export function peopleIn(
  messages: readonly Message[],
  name: string,
  ignored: Problem[],
): ReadonlyMap<string, Gathering> {
  const people = new Map<string, Gathering>();
  for (const message of messages) {
    const kind = component(message, message.segments[0] ?? missing, 9, 1);
    if (kind !== 'ORU') {
      const row = message.segments[0]?.row ?? null;
      ignored.push(
        fault(
          'other-message',
          at(name, row, 'MSH-9'),
          'passed over a message that carries no results',
          { found: kind, expected: 'ORU' },
        ),
      );
      continue;
    }
    if (message.segments.filter((segment) => segment.name === 'PID').length > mostPeople) {
      ignored.push(tooManyPeople(name, message.segments[0]?.row ?? null));
      continue;
    }
    for (const person of personsOf(message, name, ignored)) {
      const key = person.patient.id === null ? `row ${person.row}` : `id ${person.patient.id}`;
      const before = people.get(key);
      if (before === undefined) people.set(key, person);
      else merge(before, person, name);
    }
  }
  return people;
}

/** Nobody reads more notes of one file. */
const mostNotes = 5000;

/** Patients of one message; the standard lets their groups repeat, a laboratory sends one. */
const mostPeople = 100;

function tooManyPeople(name: string, row: number | null): Problem {
  return fault('too-many', at(name, row, 'PID'), 'passed over a message of so many patients', {
    expected: `at most ${mostPeople} in one message`,
  });
}

const missing: Segment = { name: 'MSH', row: 0, fields: [] };

/** One PID opens one person; segments before it belong to nobody. */
function personsOf(message: Message, file: string, ignored: Problem[]): readonly Gathering[] {
  const people: Gathering[] = [];
  let collected: string | null = null;
  let specimen: string | null = null;
  let told: string[] | null = null;
  for (const segment of message.segments) {
    if (segment.name === 'PID') {
      people.push(personOf(message, segment, file));
      [collected, specimen, told] = [null, null, null];
    }
    const person = people.at(-1);
    if (person === undefined) continue;
    if (segment.name === 'OBR') {
      const when = dayOf(message, segment, 7);
      collected = when?.date ?? null;
      specimen = component(message, segment, 15, 1);
      person.times.set(collected, when?.time ?? null);
      told = null;
    }
    if (segment.name === 'SPM' && specimen === null)
      specimen = component(message, segment, 4, 2) ?? component(message, segment, 4, 1);
    if (segment.name === 'NTE') {
      const note = decodeEscapes(field(segment, 3), message.separators).trim();
      if (told !== null && note !== '') told.push(note);
    }
    if (segment.name !== 'OBX') continue;
    const read = observed(message, segment, file, specimen);
    if (read.is === 'problem') person.problems.push(read.problem);
    if (read.is === 'ignored' && ignored.length < mostNotes) ignored.push(read.note);
    const own = dayOf(message, segment, 14)?.date ?? null;
    if (read.is === 'pregnancy') {
      if (read.weeks === null) person.pregnant.add(collected ?? own);
      else person.weeks.set(collected ?? own, read.weeks);
    }
    if (read.is === 'result')
      person.dated.push({ collected: collected ?? own, result: read.result });
    told = read.is === 'ignored' ? null : person.notes;
  }
  if (people.length === 0) {
    const row = message.segments[0]?.row ?? null;
    ignored.push(
      fault('no-person', at(file, row, 'PID'), 'passed over a message without a patient'),
    );
  }
  return people;
}

function personOf(message: Message, pid: Segment, file: string): Gathering {
  const problems: Problem[] = [];
  const birth = component(message, pid, 7, 1);
  const birthDate = birth === null ? null : (readDate(birth)?.date ?? null);
  if (birth !== null && birthDate === null) {
    problems.push(
      fault('bad-date', at(file, pid.row, 'PID-7'), 'cannot read this as a birth date', {
        expected: 'such as 19840309',
      }),
    );
  }
  if (component(message, pid, 30, 1) === 'Y' || component(message, pid, 29, 1) !== null) {
    problems.push(
      fault(
        'deceased',
        at(file, pid.row, 'PID-30'),
        'cannot make a letter: the message says that this person has died',
      ),
    );
  }
  const [family, given] = [component(message, pid, 5, 1), component(message, pid, 5, 2)];
  const names = [given, family].filter((name) => name !== null);
  const patient = {
    ...blankPatient,
    id: component(message, pid, 3, 1) ?? component(message, pid, 2, 1),
    name: names.length === 0 ? null : names.join(' '),
    birthDate,
    sex: sexOf(field(pid, 8).trim()),
  };
  return {
    row: pid.row,
    patient,
    dated: [],
    notes: [],
    times: new Map(),
    weeks: new Map(),
    pregnant: new Set(),
    problems,
  };
}

/** HL7 table 0001; letters that are neither F nor M leave the sex unknown, an empty field leaves it open. */
function sexOf(letter: string): string | null {
  if (letter === 'F') return 'female';
  if (letter === 'M') return 'male';
  return letter === '' || letter === '""' ? null : 'unknown';
}

function dayOf(message: Message, segment: Segment, number: number) {
  const text = component(message, segment, number, 1);
  return text === null ? null : readDate(text);
}

function merge(one: Gathering, other: Gathering, file: string): void {
  const [a, b] = [one.patient, other.patient];
  const differ = (['name', 'birthDate', 'sex'] as const).find(
    (fact) => a[fact] !== null && b[fact] !== null && a[fact] !== b[fact],
  );
  if (differ !== undefined) {
    one.problems.push(
      fault(
        'two-people',
        at(file, other.row, 'PID'),
        `cannot tell whose message this is: another of the same id has another ${differ}`,
        {
          expected: 'the same in every message of one person',
        },
      ),
    );
  }
  one.dated.push(...other.dated);
  one.notes.push(...other.notes);
  one.problems.push(...other.problems);
  for (const [day, weeks] of other.weeks) one.weeks.set(day, weeks);
  for (const day of other.pregnant) one.pregnant.add(day);
  for (const [day, time] of other.times) if (!one.times.has(day)) one.times.set(day, time);
}

export function reportOf(
  file: string,
  person: Gathering,
  ignored: Problem[],
): Checked<WrittenReport> {
  if (person.problems.length > 0) return faulty(person.problems);
  if (person.dated.length === 0) {
    return faulty([
      fault('no-results', at(file, person.row), 'cannot find an iron result in this message', {
        expected: 'at least one, such as ferritin',
      }),
    ]);
  }
  const { panel, previous } = orderPanels(standing(person.dated, ignored));
  const context: WrittenContext = {
    ...blankContext,
    notes: person.notes,
    sampleTime: person.times.get(panel.collected) ?? null,
  };
  return fine({
    place: at(file, person.row),
    patient: pregnantOn(panel.collected, person),
    panel,
    context,
    previous,
    wishes: null,
  });
}
