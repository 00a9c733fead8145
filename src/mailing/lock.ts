// A folder arrives; it is ours alone until let go, or somebody else's.
import { randomUUID } from 'node:crypto';
import { link, mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
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

/**
 * Removes a dead lock. Only the holder of a guard may, so that nobody ever removes a lock that was renewed
 * meanwhile; whoever finds the guard held goes away as if the folder were taken.
 */
async function dropStale(folder: string, name: string): Promise<boolean> {
  const path = join(folder, name);
  const guard = `${path}.takeover`;
  if (!(await isDead(path)) || !(await raised(guard))) return false;
  try {
    if (!(await isDead(path))) return false;
    await rm(path, { force: true });
    return true;
  } finally {
    await rm(guard, { force: true });
  }
}

async function isDead(path: string): Promise<boolean> {
  const holder = await holderOf(path);
  return holder !== null && !(await isAlive(holder));
}

/** Milliseconds after which a guard was left behind by a killed process; a takeover takes far less. */
const guardLasts = 10_000;

async function raised(guard: string): Promise<boolean> {
  try {
    await writeFile(guard, '', { flag: 'wx', mode: 0o600 });
    return true;
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code !== 'EEXIST') throw fault;
  }
  const raisedAt = await stat(guard).then(
    ({ mtimeMs }) => mtimeMs,
    () => null,
  );
  if (raisedAt !== null && Date.now() - raisedAt > guardLasts) await rm(guard, { force: true });
  return false;
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
