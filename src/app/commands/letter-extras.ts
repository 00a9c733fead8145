// What may lie beside a letter: the week's sheet and a calendar. The understood report comes in, files and sentences leave.
import type { Argv } from 'yargs';
import type { Clinic } from '../../letter/index.js';
import type { Problem } from '../../problem.js';
import { type Kit, sentences } from '../kit.js';
import type { Wishes } from '../make-letter.js';
import type { OutputFile } from '../output.js';
import type { Understood } from '../understand.js';

export function extraOptions<T>(yargs: Argv<T>) {
  return yargs
    .option('fridge-sheet', {
      type: 'boolean',
      default: false,
      describe: 'Also a page with seven meal ideas, where food may raise iron',
    })
    .option('calendar', {
      type: 'boolean',
      default: false,
      describe: 'Also an iCalendar file of the dated steps, without name or result',
    });
}

export type ExtraWishes = { readonly fridgeSheet: boolean; readonly calendar: boolean };

export type Extras = {
  readonly files: readonly OutputFile[];
  /** What was not made and why, for the operator. */
  readonly said: readonly string[];
  readonly refused: boolean;
};

/**
 * Files beside one letter that was made: `STEM.LANG.fridge.html`, `.fridge.pdf` and `STEM.LANG.ics`.
 * A sheet that must not be made is said and is no failure; one that cannot be said in a language is.
 */
export async function makeExtras(
  understood: Understood,
  stem: string,
  wished: ExtraWishes,
  { clinic, wishes, kit }: { readonly clinic: Clinic; readonly wishes: Wishes; readonly kit: Kit },
): Promise<Extras> {
  const files: OutputFile[] = [];
  const said: string[] = [];
  const problems: Problem[] = [];
  const tags = [wishes.language, wishes.beside].filter((tag) => tag !== null);
  for (const tag of wished.fridgeSheet ? tags : []) {
    const { makeFridgeSheet } = await import('../make-fridge-sheet.js');
    const sheet = await makeFridgeSheet(understood, clinic, wishes, tag, kit);
    if (!sheet.ok) problems.push(...sheet.problems);
    else if (sheet.value === null) said.push(`${stem}.${tag}: ${noSheet}`);
    else files.push(...sheet.value.map((file) => named(file, stem, tag)));
  }
  if (wished.calendar) {
    // The folder of a mailing comes with it: it waits until it is asked for.
    const { makeCalendar } = await import('../make-calendar.js');
    const calendar = await makeCalendar(understood, clinic, wishes, kit);
    if (!calendar.ok) problems.push(...calendar.problems);
    else files.push(named(calendar.value, stem, wishes.language));
  }
  return { files, said: [...said, ...sentences(problems)], refused: problems.length > 0 };
}

const noSheet =
  'no week’s sheet was made: with these results the letter suggests no foods that raise iron.';

function named(
  { ending, content }: { readonly ending: string; readonly content: OutputFile['content'] },
  stem: string,
  tag: string,
): OutputFile {
  return { name: `${stem}.${tag}.${ending}`, content };
}
