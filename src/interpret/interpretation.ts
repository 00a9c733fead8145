// The graded state: where each result lies, what the whole looks like, what blurs it, what cannot wait.
import type { CheckedHow } from '../knowledge/row.js';
import type { Copied, LabFlag } from '../report/report.js';
import type { Analyte, Flag, HoldTier, Level, Pattern, Position } from '../terms.js';

/** A published row that was used, so that a reader can retrace the conclusion. */
export type SourceUsed = {
  readonly rule: string;
  readonly source: string;
  readonly at: string;
  readonly checked: CheckedHow;
  /** The number used, such as '120 g/L'; null for rules without one. */
  readonly number: string | null;
};

/**
 * One yardstick laid beside a result, in our unit. `rule` names the knowledge row; null for the lab's own.
 * `highRule` names the row of the upper end where it is another one.
 */
export type Comparison = {
  readonly by: 'laboratory' | 'guideline';
  readonly low: number | null;
  readonly high: number | null;
  readonly source: string;
  readonly rule: string | null;
  readonly highRule: string | null;
  readonly position: Position | null;
};

export type GradedResult = {
  readonly analyte: Analyte;
  readonly value: number;
  readonly unit: string;
  readonly comparator: string | null;
  /** The laboratory's own strings; for a derived value our printed form of it. */
  readonly copied: Copied;
  readonly derived: { readonly from: readonly Analyte[]; readonly rule: string } | null;
  /** Told to the patient. Null when no yardstick applies or the value is doubtful. */
  readonly position: Position | null;
  /** The yardstick behind `position`: the laboratory's own interval where the report prints one. */
  readonly comparedWith: Comparison | null;
  /** Every other yardstick that applies (guidelines beside the laboratory's interval). */
  readonly also: readonly Comparison[];
  /** How it entered the decision table. */
  readonly level: Level;
  readonly labFlag: LabFlag | null;
  readonly doubt: { readonly kind: 'unit' | 'value'; readonly question: string } | null;
};

/** A fact in a line of reasoning: a code with its numbers; the words live in the letter room. */
export type Reason = {
  readonly code: string;
  readonly facts: Readonly<Record<string, string | number>>;
  /** Ids of the knowledge rows behind it. */
  readonly rules: readonly string[];
};

export type FlagRaised = {
  readonly flag: Flag;
  /** The test it blurs; null for the whole. */
  readonly analyte: Analyte | null;
  readonly facts: Readonly<Record<string, string | number>>;
  readonly rules: readonly string[];
};

export type PatternFound = {
  readonly main: Pattern;
  /** Second statements that hold at the same time. */
  readonly companions: readonly Pattern[];
  readonly supports: readonly Reason[];
  readonly against: readonly Reason[];
  /** Tests that would settle it. */
  readonly missing: readonly Analyte[];
};

export type Hold = {
  readonly tier: HoldTier;
  readonly reasons: readonly (Reason & { readonly tier: HoldTier })[];
};

export type Change = {
  readonly analyte: Analyte;
  readonly earlier: { readonly collected: string; readonly copied: Copied; readonly value: number };
  readonly verdict: 'about-the-same' | 'has-gone-up' | 'has-gone-down' | 'cannot-tell';
  /** Per cent of the earlier value; null when it cannot be computed. */
  readonly percent: number | null;
  /** The change that chance alone could make, per cent. */
  readonly limitUp: number | null;
  readonly limitDown: number | null;
  readonly rules: readonly string[];
};

/** The group a person was compared with, for instance 'pregnant-trimester-2'. Two when the sex is unknown. */
export type GroupUsed = { readonly group: string; readonly rules: readonly string[] };

export type Interpretation = {
  readonly collected: string;
  readonly groups: readonly GroupUsed[];
  readonly results: readonly GradedResult[];
  readonly pattern: PatternFound;
  readonly flags: readonly FlagRaised[];
  readonly hold: Hold;
  readonly changes: readonly Change[];
  /** Rules that fired and those that nearly did. */
  readonly nearMisses: readonly Reason[];
  /** What the clinician's sheet says about response to treatment and pathways; never the patient's letter. */
  readonly clinicianNotes: readonly Reason[];
  readonly sources: readonly SourceUsed[];
};
