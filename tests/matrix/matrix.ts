// The example reports arrive; each is made in every language and every form, and what went wrong leaves, with its place.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readClinic } from '../../src/app/config.js';
import { type Kit, openKit } from '../../src/app/kit.js';
import { makeFridgeSheet } from '../../src/app/make-fridge-sheet.js';
import { type MadeFile, makeLetter, type Wishes } from '../../src/app/make-letter.js';
import { type Understood, understand } from '../../src/app/understand.js';
import { readInput } from '../../src/intake/index.js';
import type { Clinic } from '../../src/letter/index.js';
import { sayProblem } from '../../src/problem.js';
import { analytes } from '../../src/terms.js';
import { plainWishes, today } from '../app/wishes.js';
import { pdfjsText } from '../render/pdf/pdfjs-text.js';

/** A held report is released and a doubtful value confirmed, so that every report has a letter to look at. */
const usual: Wishes = {
  ...plainWishes,
  formats: ['pdf', 'html', 'text'],
  checkedBy: 'Dr Imre Vale',
  done: 'phoned and seen today',
};

type Form = {
  readonly name: string;
  readonly design?: 'short';
  readonly wishes?: Partial<Wishes>;
  readonly fridge?: true;
  /** A letter beside itself is none. */
  readonly notIn?: string;
};

const forms: readonly Form[] = [
  { name: 'letter' },
  { name: 'beside English', wishes: { beside: 'en' }, notIn: 'en' },
  { name: 'large print', wishes: { form: { paper: 'Letter', size: 'large' } } },
  { name: 'easy read', wishes: { easyRead: true } },
  {
    name: 'short design',
    design: 'short',
    wishes: { form: { paper: 'A4', size: 'compact' } },
  },
  { name: 'fridge sheet', fridge: true },
];

export type Example = { readonly name: string; readonly understood: Understood };

/** Every report that can be understood in files of reports; `refused` says of the others why. */
export async function readExamples(folders: readonly string[]) {
  const examples: Example[] = [];
  const refused: string[] = [];
  for (const path of folders.flatMap(reportFiles)) {
    const { reports } = await readInput({ name: path, bytes: readFileSync(path) });
    for (const [index, written] of reports.entries()) {
      const name = reports.length === 1 ? path : `${path} (${index + 1})`;
      const read = written.ok ? understand(written.value, today, analytes) : written;
      if (read.ok) examples.push({ name, understood: read.value });
      else refused.push(...read.problems.map((problem) => `${name}: ${sayProblem(problem)}`));
    }
  }
  return { examples, refused };
}

function reportFiles(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => /\.(json|csv|xlsx|hl7|txt)$/.test(name) && !notReports.test(name))
    .map((name) => join(folder, name))
    .sort();
}
const notReports = /^clinic\.json$|\.map\.json$/;

export type Tally = {
  readonly letters: number;
  readonly files: number;
  /** Sheets that are rightly not made, since food may not be spoken of. */
  readonly without: number;
  /** PDFs that a reader of others read back. */
  readonly readBack: number;
  readonly faults: readonly string[];
};

/**
 * Makes all of them, one after another, and looks at every file.
 * @param readEvery Reads every n-th PDF back with pdfjs, which takes longer than making it; 0 reads none.
 * @param said Called after each example with what it came to.
 */
export async function makeMatrix(
  examples: readonly Example[],
  languages: readonly string[],
  readEvery: number,
  said: (name: string, letters: number) => void = () => {},
): Promise<Tally> {
  const clinic = exampleClinic();
  const kits = { full: await openKit(), short: await openKit({ design: 'short' }) };
  const faults: string[] = [];
  let [letters, files, without, pdfs, readBack] = [0, 0, 0, 0, 0];
  for (const { name, understood } of examples) {
    for (const language of languages) {
      for (const form of forms.filter(({ notIn }) => notIn !== language)) {
        const at = `${name}, ${language}, ${form.name}`;
        const made = await makeForm(understood, language, form, clinic, kits).catch((fault) => [
          `threw ${fault instanceof Error ? fault.stack : String(fault)}`,
        ]);
        if (made === null) without += 1;
        else letters += 1;
        for (const file of made ?? []) {
          if (typeof file === 'string') {
            faults.push(`${at}: ${file}`);
            continue;
          }
          files += 1;
          const isPdf = file.ending.endsWith('pdf');
          if (isPdf) pdfs += 1;
          const readIt = isPdf && readEvery > 0 && pdfs % readEvery === 0;
          if (readIt) readBack += 1;
          const seen = await faultOf(file, readIt);
          if (seen !== null) faults.push(`${at}, ${file.ending}: ${seen}`);
        }
      }
    }
    said(name, letters);
  }
  return { letters, files, without, readBack, faults };
}

/** The files, or sentences of what was refused; null where no sheet is owed. */
async function makeForm(
  understood: Understood,
  language: string,
  { design, wishes: asked, fridge }: Form,
  clinic: Clinic,
  kits: { readonly full: Kit; readonly short: Kit },
): Promise<readonly (MadeFile | string)[] | null> {
  const wishes = { ...usual, ...asked, language };
  const kit = kits[design ?? 'full'];
  if (fridge) {
    const sheet = await makeFridgeSheet(understood, clinic, wishes, language, kit);
    return sheet.ok ? sheet.value : sheet.problems.map(sayProblem);
  }
  const made = await makeLetter(understood, clinic, wishes, kit);
  if (made.kind === 'held') return ['held although it was released'];
  return made.kind === 'made' ? made.files : made.problems.map(sayProblem);
}

function exampleClinic(): Clinic {
  const read = readClinic('clinic.json', readFileSync('examples/clinic.json'), true);
  if (!read.ok) throw new Error(read.problems.map(sayProblem).join('\n'));
  return read.value;
}

/** Marks of a letter that was put together wrongly: a message without its words, a value nobody wrote. */
const slips = /\{\{|\bundefined\b|\[object |\bNaN\b|\uFFFD/;

async function faultOf({ ending, content }: MadeFile, readIt: boolean): Promise<string | null> {
  if (typeof content === 'string') {
    const slip = slips.exec(content.replace(/;base64,[\w+/=]*/g, ''));
    return slip === null ? null : `holds "${slip[0]}"`;
  }
  if (!ending.endsWith('pdf')) return null;
  if (Buffer.from(content.subarray(0, 5)).toString('latin1') !== '%PDF-') return 'is no PDF';
  if (!readIt) return null;
  const text = await pdfjsText(content);
  const slip = /\0/.exec(text) ?? slips.exec(text);
  if (text.trim() === '') return 'has no text';
  return slip === null ? null : `reads "${slip[0]}"`;
}
