// A path in, bytes out: refuses what is no readable file before any reader sees it.
import { fstatSync, openSync, readSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { basename } from 'node:path';
import { largestFile, type LargeFile } from '../intake/index.js';
import type { InputFile } from '../intake/written.js';
import { Stop, status } from './status.js';

/** Stands for '-' on the command line, which the parser of arguments would take for an empty word. */
export const standardInput = ':standard-input';

/**
 * Reads a whole file, or standard input, of at most `largest` bytes. Stops with status 66 when there is nothing to
 * read (missing, a directory, not permitted) and 65 when it is empty or too large.
 */
export async function readInputFile(path: string, largest: number): Promise<InputFile> {
  if (path === standardInput) return readStandardInput(largest);
  const name = basename(path);
  const handle = await open(path, 'r').catch((fault: NodeJS.ErrnoException) => {
    throw new Stop(status.noInput, [`${name}: ${whyNot(fault)}`]);
  });
  try {
    const facts = await handle.stat();
    if (facts.isDirectory())
      throw new Stop(status.noInput, [`${name}: cannot read a directory; expected a file.`]);
    if (facts.size > largest) throw new Stop(status.badData, [tooLarge(name, facts.size, largest)]);
    const bytes = await handle.readFile();
    if (bytes.length === 0)
      throw new Stop(status.badData, [`${name}: the file is empty; expected a report.`]);
    if (bytes.length > largest)
      throw new Stop(status.badData, [tooLarge(name, bytes.length, largest)]);
    return { name, bytes };
  } finally {
    await handle.close();
  }
}

/**
 * Opens a file to be read piece by piece. Stops with 66 when there is nothing to read, and with 65 as soon as
 * somebody writes into it: places found before would be those of other results.
 */
export function openInputFile(path: string): LargeFile {
  const name = basename(path);
  const opened = attempt(name, () => openSync(path, 'r'));
  const before = fstatSync(opened, { bigint: true });
  if (before.isDirectory())
    throw new Stop(status.noInput, [`${name}: cannot read a directory; expected a file.`]);
  const size = Number(before.size);
  if (size === 0)
    throw new Stop(status.badData, [`${name}: the file is empty; expected a report.`]);
  const read = (from: number, to: number): Uint8Array => {
    const bytes = new Uint8Array(to - from);
    let filled = 0;
    while (filled < bytes.length) {
      const more = readSync(opened, bytes, filled, bytes.length - filled, from + filled);
      if (more === 0) break;
      filled += more;
    }
    const now = fstatSync(opened, { bigint: true });
    if (now.size !== before.size || now.mtimeNs !== before.mtimeNs || filled < bytes.length)
      throw new Stop(status.badData, [
        `${name}: the file was changed while it was read.`,
        '  Run the same command again when nobody writes into it; everything finished so far is kept.',
      ]);
    return bytes;
  };
  return { name, size, read };
}

function attempt<T>(name: string, action: () => T): T {
  try {
    return action();
  } catch (fault) {
    throw new Stop(status.noInput, [`${name}: ${whyNot(fault as NodeJS.ErrnoException)}`]);
  }
}

/** What is piped or pasted in; read no further than the limit. */
async function readStandardInput(largest: number): Promise<InputFile> {
  const name = 'standard input';
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of process.stdin as AsyncIterable<Uint8Array>) {
    size += chunk.length;
    if (size > largest) throw new Stop(status.badData, [tooLarge(name, size, largest)]);
    chunks.push(chunk);
  }
  if (size === 0)
    throw new Stop(status.badData, [`${name}: there is nothing to read; expected a report.`]);
  return { name, bytes: new Uint8Array(Buffer.concat(chunks)) };
}

function whyNot(fault: NodeJS.ErrnoException): string {
  if (fault.code === 'ENOENT') return 'there is no such file.';
  if (fault.code === 'EACCES' || fault.code === 'EPERM') return 'may not be read by this user.';
  return `cannot be opened (${fault.code ?? 'unknown reason'}).`;
}

function tooLarge(name: string, size: number, largest: number): string {
  const megabytes = (bytes: number) => Math.ceil(bytes / 1024 / 1024);
  const said = `${name}: the file has ${megabytes(size)} MB; expected at most ${megabytes(largest)} MB`;
  return largest === largestFile
    ? `${said}, or a table, messages or a list given to ironleaf mailing.`
    : `${said}.`;
}
