// A folder arrives; a disk of our own in it leaves (root on Linux may mount one), that can be filled up and locked.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, statfsSync } from 'node:fs';

/** @returns null where this user may not mount a disk. */
export function ownDisk(path, bytes) {
  mkdirSync(path);
  if (!mount('-t', 'tmpfs', '-o', `size=${bytes}`, 'tmpfs', path)) return null;
  const again = (option) => mount('-o', `remount,${option}`, path);
  const used = () => {
    const { blocks, bfree, bsize } = statfsSync(path);
    return (blocks - bfree) * bsize;
  };
  return {
    /** Leaves so few bytes, while somebody may be writing. */
    fill: (left) => {
      while (!again(`size=${used() + left}`));
    },
    widen: (size) => again(`size=${size}`),
    lock: () => again('ro'),
    unlock: () => again('rw'),
    close: () => execFileSync('umount', [path]),
  };
}

/** Lays an empty disk that cannot be written over a folder, while somebody works in it. @returns what takes it away. */
export function lockOver(folder) {
  if (!mount('-t', 'tmpfs', '-o', 'ro,size=4k', 'tmpfs', folder))
    throw new Error('there is no folder to lock yet');
  return () => execFileSync('umount', [folder]);
}

function mount(...words) {
  return spawnSync('mount', words, { stdio: 'ignore' }).status === 0;
}

/** One line a finding; one that fails, fails the program. */
export function say(what, holds) {
  console.log(`${holds ? 'holds' : 'FAILS'}: ${what}`);
  if (!holds) process.exitCode = 1;
}
