// What a run writes down for the next one: the manifest, the lock, signatures, and what counts as the same report.
import {
  appendFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { lockFolder } from '../../src/mailing/lock.js';
import { type Entry, openManifest, readLedger } from '../../src/mailing/manifest.js';
import { hashFile } from '../../src/mailing/hash-file.js';
import { runSeal, signable } from '../../src/mailing/review.js';
import { sealOf, sha256 } from '../../src/mailing/seal.js';
import { whole } from '../../src/mailing/shard.js';
import { openList, writeWhole } from '../../src/mailing/whole-file.js';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ironleaf-records-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const entry = (about: string, run = 1, key = 'k'): Entry => ({
  run,
  about,
  outcome: 'made',
  input: 'i',
  key,
  language: 'en',
  versions: {},
  files: [],
  at: '2026-11-25T00:00:00Z',
});

async function add(entries: readonly Entry[], shard = whole): Promise<void> {
  const manifest = await openManifest(folder, shard);
  for (const each of entries) await manifest.add(each);
  await manifest.close();
}

describe('the manifest', () => {
  it('gives the last word on each letter', async () => {
    await add([entry('a'), entry('b'), entry('a', 1, 'later')]);
    const { last, runs, torn } = await readLedger(folder);
    expect([last.size, last.get('a')?.key, runs, torn]).toEqual([2, 'later', 1, 0]);
  });

  it('stands the next record on a line of its own after a torn one', async () => {
    await add([entry('a')]);
    appendFileSync(join(folder, 'manifest.jsonl'), '{"run":1,"about":"b","outc');
    expect((await readLedger(folder)).torn).toBe(1);
    await add([entry('c')]);
    const { last, torn } = await readLedger(folder);
    expect([...last.keys()]).toEqual(['a', 'c']);
    expect(torn).toBe(0);
  });

  it('joins shards, and a later run overrules an earlier one whatever its file is called', async () => {
    await add([entry('a', 1)], { index: 1, count: 2 });
    await add([entry('b', 1)], { index: 2, count: 2 });
    await add([entry('a', 2, 'whole')]);
    await add([entry('a', 3, 'again')], { index: 1, count: 2 });
    expect((await readLedger(folder)).last.get('a')?.key).toBe('again');
    expect((await readLedger(folder)).last.size).toBe(2);
  });

  it('is the same whether shards stand side by side or one after another in one file', async () => {
    await add([entry('a')], { index: 1, count: 2 });
    await add([entry('b')], { index: 2, count: 2 });
    const apart = await readLedger(folder);
    const names = readdirSync(folder);
    const joined = names.map((name) => readFileSync(join(folder, name), 'utf8')).join('');
    for (const name of names) rmSync(join(folder, name));
    writeFileSync(join(folder, 'manifest.jsonl'), joined);
    expect(await readLedger(folder)).toEqual(apart);
  });
});

describe('the lock', () => {
  it('is held by one run at a time and free again afterwards', async () => {
    const first = await lockFolder(folder, whole);
    const second = await lockFolder(folder, whole);
    expect([first.ok, second.ok]).toEqual([true, false]);
    if (first.ok) await first.free();
    expect((await lockFolder(folder, whole)).ok).toBe(true);
  });

  it('of a process that is gone is taken over; so is one whose number another process has now', async () => {
    for (const holder of [
      { pid: 4_000_000, host: hostname(), born: null },
      { pid: process.ppid, host: hostname(), born: '1 some-earlier-start' },
    ]) {
      writeFileSync(join(folder, 'lock'), JSON.stringify(holder));
      const lock = await lockFolder(folder, whole);
      expect(lock.ok).toBe(true);
      if (lock.ok) await lock.free();
    }
  });

  it('of another computer stands, for nobody here can know', async () => {
    writeFileSync(join(folder, 'lock'), JSON.stringify({ pid: 1, host: 'elsewhere', born: null }));
    expect(await lockFolder(folder, whole)).toEqual({
      ok: false,
      by: 'process 1 on elsewhere',
      file: 'lock',
    });
  });

  it('lets shards work beside each other, and a whole run only alone', async () => {
    const shard = await lockFolder(folder, { index: 1, count: 2 });
    expect((await lockFolder(folder, { index: 2, count: 2 })).ok).toBe(true);
    expect((await lockFolder(folder, whole)).ok).toBe(false);
    expect(shard.ok).toBe(true);
  });

  it('goes to one of many that ask at the same time, also when a dead one is in the way', async () => {
    writeFileSync(
      join(folder, 'lock'),
      JSON.stringify({ pid: 4_000_000, host: hostname(), born: null }),
    );
    const all = await Promise.all(Array.from({ length: 20 }, () => lockFolder(folder, whole)));
    expect(all.filter(({ ok }) => ok)).toHaveLength(1);
    expect(readdirSync(folder)).toEqual(['lock']);
  });
});

describe('a file', () => {
  it('appears whole or not at all', async () => {
    await writeWhole(join(folder, 'a/b.txt'), 'whole');
    expect(readFileSync(join(folder, 'a/b.txt'), 'utf8')).toBe('whole');
    await expect(writeWhole(join(folder, 'a'), 'x')).rejects.toThrow();
    expect(readdirSync(folder)).toEqual(['a']);
  });

  it('of lines appears when it is finished, and not when given up', async () => {
    const kept = await openList(join(folder, 'kept.csv'), 'start\n');
    const dropped = await openList(join(folder, 'dropped.csv'), 'start\n');
    await kept.add('line\n');
    expect(readdirSync(folder).every((name) => name.endsWith('.part'))).toBe(true);
    await kept.finish();
    await dropped.giveUp();
    expect(readdirSync(folder)).toEqual(['kept.csv']);
    expect(readFileSync(join(folder, 'kept.csv'), 'utf8')).toBe('start\nline\n');
  });
});

describe('seals', () => {
  it('are SHA-256 (FIPS 180-4: the hash of "abc")', () => {
    expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  it('are the same of a file that is read in pieces, and absent of one that is not there', async () => {
    const path = join(folder, 'pieces');
    writeFileSync(path, 'x'.repeat(200_000));
    expect(await hashFile(path)).toEqual({ sha256: sha256('x'.repeat(200_000)), bytes: 200_000 });
    expect(await hashFile(join(folder, 'absent'))).toBeNull();
  });

  it('do not depend on the order of fields, and do on every value', () => {
    expect(sealOf({ a: 1, b: { c: [1, 2] } })).toBe(sealOf({ b: { c: [1, 2] }, a: 1 }));
    expect(sealOf({ a: 1, b: { c: [1, 2] } })).not.toBe(sealOf({ a: 1, b: { c: [2, 1] } }));
  });

  it('decide which letters may be signed: shown, and still as shown', () => {
    const shown = [
      { stem: 'a', seal: '1' },
      { stem: 'b', seal: '2' },
    ];
    const now = [
      { stem: 'a', seal: '1' },
      { stem: 'b', seal: '3' },
    ];
    expect(signable(['a', 'b', 'c', 'a'], shown, now)).toEqual({
      fit: [{ stem: 'a', seal: '1' }],
      unknown: ['c'],
      changed: ['b'],
    });
    expect(runSeal(shown)).not.toBe(runSeal(now));
  });
});
