// The lists of a whole run stand in a folder; those that its shares had left there go, and the records say so.
import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { openManifest, readLedger } from './manifest.js';
import { listNames } from './record-lists.js';
import { isNameOfShare, whole } from './shard.js';

/**
 * Two lists to phone from would be one too many: whoever is released later would stay on the share's. Only for who
 * holds the folder alone, and after a whole run has written its own lists.
 */
export async function dropShareLists(folder: string, now: () => string): Promise<void> {
  const isOfShare = (name: string) => listNames.some((list) => isNameOfShare(name, list));
  for (const name of (await readdir(folder)).filter(isOfShare)) await rm(join(folder, name));
  const { last, runs } = await readLedger(folder, ({ about }) => isOfShare(about));
  const recorded = [...last.values()].filter(({ files }) => files.length > 0);
  if (recorded.length === 0) return;
  const manifest = await openManifest(folder, whole);
  try {
    for (const entry of recorded)
      await manifest.add({ ...entry, run: runs, key: '', files: [], at: now() });
  } finally {
    await manifest.close();
  }
}
