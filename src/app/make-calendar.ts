// An understood report and the operator's wishes in; an iCalendar file of the dated steps out.
import { advise } from '../advise/index.js';
import { type Clinic, composeCalendar } from '../letter/index.js';
import { sealOf, sha256 } from '../mailing/seal.js';
import { type Checked, fine } from '../problem.js';
import { writeCalendar } from '../render/calendar.js';
import type { Kit } from './kit.js';
import { type MadeFile, releaseOf, type Wishes } from './make-letter.js';
import type { Understood } from './understand.js';

/**
 * The dates of one letter for a calendar, in the letter's first language.
 * An event's UID is a hash of the panel, the step and its date: importing twice doubles nothing, and nobody's
 * name or number can be guessed from it.
 * @example await makeCalendar(understood, clinic, wishes, kit) // { ok: true, value: { ending: 'ics', … }, notes: [] }
 */
export async function makeCalendar(
  { report, interpretation }: Understood,
  clinic: Clinic,
  wishes: Wishes,
  kit: Kit,
): Promise<Checked<MadeFile>> {
  const calendar = composeCalendar({
    report,
    interpretation,
    advice: advise(report, interpretation, wishes.choices, wishes.date),
    clinic,
    language: await kit.language(wishes.language),
    options: { ...wishes, released: releaseOf(wishes) },
  });
  if (!calendar.ok) return calendar;
  const { collected, results } = report.panel;
  const seal = sealOf([report.patient.id, collected, results.map(({ copied }) => copied)]);
  const uidOf = ({ step, by }: { step: string; by: string }) =>
    `${sha256(`${seal} ${step} ${by}`).slice(0, 32)}@ironleaf.invalid`;
  return fine({ ending: 'ics', content: writeCalendar(calendar.value, uidOf) });
}
