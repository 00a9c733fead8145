// npm run faults [-- KILLS ROWS FORMAT]: the fault tests of mailing with 50 kills over 600 rows of PDF, or as asked
// for; then, where this user may mount one (root on Linux), a disk of 2 MB that fills up and one that is read-only.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { ownDisk, say } from './disk.js';
import { inventEvening } from './invent-evening.js';

const [kills = '50', rows = '600', format = 'pdf'] = process.argv.slice(2);
const { status } = spawnSync(
  'npx',
  ['vitest', 'run', 'tests/app/mailing-faults.test.ts', '--test-timeout=1800000'],
  {
    stdio: 'inherit',
    env: { ...process.env, IRONLEAF_KILLS: kills, IRONLEAF_ROWS: rows, IRONLEAF_FORMAT: format },
  },
);
process.exitCode = status ?? 1;

const home = mkdtempSync(join(tmpdir(), 'ironleaf-disk-'));
const folder = join(home, 'disk');
const disk = ownDisk(folder, 2 * 2 ** 20);
if (disk === null)
  console.log('A full and a read-only disk were not tried: this user may not mount one.');
else {
  try {
    fillDisk();
  } finally {
    disk.close();
  }
}
rmSync(home, { recursive: true });

function fillDisk() {
  const file = join(home, 'evening.json');
  writeFileSync(file, JSON.stringify([...inventEvening(200)]));
  const out = join(folder, 'evening');
  const run = (...words) =>
    spawnSync(process.execPath, [resolve('dist/ironleaf.cjs'), ...words], { encoding: 'utf8' });
  const mailing = () => run('mailing', file, '--out', out, '--demo', '--date', '2026-11-25');
  say('a full disk ends the run with 73', mailing().status === 73);
  const made = readdirSync(join(out, 'letters'));
  say(
    `${made.length} letters until then, each whole`,
    made.every((name) => /%%EOF\s*$/.test(readFileSync(join(out, 'letters', name), 'latin1'))),
  );
  say('and again with 73, as long as it is full', mailing().status === 73);
  disk.widen('64m');
  disk.lock();
  say('a read-only disk ends the run with 73', mailing().status === 73);
  disk.unlock();
  const last = mailing();
  const counts = last.stderr.split('\n').find((line) => line.includes('letters made'));
  say(`with room it goes on: ${counts}`, last.status === 1);
  say('and all is as recorded', run('verify', out).status === 0);
}
