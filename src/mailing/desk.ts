// Types only: what a run is handed from outside, and what it hands back.
import type { PlannedStep } from '../advise/advice.js';
import type { WrittenReport } from '../intake/written.js';
import type { Interpretation } from '../interpret/interpretation.js';
import type { ReasoningContent } from '../letter/index.js';
import type { Checked, Problem } from '../problem.js';
import type { LetterDocument } from '../render/block.js';
import type { Report } from '../report/report.js';

export type Understood = { readonly report: Report; readonly interpretation: Interpretation };

/** Who checked a letter, and what was done about a held one; both null until somebody did. */
export type Approval = { readonly checkedBy: string | null; readonly done: string | null };

export type MadeFile = { readonly ending: string; readonly content: Uint8Array | string };

/** Everything a run needs that is not in the file: how letters are made, and what they depend on. */
export type Desk = {
  /** Measures and grades one report. */
  readonly read: (written: WrittenReport) => Checked<Understood>;
  /** The language this report is written to in: its own wish, else the run's. */
  readonly languageOf: (written: WrittenReport) => string;
  /** Values somebody must look at before a letter may be made. */
  readonly doubts: (understood: Understood) => readonly Problem[];
  /** Fingerprints of program, templates and this language; a problem when there is no such language. */
  readonly versions: (language: string) => Promise<Checked<Readonly<Record<string, string>>>>;
  readonly make: (
    understood: Understood,
    language: string,
    approval: Approval,
  ) => Promise<Checked<readonly MadeFile[]>>;
  /** The same letter before it becomes files: for one file of many. */
  readonly document: (
    understood: Understood,
    language: string,
    approval: Approval,
  ) => Promise<Checked<LetterDocument>>;
  readonly callSheet: (understood: Understood) => Promise<ReasoningContent>;
  readonly steps: (understood: Understood) => readonly PlannedStep[];
  /** Hash of every choice and of the clinic's details. */
  readonly settings: string;
  /** Time for the records, ISO 8601; never read for a decision. */
  readonly now: () => string;
};

/** How far a run has come; counts only. */
export type Progress = {
  readonly total: number;
  readonly done: number;
  readonly made: number;
  readonly kept: number;
  readonly held: number;
  readonly refused: number;
};
