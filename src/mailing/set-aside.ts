// Letters of an earlier file arrive that this file says nothing about; they leave the folder to be mailed, whole.
import { mkdir, rename } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { Entry, Ledger } from './manifest.js';

const aside = 'set-aside';

type Add = (record: Pick<Entry, 'about' | 'outcome' | 'input' | 'key' | 'files'>) => Promise<void>;

/** Moves them to set-aside/: mailing yesterday's letter twice would be wrong, and so would losing it. */
export async function setAside(
  folder: string,
  { last }: Ledger,
  seen: ReadonlySet<string>,
  record: Add,
): Promise<void> {
  for (const { about, outcome, input, key, files } of last.values()) {
    if (outcome !== 'made' || seen.has(about)) continue;
    await mkdir(join(folder, aside), { recursive: true });
    const moved = files.map((file) => ({ ...file, name: `${aside}/${basename(file.name)}` }));
    for (const [at, { name }] of files.entries())
      await rename(join(folder, name), join(folder, moved[at]?.name ?? name)).catch(absent);
    await record({ about, outcome: 'set-aside', input, key, files: moved });
  }
}

function absent(fault: NodeJS.ErrnoException): void {
  if (fault.code !== 'ENOENT') throw fault;
}
