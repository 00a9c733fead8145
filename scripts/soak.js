// npm run soak [-- ROWS KILLS FORMAT]: one long mixed mailing in ten languages, 100,000 reports as HTML unasked. It is
// killed at random moments, its disk fills up, its letters' folder is locked under its hands; in the end every report
// must have come to exactly one of three ends. Two rows would crash a careless program.
import { chmodSync, cpSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startMeasured } from './bench/measured-run.js';
import { lockOver, ownDisk, say } from './disk.js';
import { formats, halfWritten, judgeFolder } from './soak/judge-folder.js';
import { writeEvening } from './soak/write-evening.js';

const [rows, kills] = [Number(process.argv[2] ?? 100_000), Number(process.argv[3] ?? 6)];
const format = process.argv[4] ?? 'html';
if (!(rows >= 100) || !(kills >= 0) || !Object.hasOwn(formats, format))
  throw new Error('soak: expected at least 100 rows, a number of kills, and html, pdf or text');

const home = mkdtempSync(join(tmpdir(), 'ironleaf-soak-'));
const [file, folder] = [join(home, 'evening.ndjson'), join(home, 'disk')];
const [out, copy] = [join(folder, 'evening'), join(home, 'program')];
const manifest = join(out, 'manifest.jsonl');
const letters = join(out, 'letters');
/** More than the largest letter needs. */
const room = rows * 200_000;
const disk = ownDisk(folder, room);
if (disk === null) console.log('A full disk is not tried: this user may not mount one.');
// A build beside the run would be another version, and make every letter again.
for (const part of ['dist', 'templates', 'locales', 'examples', 'package.json'])
  cpSync(part, join(copy, part), { recursive: true });
const began = performance.now();
const peaks = [];

try {
  const people = await writeEvening(file, rows);
  await survive();
  const last = await finish(mailing());
  say('the last run ends with some to phone and some to fix', last.status === 1);
  say('all is as recorded', (await finish(run('verify', out))).status === 0);
  judgeFolder({ out, rows, format, said: last.said, people });
  const seconds = (performance.now() - began) / 1000;
  const peak = Math.max(...peaks).toFixed(0);
  console.log(`${peaks.length} runs in ${seconds.toFixed(0)} s; highest memory ${peak} MiB`);
} finally {
  disk?.close();
  rmSync(home, { recursive: true });
}

async function survive() {
  const faults = Array.from({ length: kills }, () => killed);
  faults.splice(Math.ceil(kills / 3), 0, ...(disk === null ? [] : [filled]));
  faults.splice(Math.ceil((2 * kills) / 3), 0, locked);
  for (const [nth, fault] of faults.entries()) {
    const started = mailing();
    const moment = Math.round((rows * 0.9 * (nth + Math.random())) / faults.length);
    const before = await recorded(nth === 0 ? 0 : moment, started.child);
    await fault(started);
    const left = halfWritten(out, format);
    say(`${fault.name} after about ${before} records: every letter is whole`, left.length === 0);
  }
}

async function killed(started) {
  await new Promise((done) => setTimeout(done, 300 * Math.random()));
  started.child.kill('SIGKILL');
  const { status } = await finish(started);
  say('killed before its end', status === null);
}

async function filled(started) {
  disk.fill(16_384);
  const { status } = await finish(started);
  disk.widen(room);
  say('a full disk ends the run with 73', status === 73);
}

/** The superuser is let into a folder that is closed to writers; a disk that is read-only stops all. */
async function locked(started) {
  const whenLocked = disk === null ? closeFolder() : lockOver(letters);
  const { status } = await finish(started);
  whenLocked();
  say('a locked folder ends the run with 73', status === 73);
}

function closeFolder() {
  chmodSync(letters, 0o500);
  return () => chmodSync(letters, 0o700);
}

function run(...words) {
  return startMeasured([join(copy, 'dist/ironleaf.cjs'), ...words]);
}

function mailing() {
  return run('mailing', file, '--out', out, '--demo', '--date', '2026-11-25', '--format', format);
}

async function finish({ ended }) {
  const { status, said, peak } = await ended;
  peaks.push(peak);
  return { status, said };
}

/** Resolves when about so many outcomes are recorded and a letter may be next, or the run has ended. */
async function recorded(count, child) {
  let about = 0;
  while (child.exitCode === null) {
    const { size } = statSync(manifest, { throwIfNoEntry: false }) ?? { size: 0 };
    if (size > 0) about = Math.round(size / lineLength());
    if (about >= count) break;
    await new Promise((done) => setTimeout(done, 20 + 60 * Math.random()));
  }
  return about;
}

/** Of its first records: the file grows long. */
function lineLength() {
  const text = readFileSync(manifest, 'latin1').slice(0, 100_000);
  return text.length / Math.max(1, text.split('\n').length - 1);
}
