// A file of HL7 v2 messages of any length arrives; its reports leave one at a time.
import type { Problem } from '../../problem.js';
import { at, fault } from '../fault.js';
import type { Encoded } from '../encoding.js';
import { Groups, mostReportsIn, tooManyPieces } from '../groups.js';
import { type ReportSource, refusedSource } from '../report-source.js';
import { linesOf, type Span } from '../spans.js';
import { noMessage, peopleIn, reportOf } from './index.js';
import { messagesIn, opensMessage } from './segments.js';

/** Bytes of one message; one with embedded documents may be long. */
const largestMessage = 4 * 1024 * 1024;

/** A patient and a result. */
const leastBytes = 30;

/** The same reports in the same order as `readHl7` gives; a message too large for that is passed over with a note. */
export function hl7Source(encoded: Encoded): ReportSource {
  const { file } = encoded;
  const groups = new Groups();
  const most = mostReportsIn(file.size, leastBytes);
  const keys: string[] = [];
  const pieces: Span[] = [];
  const ignored: Problem[] = [];
  for (const span of messageSpans(encoded)) {
    if (span.end - span.start > largestMessage) {
      ignored.push(tooLarge(file.name, span.row));
      continue;
    }
    const notes: Problem[] = [];
    // Who is in a message is told by these alone.
    const heads = messageAt(encoded, span, ['PID']);
    for (const key of peopleIn(heads, file.name, notes).keys()) {
      pieces.push(span);
      if (groups.add(key) === keys.length) keys.push(key);
    }
    // Notes of a message that is somebody's come again when it is read.
    if (notes.length > 0 && pieces.at(-1) !== span && ignored.length < mostNotes)
      ignored.push(...notes);
    if (groups.size > most)
      return refusedSource('hl7v2', [tooManyPieces(file.name, span.row, `${most} reports`)]);
  }
  groups.close();
  if (groups.size === 0) return refusedSource('hl7v2', [noMessage(file.name)], ignored);
  return {
    format: 'hl7v2',
    count: groups.size,
    ignored,
    read: (index) => {
      const messages = [...groups.piecesOf(index)].flatMap((piece) =>
        messageAt(encoded, pieces[piece] ?? { start: 0, end: 0, row: 0 }),
      );
      const notes: Problem[] = [];
      const person = peopleIn(messages, file.name, notes).get(keys[index] ?? '');
      if (person === undefined) throw new Error('there is no such report');
      return { report: reportOf(file.name, person, notes), ignored: notes };
    },
  };
}

const mostNotes = 1000;

/** What stands before the first message, such as the headers of a batch, is of none. */
function* messageSpans({ file, textOf }: Encoded): Generator<Span> {
  let open: Span | null = null;
  for (const line of linesOf(file)) {
    if (line.end - line.start < shortestHeader) continue;
    const head = textOf(file.read(line.start, Math.min(line.end, line.start + headLength)));
    if (opensMessage(head)) {
      if (open !== null) yield { ...open, end: line.start };
      open = line;
    }
  }
  if (open !== null) yield { ...open, end: file.size };
}

const shortestHeader = 'MSH|^~\\&'.length;
/** A header is told by its first signs. */
const headLength = 64;

function messageAt(
  { file, textOf }: Encoded,
  { start, end, row }: Span,
  wanted: readonly string[] | null = null,
) {
  const lines = textOf(file.read(start, end)).split(/\r\n|\r|\n/);
  return messagesIn(
    lines.map((line, i) => ({ line, row: row + i })),
    wanted,
  );
}

function tooLarge(name: string, row: number): Problem {
  return fault('too-large', at(name, row), 'passed over a message this large', {
    expected: `at most ${largestMessage / 1024 / 1024} MB`,
  });
}
