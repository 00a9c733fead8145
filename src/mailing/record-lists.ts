// The lists of a finished run stand in the folder; their hashes enter the manifest.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { openManifest, readLedger } from './manifest.js';
import { sha256 } from './seal.js';
import { type Shard, shardName } from './shard.js';

const listNames = [
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
      const content = await readFile(join(folder, name)).catch(() => null);
      const key = content === null ? null : sha256(content);
      if (content === null || key === null || last.get(name)?.key === key) continue;
      await manifest.add({
        run: Math.max(1, runs),
        about: name,
        outcome: 'list',
        input: null,
        key,
        language: null,
        versions: {},
        files: [{ name, bytes: content.length, sha256: key }],
        at: now(),
      });
    }
  } finally {
    await manifest.close();
  }
}
