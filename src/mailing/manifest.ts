// Outcomes arrive one by one; an append-only record leaves, and what earlier runs recorded is read back.
import { appendFileSync } from 'node:fs';
import { type FileHandle, open, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { Place } from '../problem.js';
import { type Shard, shardName } from './shard.js';
import { ownerOnly } from './whole-file.js';

/** A record names letters and lists and nothing else of this computer: files it names may be removed. */
const inside = /^(?:(?:letters|set-aside)\/)?[A-Za-z0-9][A-Za-z0-9.-]*$/;
const file = z.object({
  name: z.string().regex(inside),
  bytes: z.number(),
  sha256: z.string(),
});

/** No name, birth date or result: an id's stem, hashes, versions and what became of the report. */
const entry = z.object({
  /** Counts the runs on this folder: a later run overrules an earlier one, whatever the clock says. */
  run: z.number(),
  /** Stem of the letter's files, or the name of a list. */
  about: z.string(),
  outcome: z.enum(['made', 'held', 'refused', 'set-aside', 'list']),
  /** Hash of the report; null for lists and for what could not be read. */
  input: z.string().nullable(),
  /** Hash of everything the letter depends on: report, settings, versions, signature, release. */
  key: z.string(),
  language: z.string().nullable(),
  versions: z.record(z.string(), z.string()),
  files: z.array(file),
  at: z.string(),
});
export type Entry = Readonly<z.infer<typeof entry>>;
export type MadeFileFacts = Readonly<z.infer<typeof file>>;

export type Ledger = {
  /** The last word on every report and list. */
  readonly last: ReadonlyMap<string, Entry>;
  /** Number of the latest run; 0 in a new folder. */
  readonly runs: number;
  /**
   * Manifests that end inside a line: a run was stopped while writing it. The next run ends that line, and makes
   * its letter again; a file whose record cannot be read is found because no record knows it.
   */
  readonly torn: number;
  /** Lines that are JSON and no record of ours: somebody changed them. */
  readonly strange: readonly Place[];
};

const manifestName = /^manifest(?:\.\d+-of-\d+)?\.jsonl$/;

/**
 * Reads every manifest of a folder, its own and those of shards; later runs and lines overrule earlier ones.
 * @param wanted entries to keep; the rest cost no memory.
 */
export async function readLedger(
  folder: string,
  wanted: (entry: Entry) => boolean = () => true,
): Promise<Ledger> {
  const names = (await readdir(folder).catch(() => [])).filter((name) => manifestName.test(name));
  const last = new Map<string, Entry>();
  const strange: Place[] = [];
  let [torn, runs] = [0, 0];
  for (const name of names.sort()) {
    const handle = await open(join(folder, name));
    if (await endsInside(handle)) torn += 1;
    let row = 0;
    for await (const line of handle.readLines({ start: 0 })) {
      row += 1;
      const read = readEntry(line);
      if (read === 'strange') strange.push({ file: name, row, field: null });
      if (typeof read === 'string') continue;
      runs = Math.max(runs, read.run);
      if (!wanted(read)) continue;
      if (read.run >= (last.get(read.about)?.run ?? 0)) last.set(read.about, read);
    }
  }
  return { last, runs, torn, strange };
}

/** @returns 'torn' for what is no JSON: a write was cut off; 'strange' for JSON that is no record of ours. */
function readEntry(line: string): Entry | 'torn' | 'strange' {
  try {
    const read = entry.safeParse(JSON.parse(line));
    return read.success ? read.data : 'strange';
  } catch {
    return 'torn';
  }
}

type Manifest = {
  readonly add: (entry: Entry) => Promise<void>;
  readonly close: () => Promise<void>;
};

/** So many records may be lost to a power cut, and are then made again; none to a kill. */
const syncedEvery = 100;

/**
 * Opens the manifest for appending. A last line that was torn off is ended first, so that the next record
 * stands on a line of its own.
 */
export async function openManifest(folder: string, shard: Shard): Promise<Manifest> {
  const path = join(folder, shardName('manifest.jsonl', shard));
  const handle = await open(path, 'a+', ownerOnly);
  if (await endsInside(handle)) await handle.appendFile('\n');
  let unsynced = 0;
  return {
    add: async (record) => {
      appendFileSync(handle.fd, `${JSON.stringify(record)}\n`);
      unsynced += 1;
      if (unsynced >= syncedEvery) {
        await handle.datasync();
        unsynced = 0;
      }
    },
    close: async () => {
      await handle.datasync();
      await handle.close();
    },
  };
}

async function endsInside(handle: FileHandle): Promise<boolean> {
  const { size } = await handle.stat();
  if (size === 0) return false;
  const { buffer } = await handle.read(new Uint8Array(1), 0, 1, size - 1);
  return buffer[0] !== 0x0a;
}
