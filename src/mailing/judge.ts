// One report of a file arrives; what becomes of it leaves: a letter, a phone call or a line to fix.
import type { ReportSource } from '../intake/index.js';
import type { WrittenReport } from '../intake/written.js';
import { isHeld } from '../letter/index.js';
import { type Checked, nowhere, type Problem } from '../problem.js';
import type { Approvals } from './approvals.js';
import type { Approval, Desk, Understood } from './desk.js';
import { sealOf, sealOfReport } from './seal.js';
import { stemOf } from './stem.js';
import type { Twice } from './twice.js';

/** Who and what a report is to the records; `number` counts reports from 1. */
type Known = {
  readonly number: number;
  readonly stem: string;
  readonly id: string | null;
  readonly row: number | null;
  /** Hash of the report. */
  readonly input: string | null;
};

/** `seal` hashes all that the letter's words depend on before anybody signs it. */
export type Judged = Known &
  (
    | {
        readonly kind: 'letter';
        readonly understood: Understood;
        readonly language: string;
        readonly versions: Readonly<Record<string, string>>;
        readonly seal: string;
        readonly approval: Approval;
      }
    | { readonly kind: 'held'; readonly understood: Understood; readonly language: string }
    | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  );

export type Evening = {
  readonly source: ReportSource;
  readonly twice: Twice;
  readonly approvals: Approvals;
  readonly desk: Desk;
};

/**
 * Decides about one report. An alarm goes first: a report that must be phoned is held even when it is a second
 * one of the same patient or holds a doubtful value, and an earlier letter of that patient waits with it.
 */
export async function judge(evening: Evening, index: number): Promise<Judged> {
  const { source, desk, approvals } = evening;
  const { report } = source.read(index);
  const known = knownOf(evening, report, index);
  const refused = (problems: readonly Problem[]): Judged => ({
    ...known,
    kind: 'refused',
    problems,
  });
  if (!report.ok) return refused(report.problems);
  const read = desk.read(report.value);
  const release = approvals.released.get(known.stem);
  const released = release !== undefined && release.input === known.input;
  const language = desk.languageOf(report.value);
  if (read.ok && isHeld(read.value) && !released)
    return { ...known, kind: 'held', understood: read.value, language };
  const other = otherReport(evening, index);
  if (other !== null) return refused([other]);
  if (!read.ok) return refused(read.problems);
  const versions = await desk.versions(language);
  const doubts = desk.doubts(read.value);
  if (!versions.ok) return refused([...versions.problems, ...doubts]);
  if (doubts.length > 0) return refused(doubts);
  const seal = sealOf([known.input, language, desk.settings, versions.value]);
  const signature = approvals.signed.get(known.stem);
  const approval = released
    ? { checkedBy: release.releasedBy, done: release.done }
    : { checkedBy: signature?.seal === seal ? signature.by : null, done: null };
  return {
    ...known,
    kind: 'letter',
    understood: read.value,
    language,
    versions: versions.value,
    seal,
    approval,
  };
}

function knownOf({ twice }: Evening, report: Checked<WrittenReport>, index: number): Known {
  const number = index + 1;
  const again = (twice.get(index)?.[0] ?? index) !== index;
  if (!report.ok) {
    const row = report.problems[0]?.place.row ?? null;
    return { number, stem: stemOf(null, number), id: null, row, input: null };
  }
  const { patient, place } = report.value;
  return {
    number,
    stem: again ? `${stemOf(patient.id, number)}-report-${number}` : stemOf(patient.id, number),
    id: patient.id,
    row: place.row,
    input: sealOfReport(report.value),
  };
}

/** A second report of a patient is not mailed; the first neither when a later one must be phoned. */
function otherReport({ source, twice, desk }: Evening, index: number): Problem | null {
  const group = twice.get(index);
  if (group === undefined) return null;
  const [first] = group;
  if (first !== index) return sameAs(first ?? 0, 'patient-twice', 'make a second letter');
  const alarming = group.find((each) => {
    const report = each === index ? null : source.read(each).report;
    const read = report?.ok ? desk.read(report.value) : null;
    return read?.ok === true && isHeld(read.value);
  });
  if (alarming === undefined) return null;
  return sameAs(alarming, 'patient-to-phone', 'mail a letter');
}

function sameAs(index: number, code: string, what: string): Problem {
  return {
    code,
    place: nowhere,
    cannot: `cannot ${what}: report ${index + 1} of this file is of the same patient`,
    found: null,
    expected: 'one report a patient',
    remedy: 'Decide which report holds and leave the other out.',
  };
}
