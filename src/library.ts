// Values arrive, values leave: what other programs may call. Only `openKit` reads files, and only the package's own.
/**
 * Turns iron blood results into a letter that the patient can read, from another program.
 *
 * Every function takes values and returns values: nothing is written, logged or sent, and no clock is read, so the
 * same arguments give the same letter. `openKit` alone reads files, those that came with this package.
 * A faulty report is a list of problems, never a throw; a throw is a fault of this package.
 *
 * A result that must be a phone call first gives no letter: `makeLetter` then answers `held`, with a call sheet.
 * Until `checkedBy` names a clinician, every page says that nobody has checked it.
 *
 * @example
 * ```ts
 * import { makeLetter, openKit, readReport } from 'ironleaf';
 *
 * const date = '2026-11-25';
 * const report = await readReport({ name: 'ada.json', bytes }, { today: date });
 * if (!report.ok) throw new Error(report.problems.map(sayProblem).join('\n'));
 * const made = await makeLetter(report.value, clinic, { date, formats: ['html', 'pdf'] }, await openKit());
 * if (made.kind === 'made') for (const { ending, content } of made.files) await keep(ending, content);
 * ```
 * @packageDocumentation
 */
import type { Advice, Choices } from './advise/advice.js';
import { openKit as openOurKit, type Kit as OurKit } from './app/kit.js';
import type { PageFormat } from './app/formats.js';
import { makeLetter as makeOurLetter, type MadeFile } from './app/make-letter.js';
import { Stop } from './app/status.js';
import { measure } from './app/understand.js';
import { type InputOptions, readInput } from './intake/index.js';
import type { InputFile, WrittenPatient } from './intake/written.js';
import { type Interpretation, interpret } from './interpret/index.js';
import { composeLetter as composeOurLetter } from './letter/index.js';
import type { Clinic } from './letter/clinic.js';
import type { Content } from './letter/content.js';
import type { Language as OurLanguage } from './letter/language.js';
import type { LetterOptions } from './letter/letter-input.js';
import type { ReasoningContent } from './letter/reasoning.js';
import { type Checked, faulty, nowhere, type Problem } from './problem.js';
import type { LetterDocument, PageForm } from './render/block.js';
import { renderMarkup, type Template } from './render/markup.js';
import type { Fonts as OurFonts } from './render/pdf/index.js';
import { readMarkup } from './render/read-markup.js';
import type { Report } from './report/report.js';
import type { Analogy, Analyte } from './terms.js';

export { advise } from './advise/index.js';
export { interpret } from './interpret/index.js';
export { sayProblem } from './problem.js';
export { openTemplate } from './render/markup.js';
export { writeHtml } from './render/html.js';
export { writeText } from './render/text.js';
export type * from './advise/advice.js';
export type { PageFormat } from './app/formats.js';
export type { MadeFile } from './app/make-letter.js';
export type { InputFile, WrittenPatient } from './intake/written.js';
export type * from './interpret/interpretation.js';
export type { CheckedHow } from './knowledge/row.js';
export type * from './letter/clinic.js';
export type * from './letter/content.js';
export type { Addressee, LetterOptions, Release } from './letter/letter-input.js';
export type { ReasoningBlock, ReasoningContent, ReasoningTable } from './letter/reasoning.js';
export type { Checked, Place, Problem } from './problem.js';
export type * from './render/block.js';
export type { Template, TemplateText } from './render/markup.js';
export type * from './report/report.js';
export type * from './terms.js';

/** A language that can say every message of a letter; comes from a kit. */
export type Language = {
  readonly tag: string;
  readonly name: string;
  readonly englishName: string;
  readonly dir: 'ltr' | 'rtl';
  /** Of its weakest message; anything but `source` and `signed` is said on the letter. */
  readonly reviewState: 'source' | 'draft-machine' | 'translated' | 'revised' | 'signed';
};

/** Faces opened once for all letters of a process; come from a kit. */
export type Fonts = {
  /** Opens what these languages need. `drawPdf` does it by itself. */
  readonly load: (languages: Iterable<string>) => Promise<void>;
};

/** The templates, languages and faces that came with this package, each read when first asked for. */
export type Kit = {
  readonly version: string;
  /** Throws when there is no such language. */
  readonly language: (tag: string) => Promise<Language>;
  readonly template: (name: 'letter' | 'reasoning') => Promise<Template>;
  readonly fonts: () => Promise<Fonts>;
};

const ours = new WeakMap<Kit, OurKit>();

/**
 * Opens what the package brings along. One kit serves any number of letters.
 * @example const kit = await openKit();
 */
export async function openKit(): Promise<Kit> {
  const inner = await openOurKit();
  const kit: Kit = {
    version: inner.version,
    language: (tag) => inner.language(tag).catch(plainly),
    template: (name) => inner.template(name),
    fonts: () => inner.fonts(),
  };
  ours.set(kit, inner);
  return kit;
}

/** A command line stops with sentences; a caller is thrown an error that says them. */
function plainly(fault: unknown): never {
  throw fault instanceof Stop ? new Error(fault.sentences.join('\n')) : fault;
}

export type ReadOptions = {
  /** ISO date that ages and intervals are counted to. */
  readonly today: string;
  /** Doubtful values that somebody looked at and says stand. */
  readonly confirmed?: readonly Analyte[];
  /** What is known of the one person where the file, such as pasted text, does not say it. */
  readonly patient?: Partial<WrittenPatient>;
  /** ISO day of the sample, where the file does not say it. */
  readonly collected?: string;
};

/**
 * Reads and measures every report of a file: JSON, CSV, XLSX, FHIR R4, HL7 v2 or pasted text, told from its content.
 * One faulty report spoils no other. `ignored` says what was passed over and why.
 * @example (await readReports({ name: 'run.csv', bytes }, { today: '2026-11-25' })).reports.length // 12
 */
export async function readReports(
  file: InputFile,
  { today, confirmed = [], ...said }: ReadOptions,
): Promise<{
  readonly reports: readonly Checked<Report>[];
  readonly ignored: readonly Problem[];
}> {
  const options: InputOptions = said;
  const { reports, ignored } = await readInput(file, options);
  return {
    reports: reports.map((written) =>
      written.ok ? measure(written.value, today, confirmed) : written,
    ),
    ignored,
  };
}

/**
 * Reads and measures a file with one report.
 * Problems: those of the report; `one-report` when the file holds none or several.
 * @example await readReport({ name: 'ada.json', bytes }, { today: '2026-11-25' }) // { ok: true, value: { patient: …
 */
export async function readReport(file: InputFile, options: ReadOptions): Promise<Checked<Report>> {
  const { reports } = await readReports(file, options);
  const [only] = reports;
  if (only !== undefined && reports.length === 1) return only;
  return faulty([
    {
      code: 'one-report',
      place: { ...nowhere, file: file.name },
      cannot: 'cannot take the file for one report',
      found: `${reports.length} reports`,
      expected: 'one, or a call of readReports',
      remedy: null,
    },
  ]);
}

/** What a letter is said from. */
export type LetterParts = {
  readonly report: Report;
  readonly interpretation: Interpretation;
  readonly advice: Advice;
  readonly clinic: Clinic;
  readonly language: Language;
  readonly options: LetterOptions;
};

/**
 * Says one letter in one language: every word, no look.
 * Problems: a held report that nobody released, details of the clinic that are missing, a message without words.
 * @example composeLetter({ report, interpretation, advice, clinic, language: await kit.language('ar'), options })
 */
export function composeLetter(input: LetterParts): Checked<Content> {
  return composeOurLetter({ ...input, language: input.language as OurLanguage });
}

/**
 * Arranges the words of a letter as its template says; every output is written from the document that leaves.
 * Problems: a variable the content lacks, markup outside the closed subset; each with the line of the template.
 * @example arrangeLetter(content, await kit.template('letter'))
 */
export function arrangeLetter(content: Content, template: Template): Checked<LetterDocument> {
  const markup = renderMarkup(template, content);
  return markup.ok ? readMarkup(markup.value, template.file) : markup;
}

export type DrawOptions = {
  readonly form: PageForm;
  /** ISO date and time, such as '2026-11-25T00:00:00Z', for the metadata: no clock is read. */
  readonly created: string;
  /** Printable ASCII; with it the file is encrypted. */
  readonly password?: string;
};

/**
 * Draws a letter as a tagged PDF. The same document, options and kit give the same bytes.
 * Problems: `glyph-missing` with the character's code point, `too-tall`.
 * @example await drawPdf(letter, { form: { paper: 'A4', size: 'standard' }, created: '2026-11-25T00:00:00Z' }, kit)
 */
export async function drawPdf(
  letter: LetterDocument,
  { form, created, password }: DrawOptions,
  kit: Kit,
): Promise<Checked<Uint8Array>> {
  const { drawPdf: draw } = await import('./render/pdf/index.js');
  return draw(letter, form, (await kit.fonts()) as OurFonts, {
    created,
    producerVersion: kit.version,
    ...(password === undefined ? {} : { password }),
  });
}

/** What a letter is asked for; only its date has no default. */
export type LetterWishes = {
  /** ISO date of the letter. */
  readonly date: string;
  /** `en` unless said. */
  readonly language?: string;
  /** A second language, side by side. */
  readonly beside?: string | null;
  /** HTML alone unless said. */
  readonly formats?: readonly PageFormat[];
  /** A4 in the standard size unless said. */
  readonly form?: PageForm;
  /** `shirt-shop` unless said. */
  readonly analogy?: Analogy | 'off';
  readonly easyRead?: boolean;
  /** Refuses a letter with a message whose translation nobody signed. */
  readonly signedOnly?: boolean;
  /** The clinician who read the letter. */
  readonly checkedBy?: string | null;
  /** What a named clinician did about a held result; with `checkedBy` it releases the letter. */
  readonly done?: string | null;
  /** The clinician's choices; without them next steps are suggested. */
  readonly choices?: Choices;
};

/** Files to keep, a call to make before any letter, or why there is none. */
export type LetterOutcome =
  | { readonly kind: 'made'; readonly files: readonly MadeFile[] }
  | { readonly kind: 'held'; readonly callSheet: ReasoningContent }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

/**
 * Makes one letter of one measured report, in every format wished for, or says why not. Writes nothing.
 * Throws when there is no such language.
 * @example (await makeLetter(report, clinic, { date: '2026-11-25', formats: ['pdf'] }, kit)).kind // 'made'
 */
export async function makeLetter(
  report: Report,
  clinic: Clinic,
  wishes: LetterWishes,
  kit: Kit,
): Promise<LetterOutcome> {
  const inner = ours.get(kit);
  if (inner === undefined) throw new Error('makeLetter: expected a kit that openKit gave');
  const understood = { report, interpretation: interpret(report, wishes.date) };
  return makeOurLetter(understood, clinic, { ...defaults, ...wishes }, inner).catch(plainly);
}

const defaults = {
  language: 'en',
  beside: null,
  formats: ['html'],
  form: { paper: 'A4', size: 'standard' },
  analogy: 'shirt-shop',
  easyRead: false,
  checkedBy: null,
  done: null,
  choices: { steps: null, tabletsPrescribed: null, noFood: false },
} as const;
