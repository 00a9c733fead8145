// The types of what a letter is made from; nothing runs here.
import type { Advice } from '../advise/advice.js';
import type { Interpretation } from '../interpret/interpretation.js';
import type { Report } from '../report/report.js';
import type { Analogy } from '../terms.js';
import type { Clinic } from './clinic.js';
import type { Language } from './language.js';
import type { Voice } from './say.js';

/** Who opens the letter. Without a choice: the person, or the carer of a child. */
export type Addressee =
  | { readonly kind: 'patient' }
  | { readonly kind: 'carer'; readonly name: string | null };

/** A named clinician lets a held letter go, and says what was done. */
export type Release = { readonly by: string; readonly done: string };

export type LetterOptions = {
  readonly analogy: Analogy | 'off';
  /** The clinician who read the letter; until then every page says that nobody has. */
  readonly checkedBy: string | null;
  /** ISO date of the letter. */
  readonly date: string;
  readonly addressee?: Addressee | null;
  readonly released?: Release | null;
  readonly easyRead: boolean;
  /** Refuses a letter with a message whose translation nobody signed. */
  readonly signedOnly?: boolean;
};

export type LetterInput = {
  readonly report: Report;
  readonly interpretation: Interpretation;
  readonly advice: Advice;
  readonly clinic: Clinic;
  readonly language: Language;
  readonly options: LetterOptions;
};

/** What every section is told from. */
export type Told = LetterInput & {
  readonly voice: Voice;
  readonly addressee: Addressee;
  /** The letter opens with when to get help. */
  readonly urgent: boolean;
};
