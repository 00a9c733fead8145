// An understood report and the desk arrive; the letter, the call sheet or the reasons against it leave.
import { advise } from '../advise/index.js';
import type { Advice, Choices } from '../advise/advice.js';
import type { Kit } from '../app/kit.js';
import { makeCalendar } from '../app/make-calendar.js';
import { makeFridgeSheet } from '../app/make-fridge-sheet.js';
import { type MadeFile, makeLetter, type Outcome, type Wishes } from '../app/make-letter.js';
import type { Format } from '../app/formats.js';
import type { Understood } from '../app/understand.js';
import { type Clinic, composeReasoning } from '../letter/index.js';
import { writeHtml } from '../render/html.js';
import { renderMarkup } from '../render/markup.js';
import { readMarkup } from '../render/read-markup.js';
import type { Desk } from './desk.js';

/** The clinician's choices; null steps are the program's suggestions. */
function choicesOf({ steps, tablets, noFood }: Desk): Choices {
  return {
    steps: steps?.map((step) => ({ ...step, words: step.words?.trim() || null })) ?? null,
    tabletsPrescribed: tablets.prescribed ? { dose: tablets.dose.trim() || null } : null,
    noFood,
  };
}

/** What the command line would be asked for in words. */
function wishesOf(desk: Desk, formats: readonly Format[], date: string): Wishes {
  const checkedBy = desk.release?.by ?? (desk.checkedBy.trim() || null);
  return {
    language: desk.language,
    beside: desk.beside === desk.language ? null : desk.beside,
    formats,
    form: desk.form,
    analogy: desk.analogy,
    easyRead: desk.easyRead,
    checkedBy,
    done: desk.release?.done ?? null,
    choices: choicesOf(desk),
    date,
  };
}

/** Makes the letter with the same door as the command line. */
export function makeFromDesk(
  understood: Understood,
  clinic: Clinic,
  desk: Desk,
  kit: Kit,
  formats: readonly Format[],
  date: string,
): Promise<Outcome> {
  return makeLetter(understood, clinic, wishesOf(desk, formats, date), kit);
}

/** What goes beside the letter. Null where no food may be suggested; empty where it cannot be made. */
export async function makeBeside(
  what: 'fridge' | 'calendar',
  understood: Understood,
  clinic: Clinic,
  desk: Desk,
  kit: Kit,
  date: string,
): Promise<readonly MadeFile[] | null> {
  const wishes = wishesOf(desk, [], date);
  if (what === 'fridge') {
    const sheet = await makeFridgeSheet(understood, clinic, wishes, desk.language, kit);
    return sheet.ok ? (sheet.value?.filter(({ ending }) => ending === 'fridge.pdf') ?? null) : [];
  }
  const calendar = await makeCalendar(understood, clinic, wishes, kit);
  return calendar.ok ? [calendar.value] : [];
}

/** What the program would suggest, before anybody chose. */
export function suggestionsFor(
  { report, interpretation }: Understood,
  desk: Desk,
  date: string,
): Advice {
  return advise(report, interpretation, { ...choicesOf(desk), steps: null }, date);
}

/** The clinician's sheet as a whole HTML page; empty where its template cannot be filled. */
export async function reasoningPage(
  { report, interpretation }: Understood,
  desk: Desk,
  kit: Kit,
  date: string,
): Promise<string> {
  const english = await kit.language('en');
  const advice = advise(report, interpretation, choicesOf(desk), date);
  const sheet = {
    ...composeReasoning(report, interpretation, advice, english),
    date: english.date(date),
  };
  const markup = renderMarkup(await kit.template('reasoning'), sheet);
  const page = markup.ok ? readMarkup(markup.value, 'reasoning.hbs') : markup;
  return page.ok ? writeHtml(page.value, { ...desk.form, size: 'dense' }) : '';
}
