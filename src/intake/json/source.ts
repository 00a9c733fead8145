// A JSON file of any length arrives (a list, or one object a line); its reports leave one at a time.
import type { Problem } from '../../problem.js';
import { markLength } from '../decode.js';
import type { Encoded } from '../encoding.js';
import { at, fault } from '../fault.js';
import { readFhir } from '../fhir/index.js';
import { isResource, type Whose, whoseResource } from '../fhir/whose.js';
import { Groups, mostReportsIn, tooManyPieces } from '../groups.js';
import { type ReportSource, refusedSource, sourceOf } from '../report-source.js';
import type { Span } from '../spans.js';
import type { Intake } from '../written.js';
import { fromParts, type JsonPart, partOf } from './index.js';
import { BrokenList, largestMember, membersOf } from './member-spans.js';

/** A sex, a day and a result with their fields. */
const leastBytes = 50;

/** Null where the file is one object, which only a reader of the whole can read. */
export function jsonSource(encoded: Encoded): ReportSource | null {
  const { file } = encoded;
  const members = membersOf(file, markLength(file.read(0, Math.min(3, file.size))));
  if (members.form === 'whole') return null;
  try {
    return open(encoded, members.spans);
  } catch (error) {
    if (error instanceof BrokenList) {
      const cannot = 'cannot tell the objects of this list apart from here on';
      const row = error.row === 0 ? null : error.row;
      return refusedSource('json', [
        fault('not-json', at(file.name, row), cannot, { expected: 'a list of reports' }),
      ]);
    }
    throw error;
  }
}

function open(encoded: Encoded, spans: Generator<Span>): ReportSource {
  const { file } = encoded;
  const part = (span: Span) => read(encoded, span);
  const pieces: Span[] = [];
  const shared: Span[] = [];
  const groups = new Groups();
  const most = mostReportsIn(file.size, leastBytes);
  let fhir: boolean | null = null;
  for (const span of spans) {
    fhir ??= isResource(part(span));
    const whose: Whose = fhir ? whoseResource(part(span)) : { of: 'itself' };
    if (whose.of === 'nobody') continue;
    if (whose.of === 'anybody') shared.push(span);
    else {
      pieces.push(span);
      groups.add(whose.of === 'patient' ? whose.key : null);
    }
    if (groups.size > most || shared.length > mostShared)
      return refusedSource('json', [tooManyPieces(file.name, span.row, `${most} reports`)]);
  }
  groups.close();
  if (groups.size === 0) return refusedSource(fhir ? 'fhir' : 'json', emptyList(file.name));
  const partsOf = (index: number) =>
    [...groups.piecesOf(index)].map((piece) => part(pieces[piece] ?? { start: 0, end: 0, row: 0 }));
  if (fhir === true) {
    const common = shared.map(part);
    return fhirSource(file.name, groups.size, (index) => [...partsOf(index), ...common]);
  }
  return {
    format: 'json',
    count: groups.size,
    ignored: [],
    read: (index) => {
      const [report] = fromParts(file.name, partsOf(index));
      if (report === undefined) throw new Error('there is no such report');
      return { report, ignored: [] };
    },
  };
}

/** Specimens and reports that name no patient; each person's lines are read together with all of them. */
const mostShared = 200;

/** One Bundle, or the lines of one patient, may hold more than one report: of several people, or a broken line. */
function fhirSource(
  name: string,
  groups: number,
  partsOf: (index: number) => readonly JsonPart[],
): ReportSource {
  const [groupAt, withinAt]: [number[], number[]] = [[], []];
  for (let group = 0; group < groups; group++) {
    const { reports } = readFhir(name, partsOf(group));
    if (isEmpty(reports)) continue;
    reports.forEach((_, within) => {
      groupAt.push(group);
      withinAt.push(within);
    });
  }
  if (groupAt.length === 0) return sourceOf(readFhir(name, []));
  return {
    format: 'fhir',
    count: groupAt.length,
    ignored: [],
    read: (index) => {
      const { reports, ignored } = readFhir(name, partsOf(groupAt[index] ?? 0));
      const within = withinAt[index] ?? 0;
      const report = reports[within];
      if (report === undefined) throw new Error('there is no such report');
      return { report, ignored: within === 0 ? ignored : [] };
    },
  };
}

/** A patient of whom the file has no observation is no report. */
function isEmpty([first, second]: Intake['reports']): boolean {
  if (first === undefined || second !== undefined || first.ok) return false;
  const [problem] = first.problems;
  return problem?.code === 'no-results' && problem.place.row === null;
}

function read({ file, textOf }: Encoded, { start, end, row }: Span): JsonPart {
  if (end - start > largestMember) {
    const expected = `at most ${largestMember / 1024 / 1024} MB for each`;
    return {
      problem: fault('too-large', at(file.name, row), 'cannot read an object this large', {
        expected,
      }),
    };
  }
  return partOf(file.name, row, textOf(file.read(start, end)));
}

function emptyList(name: string): readonly Problem[] {
  const [none] = fromParts(name, []);
  return none === undefined || none.ok ? [] : none.problems;
}
