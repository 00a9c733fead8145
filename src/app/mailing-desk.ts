// The choices of a run arrive; the desk at which its letters are made leaves.
import { advise } from '../advise/index.js';
import { type Clinic, composeCallSheet } from '../letter/index.js';
import {
  type Approval,
  type Desk,
  type MadeFile,
  type Passwords,
  sealOf,
  type Understood,
} from '../mailing/index.js';
import { type Checked, faulty, fine, nowhere, type Problem } from '../problem.js';
import { languageTags } from './assets.js';
import { languagePrint, programPrint, templatePrint } from './fingerprints.js';
import type { Arrangement, Kit } from './kit.js';
import { documentOf, makeLetter, type Wishes } from './make-letter.js';
import { doubtsOf, understand } from './understand.js';

/**
 * @param wishes of the run; each report may ask for a language of its own.
 * @param arrangement what the kit was opened with: a corrected template makes its letters again.
 * @param passwords by id; null where letters are not locked. Another file of passwords makes every letter again.
 */
export async function openDesk(
  clinic: Clinic,
  wishes: Wishes,
  kit: Kit,
  passwords: Passwords | null,
  arrangement: Arrangement = {},
): Promise<Desk> {
  const english = await kit.language('en');
  const known = await languageTags();
  const program = await programPrint();
  const templates = await templatePrint({ ...arrangement, easyRead: wishes.easyRead });
  const beside = wishes.beside === null ? '' : await languagePrint(wishes.beside);
  const prints = new Map<string, Promise<string>>();
  const printOf = (tag: string) => {
    const print = prints.get(tag) ?? languagePrint(tag);
    prints.set(tag, print);
    return print;
  };
  const { checkedBy: _checkedBy, done: _done, language: _language, ...shaping } = wishes;
  return {
    read: (written) => understand(written, wishes.date, []),
    languageOf: ({ wishes: own }) => tagOf(own?.language) ?? wishes.language,
    versions: async (language) =>
      known.includes(language)
        ? fine({ program, templates, locale: await printOf(language), beside })
        : faulty([noLanguage(known, language)]),
    doubts: ({ report }) => doubtsIn(report),
    make: (understood, language, approval) =>
      passwords === null
        ? make(understood, own(language, approval))
        : locked(understood, own(language, approval), passwords),
    document: (understood, language, approval) =>
      documentOf(understood, clinic, own(language, approval), kit),
    callSheet: async ({ report, interpretation }) =>
      composeCallSheet(report, interpretation, clinic, english),
    steps: ({ report, interpretation }) =>
      advise(report, interpretation, wishes.choices, wishes.date).steps,
    settings: sealOf([shaping, clinic, passwords === null ? null : [...passwords]]),
    now: () => new Date().toISOString(),
  };

  /** Files write a tag in any case; the folder's spelling is the one that counts (RFC 5646, 2.1.1). */
  function tagOf(written: string | null | undefined): string | null {
    const wished = written?.trim().toLowerCase() ?? '';
    if (wished === '') return null;
    return known.find((tag) => tag.toLowerCase() === wished) ?? wished;
  }

  /** A language beside itself is one language. */
  function own(language: string, approval: Approval): Wishes {
    const second = wishes.beside === language ? null : wishes.beside;
    return { ...wishes, language, beside: second, ...approval };
  }

  /** A letter without a password is not made: it would go out unlocked. */
  async function locked(
    understood: Understood,
    own: Wishes,
    all: Passwords,
  ): Promise<Checked<readonly MadeFile[]>> {
    const password = all.get(understood.report.patient.id ?? '');
    if (password === undefined) return faulty([noPassword]);
    const letter = await documentOf(understood, clinic, own, kit);
    if (!letter.ok) return letter;
    const { drawPdf } = await import('../render/pdf/index.js');
    const facts = { created: `${own.date}T00:00:00Z`, producerVersion: kit.version, password };
    const pdf = await drawPdf(letter.value, own.form, await kit.fonts(), facts);
    return pdf.ok ? fine([{ ending: 'pdf', content: pdf.value }]) : pdf;
  }

  async function make(understood: Understood, own: Wishes) {
    const outcome = await makeLetter(understood, clinic, own, kit);
    if (outcome.kind === 'refused') return faulty(outcome.problems) as Checked<never>;
    if (outcome.kind === 'held') throw new Error('a held report reached the letters');
    // The record of a release lies with the run's other records, not among the letters to be mailed.
    return fine(outcome.files.filter(({ ending }) => !ending.endsWith('.json')));
  }
}

/** An evening asks nobody: what one letter takes as --confirm is corrected in the file here, or made alone. */
function doubtsIn(report: Understood['report']): readonly Problem[] {
  const doubted = report.panel.results.filter(({ doubt }) => doubt !== null);
  return doubtsOf(report).map((problem, at) => ({
    ...problem,
    remedy: `Correct it in the file and give the same command again. If it stands, put this report into a file of its own: ironleaf letter FILE --confirm ${doubted[at]?.analyte ?? ''}.`,
  }));
}

const noPassword: Problem = {
  code: 'no-password',
  place: { ...nowhere, field: 'id' },
  cannot: 'cannot lock this letter: there is no password for it',
  found: null,
  expected: 'a row with this id in the file of passwords',
  remedy: 'Add one and give the same command again.',
};

function noLanguage(known: readonly string[], found: string): Problem {
  return {
    code: 'no-language',
    place: { ...nowhere, field: 'language' },
    cannot: 'cannot write a letter in this language',
    found,
    expected: `one of ${known.join(', ')}`,
    remedy: null,
  };
}
