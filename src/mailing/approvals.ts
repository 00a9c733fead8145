// A folder arrives; which letters a named clinician signed or released leaves.
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { writeWhole } from './whole-file.js';

const signature = z.object({
  stem: z.string(),
  seal: z.string(),
  by: z.string(),
  date: z.string(),
});
const release = z.object({
  id: z.string(),
  /** Hash of the report that was released; another report of the same patient is held again. */
  input: z.string(),
  tier: z.string(),
  reasons: z.array(z.string()),
  releasedBy: z.string(),
  done: z.string(),
  date: z.string(),
});
type Signature = Readonly<z.infer<typeof signature>>;
type ReleaseRecord = Readonly<z.infer<typeof release>>;

export type Approvals = {
  readonly signed: ReadonlyMap<string, Signature>;
  readonly released: ReadonlyMap<string, ReleaseRecord>;
};

const signedFile = 'signed.json';
const releasedFolder = 'released';

/** @throws when a record of ours cannot be read: nothing may go out on a damaged approval. */
export async function readApprovals(folder: string): Promise<Approvals> {
  const signed = z.array(signature).parse(await readJson(join(folder, signedFile), []));
  const names = await readdir(join(folder, releasedFolder)).catch(() => []);
  const released = new Map<string, ReleaseRecord>();
  for (const name of names.filter((each) => each.endsWith('.json'))) {
    const record = release.parse(await readJson(join(folder, releasedFolder, name), null));
    released.set(name.replace(/\.json$/, ''), record);
  }
  return { signed: new Map(signed.map((each) => [each.stem, each])), released };
}

/** Adds signatures to those of the folder; a new one replaces an old one of the same letter. */
export async function addSignatures(folder: string, added: readonly Signature[]): Promise<void> {
  const { signed } = await readApprovals(folder);
  const all = new Map([...signed, ...added.map((each) => [each.stem, each] as const)]);
  await writeWhole(join(folder, signedFile), `${JSON.stringify([...all.values()], null, 1)}\n`);
}

export function writeRelease(folder: string, stem: string, record: ReleaseRecord): Promise<void> {
  const path = join(folder, releasedFolder, `${stem}.json`);
  return writeWhole(path, `${JSON.stringify(record, null, 2)}\n`);
}

async function readJson(path: string, absent: unknown): Promise<unknown> {
  try {
    return JSON.parse(await readFile(path, 'utf8'));
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return absent;
    throw fault;
  }
}
