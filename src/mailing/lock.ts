// A folder arrives; it is ours alone until let go, or somebody else's.
import { randomUUID } from 'node:crypto';
import { link, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { type Shard, shardName } from './shard.js';

type Holder = { readonly pid: number; readonly host: string; readonly born: string | null };

/** Who else is at work on the folder; `free` lets go of it. */
type Locked =
  | { readonly ok: true; readonly free: () => Promise<void> }
  | { readonly ok: false; readonly by: string; readonly file: string };

const lockName = /^lock(?:\.\d+-of-\d+)?$/;

/**
 * Takes the folder. Shards may work beside each other, a whole run only alone. A lock whose process is gone
 * (killed, or this computer was restarted) is taken over; one of another computer is not.
 */
export async function lockFolder(folder: string, shard: Shard): Promise<Locked> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const own = shardName('lock', shard);
  const mine: Holder = { pid: process.pid, host: hostname(), born: await bornAt(process.pid) };
  if (!(await claim(folder, own, mine))) return taken(folder, own);
  for (const name of await readdir(folder)) {
    const rival = lockName.test(name) && name !== own && (shard.count === 1 || name === 'lock');
    if (!rival || (await dropStale(folder, name))) continue;
    await rm(join(folder, own), { force: true });
    return taken(folder, name);
  }
  return { ok: true, free: () => rm(join(folder, own), { force: true }) };
}

/** The lock appears with its holder inside or not at all: a link to a whole file, never an empty one. */
async function claim(folder: string, name: string, mine: Holder): Promise<boolean> {
  const draft = join(folder, `${name}.${randomUUID()}.draft`);
  await writeFile(draft, JSON.stringify(mine), { mode: 0o600 });
  try {
    if (await linked(draft, join(folder, name))) return true;
    return (await dropStale(folder, name)) && (await linked(draft, join(folder, name)));
  } finally {
    await rm(draft, { force: true });
  }
}

async function linked(from: string, to: string): Promise<boolean> {
  try {
    await link(from, to);
    return true;
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw fault;
  }
}

/** Moves a dead lock away; when somebody renewed it meanwhile, theirs is put back. */
async function dropStale(folder: string, name: string): Promise<boolean> {
  const path = join(folder, name);
  const before = await holderOf(path);
  if (before !== null && (await isAlive(before))) return false;
  const aside = `${path}.${randomUUID()}.draft`;
  try {
    await rename(path, aside);
  } catch {
    return true;
  }
  const moved = await holderOf(aside);
  const renewed = moved !== null && (await isAlive(moved));
  if (renewed) await linked(aside, path);
  await rm(aside, { force: true });
  return !renewed;
}

async function holderOf(path: string): Promise<Holder | null> {
  try {
    return JSON.parse(await readFile(path, 'utf8')) as Holder;
  } catch {
    return null;
  }
}

async function isAlive({ pid, host, born }: Holder): Promise<boolean> {
  if (host !== hostname()) return true;
  if (pid === process.pid) return born === (await bornAt(pid));
  try {
    process.kill(pid, 0);
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ESRCH') return false;
  }
  return born === (await bornAt(pid));
}

/** When the process started, in ticks since the start of the computer, and which start; null elsewhere than on Linux. */
async function bornAt(pid: number): Promise<string | null> {
  try {
    const line = await readFile(`/proc/${pid}/stat`, 'utf8');
    const boot = await readFile('/proc/sys/kernel/random/boot_id', 'utf8');
    return `${line.slice(line.lastIndexOf(')') + 2).split(' ')[19]} ${boot.trim()}`;
  } catch {
    return null;
  }
}

async function taken(folder: string, name: string): Promise<Locked> {
  const holder = await holderOf(join(folder, name));
  const by = holder === null ? 'another run' : `process ${holder.pid} on ${holder.host}`;
  return { ok: false, by, file: name };
}
