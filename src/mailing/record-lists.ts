// The lists of a finished run stand in the folder; their hashes enter the manifest.
import { join } from 'node:path';
import { hashFile } from './hash-file.js';
import { openManifest, readLedger } from './manifest.js';
import { type Shard, shardName } from './shard.js';

/** What a run leaves beside the letters. */
export const listNames = [
  'calls.csv',
  'calls.html',
  'calls.pdf',
  'to-fix.csv',
  'recall.csv',
  'recall.ics',
  'summary.html',
  'summary.pdf',
  'review.html',
  'review.pdf',
  'print.pdf',
] as const;

/** Records each list that is there and is not as it was recorded last. Only for who holds the folder. */
export async function recordLists(folder: string, shard: Shard, now: () => string): Promise<void> {
  const { last, runs } = await readLedger(folder, ({ outcome }) => outcome === 'list');
  const manifest = await openManifest(folder, shard);
  try {
    for (const list of listNames) {
      const name = shardName(list, shard);
      const found = await hashFile(join(folder, name));
      if (found === null || last.get(name)?.key === found.sha256) continue;
      await manifest.add({
        run: Math.max(1, runs),
        about: name,
        outcome: 'list',
        input: null,
        key: found.sha256,
        language: null,
        versions: {},
        files: [{ name, ...found }],
        at: now(),
      });
    }
  } finally {
    await manifest.close();
  }
}
