// A file's reports and a folder arrive; letters, the list to phone and the list to fix stand in the folder.
import { existsSync } from 'node:fs';
import { readdir, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { ReportSource } from '../intake/index.js';
import { readApprovals } from './approvals.js';
import { type Call, callOf, sortCalls } from './call-list.js';
import type { Desk, Progress } from './desk.js';
import { Damaged } from './damaged.js';
import { type Evening, type Judged, judge } from './judge.js';
import { letterFolder, printName } from './letter-folder.js';
import { openLists } from './lists.js';
import {
  type Entry,
  type Ledger,
  type MadeFileFacts,
  openManifest,
  readLedger,
} from './manifest.js';
import { sealOf, sha256 } from './seal.js';
import { setAside } from './set-aside.js';
import { isOurs, type Shard, shareOf } from './shard.js';
import { countReading, countUp, openTally, type Tally } from './summary.js';
import { faultOfOurs } from './to-fix.js';
import type { Twice } from './twice.js';
import { sweepParts, writeWhole } from './whole-file.js';

export type Run = {
  readonly source: ReportSource;
  readonly twice: Twice;
  readonly folder: string;
  readonly desk: Desk;
  /** ISO date of the letters. */
  readonly date: string;
  readonly shard: Shard;
  /** The list of people to phone is written before the first letter is made. */
  readonly writeCalls: (calls: readonly Call[]) => Promise<void>;
  readonly tell: (progress: Progress) => void;
};

/**
 * Does one evening's work on a folder that is already ours alone. What an earlier run finished and nothing
 * changed since is kept as it stands, so that a run that was stopped is simply run again.
 * @throws what the file system throws; everything written until then is whole and recorded.
 */
export async function runMailing(run: Run): Promise<Tally> {
  const { folder, shard } = run;
  if (shard.count === 1) await sweep(folder);
  const book = await openBook(run);
  const evening: Evening = {
    source: run.source,
    twice: run.twice,
    approvals: await readApprovals(folder),
    desk: run.desk,
  };
  const ours = { count: run.source.count, shard };
  const lists = await openLists(folder, shard, run.date);
  try {
    const { held, judgedEarly } = await phoneFirst(run, evening, ours, book);
    const counter = counterOf(run, shareOf(shard, run.source.count), held.size);
    for (const index of indexesOf(ours)) {
      if (held.has(index)) continue;
      const judged = judgedEarly.get(index) ?? (await judge(evening, index));
      judgedEarly.delete(index);
      await counter(await settle(run, book, judged, lists));
    }
    if (shard.count === 1) await setAside(folder, book.ledger, book.seen, book.record);
    await lists.finish();
    return book.tally;
  } catch (fault) {
    await lists.giveUp();
    throw fault;
  } finally {
    await book.close();
  }
}

type Share = { readonly count: number; readonly shard: Shard };

/** Indexes of the reports that are ours, in the order of the file. */
function* indexesOf({ count, shard }: Share): Generator<number> {
  for (let index = 0; index < count; index += 1) if (isOurs(shard, index + 1)) yield index;
}

type Lists = Awaited<ReturnType<typeof openLists>>;
type Record = Pick<Entry, 'about' | 'outcome' | 'input' | 'key' | 'files'> &
  Partial<Pick<Entry, 'language' | 'versions'>>;

/** The records of one run: what was, what is added, and which reports were met. */
type Book = {
  readonly ledger: Ledger;
  readonly tally: Tally;
  readonly seen: Set<string>;
  readonly record: (record: Record) => Promise<void>;
  readonly close: () => Promise<void>;
};

async function openBook({ folder, shard, desk }: Run): Promise<Book> {
  const ledger = await readLedger(folder);
  if (ledger.strange.length > 0) throw new Damaged(ledger.strange);
  const manifest = await openManifest(folder, shard);
  const run = ledger.runs + 1;
  const add = (record: Record) =>
    manifest.add({ run, language: null, versions: {}, ...record, at: desk.now() });
  let printed = existsSync(join(folder, printName));
  return {
    ledger,
    tally: openTally(),
    seen: new Set(),
    record: async (record) => {
      if (printed) await takeBackPrint(folder, add);
      printed = false;
      await add(record);
    },
    close: manifest.close,
  };
}

/** The print file goes with the first change: it may hold the letter of somebody who is to be phoned now. */
async function takeBackPrint(folder: string, add: Book['record']): Promise<void> {
  await rm(join(folder, printName), { force: true });
  await add({ about: printName, outcome: 'list', input: null, key: '', files: [] });
}

/** Reads every report once before any letter, so that nobody waits for the letters to hear of an emergency. */
async function phoneFirst(
  run: Run,
  evening: Evening,
  ours: Share,
  book: Book,
): Promise<{ readonly held: ReadonlySet<number>; readonly judgedEarly: Map<number, Judged> }> {
  const calls: Call[] = [];
  const held = new Set<number>();
  const judgedEarly = new Map<number, Judged>();
  for (const index of indexesOf(ours)) {
    const judged = await judge(evening, index);
    if (judged.kind !== 'held') {
      if (judgedEarly.size < mostJudgedEarly) judgedEarly.set(index, judged);
      continue;
    }
    held.add(index);
    book.tally.outcomes.held += 1;
    countReading(book.tally, judged.understood);
    calls.push(callOf(judged, judged.understood, await run.desk.callSheet(judged.understood)));
    await withdraw(run.folder, book, judged, 'held');
  }
  await run.writeCalls(sortCalls(calls));
  return { held, judgedEarly };
}

/** An ordinary evening is judged once; of a longer file the rest is read again, for memory must not follow its length. */
const mostJudgedEarly = 2000;

async function settle(
  run: Run,
  book: Book,
  judged: Judged,
  lists: Lists,
): Promise<'made' | 'kept' | 'refused'> {
  const { tally } = book;
  if (judged.kind === 'held') throw new Error('held reports were settled before');
  if (judged.kind === 'letter') {
    const done = await write(run, book, judged);
    if (done === 'made' || done === 'kept') {
      tally.outcomes.made += 1;
      countReading(tally, judged.understood);
      countUp(tally.languages, judged.language);
      await lists.recall(judged.stem, run.desk.steps(judged.understood));
      return done;
    }
    return settle(run, book, { ...judged, kind: 'refused', problems: done.problems }, lists);
  }
  tally.outcomes.refused += 1;
  for (const code of new Set(judged.problems.map((problem) => problem.code)))
    countUp(tally.refusals, code);
  await lists.toFix(judged, judged.problems);
  await withdraw(run.folder, book, judged, 'refused');
  return 'refused';
}

/** Hash of everything the letter's files depend on, signature and release included. */
export function keyOf({ seal, approval }: Judged & { readonly kind: 'letter' }): string {
  return sealOf([seal, approval]);
}

/** Makes a letter unless the very same one already stands in the folder. */
async function write({ folder, desk }: Run, book: Book, judged: Judged & { kind: 'letter' }) {
  const { stem, input, language, versions, approval } = judged;
  const key = keyOf(judged);
  const before = book.ledger.last.get(stem);
  book.seen.add(stem);
  if (before?.outcome === 'made' && before.key === key && (await stand(folder, before)))
    return 'kept' as const;
  const made = await desk
    .make(judged.understood, language, approval)
    .catch((fault: unknown) => ({ ok: false as const, problems: [faultOfOurs(fault)] }));
  if (!made.ok) return made;
  const files: MadeFileFacts[] = [];
  for (const { ending, content } of made.value) {
    const name = `${letterFolder}/${stem}.${language}.${ending}`;
    await writeWhole(join(folder, name), content);
    const bytes = typeof content === 'string' ? Buffer.byteLength(content) : content.length;
    files.push({ name, bytes, sha256: sha256(content) });
  }
  const left = (before?.files ?? []).filter(
    ({ name }) => !files.some((each) => each.name === name),
  );
  await remove(folder, left);
  await book.record({ about: stem, outcome: 'made', input, key, language, versions, files });
  return 'made' as const;
}

/** A report that is no letter now leaves none of an earlier letter in the folder to be mailed. */
async function withdraw(
  folder: string,
  book: Book,
  { stem, input }: Judged,
  outcome: 'held' | 'refused',
): Promise<void> {
  const before = book.ledger.last.get(stem);
  book.seen.add(stem);
  const key = sealOf([input, outcome]);
  if (before?.outcome === outcome && before.key === key) return;
  await remove(folder, before?.files ?? []);
  await book.record({ about: stem, outcome, input, key, files: [] });
}

async function remove(folder: string, files: readonly { readonly name: string }[]): Promise<void> {
  for (const { name } of files) await rm(join(folder, name), { force: true });
}

async function stand(folder: string, { files }: Entry): Promise<boolean> {
  for (const { name, sha256: recorded } of files) {
    const content = await readFile(join(folder, name)).catch(() => null);
    if (content === null || sha256(content) !== recorded) return false;
  }
  return true;
}

/** Clears away what a killed run left: files half-written, and letters it had not yet recorded. */
async function sweep(folder: string): Promise<void> {
  const letters = join(folder, letterFolder);
  for (const each of [folder, letters, join(folder, 'released')]) await sweepParts(each);
  const { last, strange } = await readLedger(folder);
  if (strange.length > 0) throw new Damaged(strange);
  const claimed = new Set([...last.values()].flatMap(({ files }) => files.map(({ name }) => name)));
  const names = await readdir(letters).catch(() => []);
  const unrecorded = names
    .filter((name) => ourName.test(name))
    .map((name) => ({ name: `${letterFolder}/${name}` }))
    .filter(({ name }) => !claimed.has(name));
  await remove(folder, unrecorded);
}

/** Stem, language and ending; anything else in the folder was put there by somebody else. */
const ourName = /^[A-Za-z0-9-]+\.[A-Za-z0-9-]+\.(?:pdf|html|txt)$/;

function counterOf({ tell }: Run, total: number, held: number) {
  const counts = { made: 0, kept: 0, refused: 0 };
  let done = held;
  tell({ total, done, held, ...counts });
  return async (end: keyof typeof counts): Promise<void> => {
    counts[end] += 1;
    done += 1;
    tell({ total, done, held, ...counts });
  };
}
