// Finished bytes in, whole files out: each is written beside its place and then renamed, or not at all.
import { randomUUID } from 'node:crypto';
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Stop, status } from './status.js';

export { slug } from '../mailing/stem.js';

export type OutputFile = { readonly name: string; readonly content: Uint8Array | string };

/**
 * Writes all files into `folder`, or none: every file is first written in full under another name.
 * Readable by its owner only, since letters hold health data. Stops with status 73.
 * Returns the paths in the order given.
 */
export async function writeAll(folder: string, files: readonly OutputFile[]): Promise<string[]> {
  const staged: { readonly part: string; readonly path: string }[] = [];
  try {
    await mkdir(folder, { recursive: true });
    for (const file of files) {
      const path = join(folder, file.name);
      const part = `${path}.${randomUUID()}.part`;
      staged.push({ part, path });
      await writeFile(part, file.content, { flag: 'wx', mode: 0o600 });
    }
    for (const { part, path } of staged) await rename(part, path);
  } catch (fault) {
    await Promise.all(staged.map(({ part }) => rm(part, { force: true })));
    const code = (fault as NodeJS.ErrnoException).code;
    if (code === undefined) throw fault;
    throw new Stop(status.cannotWrite, [`cannot write into the folder given by --out (${code}).`]);
  }
  return staged.map(({ path }) => path);
}
