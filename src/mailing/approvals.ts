// A folder arrives; which letters a named clinician signed or released leaves.
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { soundly } from './damaged.js';
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

/** @throws Damaged when a record of ours cannot be read: nothing may go out on a damaged approval. */
export async function readApprovals(folder: string): Promise<Approvals> {
  const signatures = await textOf(join(folder, signedFile));
  const signed =
    signatures === null
      ? []
      : soundly(signedFile, () => z.array(signature).parse(JSON.parse(signatures)));
  const names = await readdir(join(folder, releasedFolder)).catch(() => []);
  const released = new Map<string, ReleaseRecord>();
  for (const name of names.filter((each) => each.endsWith('.json'))) {
    const text = (await textOf(join(folder, releasedFolder, name))) ?? '';
    const record = soundly(`${releasedFolder}/${name}`, () => release.parse(JSON.parse(text)));
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

/** Null where there is no such file. */
async function textOf(path: string): Promise<string | null> {
  try {
    return await readFile(path, 'utf8');
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw fault;
  }
}
