// The choices of a run and its folder arrive; the evening's work is done on it, alone, and counts leave.
import { join } from 'node:path';
import { largestFile, readColumnMap, readInput } from '../intake/index.js';
import type { WrittenReport } from '../intake/written.js';
import { explainer } from '../letter/explain.js';
import {
  callPages,
  callTable,
  lockFolder,
  type Progress,
  runMailing,
  type Shard,
  shardName,
  summaryPage,
  type Tally,
  writeWhole,
} from '../mailing/index.js';
import type { Checked } from '../problem.js';
import { clinicOf } from './commands/shared.js';
import { readInputFile } from './input.js';
import { type Kit, openKit, sentences } from './kit.js';
import { openDesk } from './mailing-desk.js';
import type { Wishes } from './make-letter.js';
import { operatorPage } from './operator-page.js';
import { type RunChoices, writeRunFile } from './run-file.js';
import { Stop, status } from './status.js';

export type Work = {
  readonly folder: string;
  readonly choices: RunChoices;
  readonly shard: Shard;
  readonly tell: (progress: Progress) => void;
};

/**
 * Runs the mailing of a folder under its lock. Stops with 73 when another run is at work on the folder or it
 * cannot be written; whatever was finished by then stays, whole and recorded.
 */
export async function workMailing(work: Work): Promise<Tally> {
  const { folder, choices, shard } = work;
  const kit = await openKit();
  const clinic = await clinicOf(choices.config ?? undefined, choices.demo);
  const desk = await openDesk(clinic, wishesOf(choices), kit);
  const reports = await readEvening(choices);
  return inFolder(folder, shard, async () => {
    if (shard.count === 1) await writeRunFile(folder, choices);
    const tally = await runMailing({
      reports,
      folder,
      desk,
      shard,
      date: choices.date,
      tell: work.tell,
      writeCalls: async (calls) => {
        const put = (name: string, content: string | Uint8Array) =>
          writeWhole(join(folder, shardName(name, shard)), content);
        await put('calls.csv', callTable(calls));
        const pages = callPages(calls, choices.date);
        const { html, pdf } = await operatorPage('calls', pages, kit, choices.date, choices.paper);
        await put('calls.html', html);
        await put('calls.pdf', pdf);
      },
    });
    await writeSummary(work, tally, kit);
    return tally;
  });
}

/** Every report of the run's file. */
export async function readEvening(choices: RunChoices): Promise<readonly Checked<WrittenReport>[]> {
  const file = await readInputFile(choices.input, largestFile);
  const columns = await columnsOf(choices);
  const intake = await readInput(file, columns === null ? {} : { columns });
  for (const sentence of sentences(intake.ignored)) console.error(sentence);
  return intake.reports;
}

/** Only one run at a time; faults of the file system become sentences without paths. */
export async function inFolder<T>(
  folder: string,
  shard: Shard,
  work: () => Promise<T>,
): Promise<T> {
  try {
    const lock = await lockFolder(folder, shard);
    if (!lock.ok)
      throw new Stop(status.cannotWrite, [
        `--out: another run is at work on this folder (${lock.by}).`,
        `  Wait for it. If it is certain that none is, delete the file ${lock.file} in the folder.`,
      ]);
    try {
      return await work();
    } finally {
      await lock.free();
    }
  } catch (fault) {
    const { code, syscall } = fault as NodeJS.ErrnoException;
    if (code === undefined || syscall === undefined) throw fault;
    throw new Stop(status.cannotWrite, [
      `--out: cannot write into the folder (${code}).`,
      '  Everything finished so far is kept; run the same command again to go on.',
    ]);
  }
}

async function columnsOf({ columns, languageColumn }: RunChoices) {
  const read = columns === null ? null : readColumnMap(await readInputFile(columns, 1024 * 1024));
  if (read !== null && !read.ok) throw new Stop(status.badData, sentences(read.problems));
  if (languageColumn === null) return read?.value ?? null;
  const map = read?.value ?? {};
  return { ...map, columns: { ...map.columns, [languageColumn]: 'language' as const } };
}

async function writeSummary({ folder, choices, shard }: Work, tally: Tally, kit: Kit) {
  const { words } = explainer(await kit.language('en'));
  const content = summaryPage(tally, choices.date, (pattern) => words(`pattern.${pattern}`));
  const { html, pdf } = await operatorPage('summary', content, kit, choices.date, choices.paper);
  await writeWhole(join(folder, shardName('summary.html', shard)), html);
  await writeWhole(join(folder, shardName('summary.pdf', shard)), pdf);
}

export function wishesOf(choices: RunChoices): Wishes {
  return {
    language: choices.language,
    beside: choices.beside,
    formats: choices.formats,
    form: { paper: choices.paper, size: choices.largePrint ? 'large' : 'standard' },
    analogy: choices.analogy,
    easyRead: choices.easyRead,
    checkedBy: null,
    done: null,
    choices: { steps: null, tabletsPrescribed: null, noFood: !choices.food },
    date: choices.date,
  };
}
