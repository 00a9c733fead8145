// One understood report and the operator's wishes in; the letter's files, a call sheet or problems out.
import { advise } from '../advise/index.js';
import type { Choices } from '../advise/advice.js';
import {
  type Clinic,
  composeCallSheet,
  composeChartNote,
  composeEasyRead,
  composeLetter,
  composeScript,
  isHeld,
  type Language,
  type LetterInput,
  type ReasoningContent,
} from '../letter/index.js';
import { type Checked, fine, type Problem } from '../problem.js';
import type { LetterDocument, PageForm } from '../render/block.js';
import { writeHtml } from '../render/html.js';
import { renderMarkup } from '../render/markup.js';
import { pairDocuments } from '../render/pair-documents.js';
import { readMarkup } from '../render/read-markup.js';
import { inStyle, type ScriptStyle } from '../render/script-style.js';
import { writeText } from '../render/text.js';
import type { Analogy } from '../terms.js';
import { fhirBundle } from './fhir-bundle.js';
import type { Format, PageFormat } from './formats.js';
import type { Kit } from './kit.js';
import { doubtsOf, type Understood } from './understand.js';

export type Wishes = {
  readonly language: string;
  readonly beside: string | null;
  readonly formats: readonly Format[];
  readonly form: PageForm;
  readonly analogy: Analogy | 'off';
  readonly easyRead: boolean;
  /** Only messages whose translation a qualified person signed. */
  readonly signedOnly?: boolean;
  /** How a script with more than one style is set; Nastaliq where nothing is said. */
  readonly scriptStyle?: ScriptStyle;
  readonly checkedBy: string | null;
  /** What a named clinician did about a held result; with `checkedBy` it releases the letter. */
  readonly done: string | null;
  readonly choices: Choices;
  /** ISO date of the letter. */
  readonly date: string;
};

export type MadeFile = { readonly ending: string; readonly content: Uint8Array | string };

export type Outcome =
  | { readonly kind: 'made'; readonly files: readonly MadeFile[] }
  | { readonly kind: 'held'; readonly callSheet: ReasoningContent }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

/**
 * Makes one letter in every format wished for, or says why not. Writes nothing.
 * @example (await makeLetter(understood, clinic, wishes, kit)).kind // 'made'
 */
export async function makeLetter(
  understood: Understood,
  clinic: Clinic,
  wishes: Wishes,
  kit: Kit,
): Promise<Outcome> {
  const doubts = doubtsOf(understood.report);
  if (doubts.length > 0) return { kind: 'refused', problems: doubts };
  if (isHeld(understood) && releaseOf(wishes) === null) {
    const { report, interpretation } = understood;
    const english = await kit.language('en');
    return { kind: 'held', callSheet: composeCallSheet(report, interpretation, clinic, english) };
  }
  const letter = await documentOf(understood, clinic, wishes, kit);
  if (!letter.ok) return { kind: 'refused', problems: letter.problems };
  const files: MadeFile[] = [];
  for (const format of wishes.formats) {
    if (format === 'script') {
      const script = await scriptOf(understood, clinic, wishes, kit);
      if (!script.ok) return { kind: 'refused', problems: script.problems };
      files.push({ ending: 'script.txt', content: script.value });
      continue;
    }
    const written =
      format === 'note' || format === 'fhir'
        ? await writeRecord(format, letter.value, { understood, clinic, wishes, kit })
        : await writeAs(format, letter.value, wishes, kit);
    if (!written.ok) return { kind: 'refused', problems: written.problems };
    files.push(written.value);
  }
  const release = releaseOf(wishes);
  if (isHeld(understood) && release !== null)
    files.push(releaseRecord(understood, release, wishes));
  return { kind: 'made', files };
}

/** The letter's document model, in one language or two side by side; for a held report only with its release. */
export async function documentOf(
  understood: Understood,
  clinic: Clinic,
  wishes: Wishes,
  kit: Kit,
): Promise<Checked<LetterDocument>> {
  const first = await inOneLanguage(understood, clinic, wishes, wishes.language, kit);
  if (!first.ok || wishes.beside === null) return first;
  const second = await inOneLanguage(understood, clinic, wishes, wishes.beside, kit);
  return second.ok ? pairDocuments(first.value, second.value) : second;
}

async function inOneLanguage(
  understood: Understood,
  clinic: Clinic,
  wishes: Wishes,
  tag: string,
  kit: Kit,
): Promise<Checked<LetterDocument>> {
  const input = inputOf(understood, clinic, wishes, await kit.language(tag));
  const content: Checked<object> = wishes.easyRead ? composeEasyRead(input) : composeLetter(input);
  if (!content.ok) return content;
  const name = wishes.easyRead ? 'easy-read' : 'letter';
  const filled = inStyle(content.value, wishes.scriptStyle ?? 'nastaliq');
  const markup = renderMarkup(await kit.template(name), filled);
  return markup.ok ? readMarkup(markup.value, `${name}.hbs`) : markup;
}

/** To be read aloud in the letter's own language. */
async function scriptOf(understood: Understood, clinic: Clinic, wishes: Wishes, kit: Kit) {
  return composeScript(inputOf(understood, clinic, wishes, await kit.language(wishes.language)));
}

function inputOf(
  { report, interpretation }: Understood,
  clinic: Clinic,
  wishes: Wishes,
  language: Language,
): LetterInput {
  return {
    report,
    interpretation,
    advice: advise(report, interpretation, wishes.choices, wishes.date),
    clinic,
    language,
    options: {
      analogy: wishes.analogy,
      checkedBy: wishes.checkedBy,
      date: wishes.date,
      released: releaseOf(wishes),
      easyRead: wishes.easyRead,
      signedOnly: wishes.signedOnly ?? false,
    },
  };
}

/** The note or the Bundle that goes into the patient's record beside the letter. */
async function writeRecord(
  format: 'note' | 'fhir',
  letter: LetterDocument,
  at: {
    readonly understood: Understood;
    readonly clinic: Clinic;
    readonly wishes: Wishes;
    readonly kit: Kit;
  },
): Promise<Checked<MadeFile>> {
  const { understood, clinic, wishes, kit } = at;
  const { report, interpretation } = understood;
  const { checkedBy, date, language, beside } = wishes;
  const note = composeChartNote(
    report,
    interpretation,
    advise(report, interpretation, wishes.choices, date),
    {
      checkedBy,
      date,
      released: releaseOf(wishes),
      languages: beside === null ? [language] : [language, beside],
    },
    await kit.language('en'),
  );
  if (format === 'note') return fine({ ending: 'note.txt', content: `${note}\n` });
  const pdf = await pdfOf(letter, wishes, kit);
  if (!pdf.ok) return pdf;
  const bundle = fhirBundle(pdf.value, {
    patientId: report.patient.id,
    title: letter.title,
    language,
    clinic: clinic.name,
    date,
    checkedBy,
    note,
    version: kit.version,
  });
  return fine({ ending: 'fhir.json', content: `${JSON.stringify(bundle, null, 2)}\n` });
}

async function writeAs(
  format: PageFormat,
  letter: LetterDocument,
  wishes: Wishes,
  kit: Kit,
): Promise<Checked<MadeFile>> {
  switch (format) {
    case 'html':
      return fine({ ending: 'html', content: writeHtml(letter, wishes.form) });
    case 'text':
      return fine({ ending: 'txt', content: writeText(letter) });
    case 'pdf': {
      const pdf = await pdfOf(letter, wishes, kit);
      return pdf.ok ? fine({ ending: 'pdf', content: pdf.value }) : pdf;
    }
  }
}

async function pdfOf(
  letter: LetterDocument,
  { form, date }: Wishes,
  kit: Kit,
): Promise<Checked<Uint8Array>> {
  const { drawPdf } = await import('../render/pdf/index.js');
  const facts = { created: `${date}T00:00:00Z`, producerVersion: kit.version };
  return drawPdf(letter, form, await kit.fonts(), facts);
}

/** Who released a held letter and what was done, or null. */
export function releaseOf({ checkedBy, done }: Wishes) {
  return checkedBy === null || done === null ? null : { by: checkedBy, done };
}

/** What is kept beside a released letter: who let it go, when, why it was held and what was done. */
function releaseRecord(
  { report, interpretation }: Understood,
  release: { readonly by: string; readonly done: string },
  { date }: Wishes,
): MadeFile {
  const { tier, reasons } = interpretation.hold;
  const record = {
    id: report.patient.id,
    collected: report.panel.collected,
    tier,
    reasons: reasons.map(({ code }) => code),
    releasedBy: release.by,
    done: release.done,
    date,
  };
  return { ending: 'release.json', content: `${JSON.stringify(record, null, 2)}\n` };
}
