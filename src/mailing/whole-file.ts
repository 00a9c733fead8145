// Bytes and a path arrive; the file is there whole or not at all.
import { randomUUID } from 'node:crypto';
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { type FileHandle, mkdir, open, readdir, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** Readable by its owner only: letters and lists hold health data. */
export const ownerOnly = 0o600;

/**
 * Written in full beside its place and then renamed; its folder is made. Without waiting in between: a letter is a
 * few kilobytes, and handing each call to another thread costs more than the call.
 * @throws as the file system does.
 */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const part = partOf(path);
  const write = () => writeFileSync(part, content, { flag: 'wx', mode: ownerOnly });
  try {
    try {
      write();
    } catch (fault) {
      if ((fault as NodeJS.ErrnoException).code !== 'ENOENT') throw fault;
      mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
      write();
    }
    renameSync(part, path);
  } catch (fault) {
    rmSync(part, { force: true });
    throw fault;
  }
}

/** Lines go into a file that appears when it is finished. */
type ListFile = {
  readonly add: (line: string) => Promise<void>;
  readonly finish: () => Promise<void>;
  readonly giveUp: () => Promise<void>;
};

const buffered = 64 * 1024;

export async function openList(path: string, start: string): Promise<ListFile> {
  await mkdir(dirname(path), { recursive: true });
  const part = partOf(path);
  const handle: FileHandle = await open(part, 'wx', ownerOnly);
  let waiting = start;
  const flush = async () => {
    await handle.write(waiting);
    waiting = '';
  };
  return {
    add: async (line) => {
      waiting += line;
      if (waiting.length > buffered) await flush();
    },
    finish: async () => {
      await flush();
      await handle.close();
      await rename(part, path);
    },
    giveUp: async () => {
      await handle.close().catch(() => undefined);
      await rm(part, { force: true });
    },
  };
}

/** Removes what a run that was stopped left half-written. Only for who holds the folder alone. */
export async function sweepParts(folder: string): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  const parts = names.filter((name) => name.endsWith('.part'));
  await Promise.all(parts.map((name) => rm(join(folder, name), { force: true })));
}

export function partOf(path: string): string {
  return `${path}.${randomUUID()}.part`;
}
