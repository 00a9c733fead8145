// ironleaf release: a held report and what was done about it in; its letter and the record of its release out.
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Argv, CommandModule } from 'yargs';
import {
  type Evening,
  type Judged,
  judge,
  letterFolder,
  whole,
  writeRelease,
} from '../../mailing/index.js';
import { sayProgress } from '../say-progress.js';
import { Stop, status } from '../status.js';
import { eveningOf, inFolder, reopenBench, workMailing } from '../work-mailing.js';
import { named } from './letter-options.js';
import { dateOf } from './shared.js';

function options(yargs: Argv) {
  return yargs
    .positional('folder', { type: 'string', demandOption: true, describe: 'Folder of a run' })
    .option('id', { type: 'string', demandOption: true, describe: 'Patient’s id, as in calls.csv' })
    .option('checked-by', {
      type: 'string',
      demandOption: true,
      describe: 'Clinician who lets the letter go',
    })
    .option('done', { type: 'string', demandOption: true, describe: 'What was done, in words' })
    .option('date', { type: 'string', describe: 'Date of the release, YYYY-MM-DD' })
    .example(
      '$0 release evening --id SB-1 --checked-by "Dr Abara" --done "Phoned 10:20"',
      'Makes the letter; the file of the run is read again',
    );
}
type Words = Awaited<ReturnType<typeof options>['argv']>;

export const releaseCommand: CommandModule<object, Words> = {
  command: 'release <folder>',
  describe: 'Let a held letter go, with the name of a clinician and what was done',
  builder: (yargs) => options(yargs) as Argv<Words>,
  handler: async (words) => {
    const by = named(words.checkedBy, '--checked-by') ?? '';
    const done = named(words.done, '--done') ?? '';
    const bench = await reopenBench(words.folder);
    await inFolder(words.folder, whole, async () => {
      const evening = await eveningOf(bench);
      const { held, index } = await findHeld(evening, words.id);
      const { tier, reasons } = held.understood.interpretation.hold;
      const release = {
        id: held.id ?? held.stem,
        input: held.input ?? '',
        tier,
        reasons: reasons.map(({ code }) => code),
        releasedBy: by,
        done,
        date: dateOf(words.date),
      };
      await refuseUnready(evening, index, release);
      await writeRelease(words.folder, held.stem, release);
      const { outcomes } = await workMailing(
        bench,
        whole,
        sayProgress(process.stderr, () => performance.now()),
      );
      console.log(`${held.stem}: released`);
      const made = (await readdir(join(words.folder, letterFolder))).some((name) =>
        name.startsWith(`${held.stem}.`),
      );
      console.error(
        `Its letter ${made ? 'lies with the others now' : 'could not be made: see to-fix.csv'}. Still to phone: ${outcomes.held}.`,
      );
      if (!made) process.exitCode = status.someHeldOrRefused;
    });
  },
};

type Held = Judged & { readonly kind: 'held' };

async function findHeld(
  evening: Evening,
  id: string,
): Promise<{ readonly held: Held; readonly index: number }> {
  let known = false;
  for (let index = 0; index < evening.source.count; index += 1) {
    const { report } = evening.source.read(index);
    if (!report.ok || (report.value.patient.id !== id && `report-${index + 1}` !== id)) continue;
    known = true;
    const judged = await judge(evening, index);
    if (judged.kind === 'held') return { held: judged, index };
  }
  throw new Stop(status.usage, [
    known
      ? '--id: no letter of this patient is held.'
      : '--id: no report of this run’s file has this id.',
  ]);
}

type Release = Parameters<typeof writeRelease>[2];

/** Nothing is released that could not be made: the release would be of a report that is still to be corrected. */
async function refuseUnready(evening: Evening, index: number, release: Release): Promise<void> {
  const stem = (await judge(evening, index)).stem;
  const released = new Map([...evening.approvals.released, [stem, release] as const]);
  const after = await judge({ ...evening, approvals: { ...evening.approvals, released } }, index);
  if (after.kind !== 'refused') return;
  const codes = [...new Set(after.problems.map(({ code }) => code.replaceAll('-', ' ')))];
  throw new Stop(status.badData, [
    `--id: the letter cannot be made yet (${codes.join(', ')}); nothing was released.`,
    '  Phone the patient all the same. Correct the file, give the mailing command again, then release.',
  ]);
}
