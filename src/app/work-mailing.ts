// A folder and the choices of its run arrive; the evening's work is done on it, alone, and counts leave.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { openReports, type ReportSource } from '../intake/index.js';
import { explainer } from '../letter/explain.js';
import {
  callPages,
  callTable,
  Damaged,
  type Desk,
  dropShareLists,
  type Evening,
  lockFolder,
  type Passwords,
  printName,
  type Progress,
  readApprovals,
  readPasswords,
  recordLists,
  runMailing,
  type Shard,
  type Survey,
  shardName,
  summaryPage,
  survey,
  type Tally,
  writeWhole,
} from '../mailing/index.js';
import { columnMapOf } from './commands/input-options.js';
import { clinicOf } from './commands/shared.js';
import { openInputFile, readInputFile } from './input.js';
import { type Kit, openKit, sentences, sizeOf } from './kit.js';
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
  readonly source: ReportSource;
  readonly twice: Survey['twice'];
};

export async function openBench(folder: string, choices: RunChoices): Promise<Bench> {
  const kit = await openKit(choices);
  const clinic = await clinicOf(choices.config ?? undefined, choices.demo);
  const locks = await passwordsOf(choices);
  const desk = await openDesk(clinic, wishesOf(choices), kit, locks, choices);
  return { folder, choices, kit, desk, ...(await readEvening(choices)) };
}

/** A bench on the folder of an earlier run, with that run's choices. */
export async function reopenBench(folder: string): Promise<Bench> {
  const choices = await readRunFile(folder);
  if (choices === null)
    throw new Stop(status.noInput, ['This folder holds no run; make one with ironleaf mailing.']);
  return openBench(folder, choices);
}

export async function eveningOf({ folder, desk, source, twice }: Bench): Promise<Evening> {
  return { source, desk, twice, approvals: await readApprovals(folder) };
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
  const { folder, choices, kit, desk, source, twice } = bench;
  const put = (name: string, content: string | Uint8Array) =>
    writeWhole(join(folder, shardName(name, shard)), content);
  const printed = existsSync(join(folder, printName));
  if (shard.count === 1) await writeRunFile(folder, choices);
  const tally = await runMailing({
    source,
    twice,
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
  if (printed && !existsSync(join(folder, printName)))
    console.error(`${printName} is gone, for letters have changed since. Make it again.`);
  const { words } = explainer(await kit.language('en'));
  const counts = summaryPage(tally, choices.date, (pattern) => words(`pattern.${pattern}`));
  await putPage(put, 'summary', counts, bench);
  await recordLists(folder, shard, desk.now);
  if (shard.count === 1) await dropShareLists(folder, desk.now);
  return tally;
}

/** Writes one of the operator's own pages as HTML and PDF. */
export async function putPage(
  put: (name: string, content: string | Uint8Array) => Promise<void>,
  name: 'calls' | 'review' | 'summary',
  content: object,
  { kit, choices: { date, paper } }: Bench,
  size: 'compact' | 'dense' = 'compact',
): Promise<void> {
  const { html, pdf } = await operatorPage(name, content, kit, date, paper, size);
  await put(`${name}.html`, html);
  await put(`${name}.pdf`, pdf);
}

/** The run's file, read through once: nothing of it stays in memory but where each report stands. */
async function readEvening(
  choices: RunChoices,
): Promise<{ readonly source: ReportSource; readonly twice: Survey['twice'] }> {
  const columns = await columnsOf(choices);
  const file = openInputFile(choices.input);
  const source = await openReports(file, columns === null ? {} : { columns });
  const { twice, ignored, ignoredInAll } = survey(source);
  // This goes into the log of an evening: places and reasons, nothing that was found there.
  const places = ignored.map((problem) => ({ ...problem, found: null }));
  for (const sentence of sentences(places)) console.error(sentence);
  if (ignoredInAll > ignored.length)
    console.error(
      `${ignoredInAll - ignored.length} more were passed over; ironleaf check shows why.`,
    );
  return { source, twice };
}

const largestPasswords = 64 * 1024 * 1024;

/** Null where letters are not locked. */
async function passwordsOf({ passwords, formats }: RunChoices): Promise<Passwords | null> {
  if (passwords === null) return null;
  if (formats.some((format) => format !== 'pdf'))
    throw new Stop(status.usage, ['--passwords: only PDF can be locked; use --format pdf.']);
  const { name, bytes } = await readInputFile(passwords, largestPasswords);
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
    if (fault instanceof Damaged) throw damaged(fault);
    const { code, syscall } = fault as NodeJS.ErrnoException;
    if (code === undefined || syscall === undefined) throw fault;
    throw new Stop(status.cannotWrite, [
      `--out: cannot write into the folder (${code}).`,
      '  Everything finished so far is kept; run the same command again to go on.',
    ]);
  }
}

function damaged({ places }: Damaged): Stop {
  const said = places.slice(0, 20).map(({ file, row }) => {
    const where = row === null ? file : `${file}, row ${row}`;
    return `${where}: cannot read this record; expected it as this program wrote it.`;
  });
  return new Stop(status.badData, [
    ...said,
    '  Nothing was done on its word. Put back the file from a copy, or give the mailing a new folder.',
  ]);
}

async function columnsOf({ columns, languageColumn }: RunChoices) {
  const read = columns === null ? null : await columnMapOf(columns);
  if (languageColumn === null) return read;
  const map = read ?? {};
  return { ...map, columns: { ...map.columns, [languageColumn]: 'language' as const } };
}

function wishesOf(choices: RunChoices): Wishes {
  return {
    language: choices.language,
    beside: choices.beside,
    formats: choices.formats,
    form: { paper: choices.paper, size: sizeOf(choices) },
    analogy: choices.analogy,
    easyRead: choices.easyRead,
    signedOnly: choices.signedOnly,
    ...(choices.scriptStyle === null ? {} : { scriptStyle: choices.scriptStyle }),
    checkedBy: null,
    done: null,
    choices: { steps: null, tabletsPrescribed: null, noFood: !choices.food },
    date: choices.date,
  };
}
