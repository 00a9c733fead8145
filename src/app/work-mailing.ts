// A folder and the choices of its run arrive; the evening's work is done on it, alone, and counts leave.
import { join } from 'node:path';
import { largestFile, readColumnMap, readInput } from '../intake/index.js';
import type { WrittenReport } from '../intake/written.js';
import { explainer } from '../letter/explain.js';
import {
  callPages,
  callTable,
  type Desk,
  type Evening,
  findTwice,
  lockFolder,
  type Progress,
  type Passwords,
  readApprovals,
  readPasswords,
  recordLists,
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
import { type RunChoices, readRunFile, writeRunFile } from './run-file.js';
import { Stop, status } from './status.js';

/** Everything at hand for one folder: what is asked for, what is in the file, how letters are made. */
export type Bench = {
  readonly folder: string;
  readonly choices: RunChoices;
  readonly kit: Kit;
  readonly desk: Desk;
  readonly reports: readonly Checked<WrittenReport>[];
};

export async function openBench(folder: string, choices: RunChoices): Promise<Bench> {
  const kit = await openKit();
  const clinic = await clinicOf(choices.config ?? undefined, choices.demo);
  const desk = await openDesk(clinic, wishesOf(choices), kit, await passwordsOf(choices));
  return { folder, choices, kit, desk, reports: await readEvening(choices) };
}

/** A bench on the folder of an earlier run, with that run's choices. */
export async function reopenBench(folder: string): Promise<Bench> {
  const choices = await readRunFile(folder);
  if (choices === null)
    throw new Stop(status.noInput, ['This folder holds no run; make one with ironleaf mailing.']);
  return openBench(folder, choices);
}

export async function eveningOf({ folder, desk, reports }: Bench): Promise<Evening> {
  return { reports, desk, twice: findTwice(reports), approvals: await readApprovals(folder) };
}

/**
 * Runs the mailing of a folder that is already ours alone. Stops with 73 when it cannot be written; whatever was
 * finished by then stays, whole and recorded.
 */
export async function workMailing(
  bench: Bench,
  shard: Shard,
  tell: (progress: Progress) => void,
): Promise<Tally> {
  const { folder, choices, kit, desk, reports } = bench;
  const put = (name: string, content: string | Uint8Array) =>
    writeWhole(join(folder, shardName(name, shard)), content);
  if (shard.count === 1) await writeRunFile(folder, choices);
  const tally = await runMailing({
    reports,
    folder,
    desk,
    shard,
    tell,
    date: choices.date,
    writeCalls: async (calls) => {
      await put('calls.csv', callTable(calls));
      const pages = callPages(calls, choices.date);
      await putPage(put, 'calls', pages, bench);
    },
  });
  const { words } = explainer(await kit.language('en'));
  const counts = summaryPage(tally, choices.date, (pattern) => words(`pattern.${pattern}`));
  await putPage(put, 'summary', counts, bench);
  await recordLists(folder, shard, desk.now);
  return tally;
}

/** Writes one of the operator's own pages as HTML and PDF. */
export async function putPage(
  put: (name: string, content: string | Uint8Array) => Promise<void>,
  name: 'calls' | 'review' | 'summary',
  content: object,
  { kit, choices: { date, paper } }: Bench,
): Promise<void> {
  const { html, pdf } = await operatorPage(name, content, kit, date, paper);
  await put(`${name}.html`, html);
  await put(`${name}.pdf`, pdf);
}

/** Every report of the run's file. */
async function readEvening(choices: RunChoices): Promise<readonly Checked<WrittenReport>[]> {
  const file = await readInputFile(choices.input, largestFile);
  const columns = await columnsOf(choices);
  const intake = await readInput(file, columns === null ? {} : { columns });
  // This goes into the log of an evening: places and reasons, nothing that was found there.
  const places = intake.ignored.map((problem) => ({ ...problem, found: null }));
  for (const sentence of sentences(places)) console.error(sentence);
  return intake.reports;
}

/** Null where letters are not locked. */
async function passwordsOf({ passwords, formats }: RunChoices): Promise<Passwords | null> {
  if (passwords === null) return null;
  if (formats.some((format) => format !== 'pdf'))
    throw new Stop(status.usage, ['--passwords: only PDF can be locked; use --format pdf.']);
  const { name, bytes } = await readInputFile(passwords, largestFile);
  const read = readPasswords(name, new TextDecoder().decode(bytes));
  if (!read.ok) throw new Stop(status.badData, sentences(read.problems));
  return read.value;
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

function wishesOf(choices: RunChoices): Wishes {
  return {
    language: choices.language,
    beside: choices.beside,
    formats: choices.formats,
    form: { paper: choices.paper, size: choices.largePrint ? 'large' : 'standard' },
    analogy: choices.analogy,
    easyRead: choices.easyRead,
    signedOnly: choices.signedOnly,
    checkedBy: null,
    done: null,
    choices: { steps: null, tabletsPrescribed: null, noFood: !choices.food },
    date: choices.date,
  };
}
