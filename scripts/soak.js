// npm run soak [-- ROWS KILLS FORMAT]: one long mixed mailing in ten languages, 100,000 reports as HTML unasked. It is
// killed at random moments, its disk fills up and is locked; in the end every report must lie in exactly one list.
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parse } from 'csv-parse/sync';
import { startMeasured } from './bench/measured-run.js';
import { ownDisk, say } from './disk.js';
import { inventEvening } from './invent-evening.js';

const [rows, kills] = [Number(process.argv[2] ?? 100_000), Number(process.argv[3] ?? 20)];
const format = process.argv[4] ?? 'html';
const whole = { html: /<\/html>\n$/, pdf: /^%PDF[\s\S]*%%EOF\s*$/, text: /\S\n$/ }[format];
if (!(rows >= 100) || !(kills >= 0) || whole === undefined)
  throw new Error('soak: expected at least 100 rows, a number of kills, and html, pdf or text');

const home = mkdtempSync(join(tmpdir(), 'ironleaf-soak-'));
const [file, folder] = [join(home, 'evening.json'), join(home, 'disk')];
const room = rows * 200_000;
const reports = inventEvening(rows);
writeFileSync(file, JSON.stringify(reports));
const disk = ownDisk(folder, room);
if (disk === null)
  console.log('A full and a locked disk are not tried: this user may not mount one.');
const out = join(folder, 'evening');
const manifest = join(out, 'manifest.jsonl');
const peaks = [];
let spent = 0;

try {
  await soak();
} finally {
  disk?.close();
  rmSync(home, { recursive: true });
}

async function soak() {
  const faults = Array.from({ length: kills }, () => killed);
  if (disk !== null) faults.splice(Math.floor(kills / 3), 0, filled);
  if (disk !== null) faults.splice(Math.floor((2 * kills) / 3), 0, locked);
  for (const [nth, fault] of faults.entries())
    await fault(Math.round((rows * (nth + Math.random())) / faults.length));
  const last = await finish(mailing());
  say('the last run ends with some to phone and some to fix', last.status === 1);
  const verified = await finish(run('verify', out));
  say('all is as recorded', verified.status === 0);
  judge(last.said);
  console.log(`${spent.toFixed(0)} s in all; highest memory ${Math.max(...peaks).toFixed(0)} MiB`);
}

async function killed(moment) {
  const started = mailing();
  const before = await recorded(moment, started.child);
  started.child.kill('SIGKILL');
  await finish(started);
  console.log(`killed after ${before} records`);
}

async function filled(moment) {
  const started = mailing();
  await recorded(moment, started.child);
  disk.fill(300_000);
  say('a full disk ends the run with 73', (await finish(started)).status === 73);
  say('and again with 73, as long as it is full', (await finish(mailing())).status === 73);
  disk.widen(room);
}

async function locked(moment) {
  await killed(moment);
  disk.lock();
  say('a locked disk ends the run with 73', (await finish(mailing())).status === 73);
  disk.unlock();
}

function run(...words) {
  return startMeasured([resolve('dist/ironleaf.js'), ...words]);
}

function mailing() {
  return run('mailing', file, '--out', out, '--demo', '--date', '2026-11-25', '--format', format);
}

async function finish({ ended }) {
  const { status, said, wall, peak } = await ended;
  peaks.push(peak);
  spent += wall;
  return { status, said };
}

/** Resolves when about so many outcomes are recorded, or the run has ended. */
async function recorded(count, child) {
  let about = 0;
  while (child.exitCode === null && about < count) {
    await new Promise((done) => setTimeout(done, 20 + 60 * Math.random()));
    const size = statSync(manifest, { throwIfNoEntry: false })?.size ?? 0;
    if (size > 0) about = Math.round(size / lineLength());
  }
  return about;
}

/** Counted over its first records: the file grows long. */
function lineLength() {
  const text = readFileSync(manifest, 'latin1').slice(0, 100_000);
  return text.length / Math.max(1, text.split('\n').length - 1);
}

function judge(said) {
  const names = readdirSync(join(out, 'letters'));
  const ending = format === 'text' ? '.txt' : `.${format}`;
  const read = (name) => readFileSync(join(out, name), 'utf8');
  const counted = (words) => Number(new RegExp(`(\\d+) ${words}`).exec(said)?.[1] ?? 0);
  const [made, phone, fix] = [
    counted('letters made') + counted('kept as they were'),
    counted('to phone'),
    counted('to fix'),
  ];
  say(`${made} letters, ${phone} to phone, ${fix} to fix: ${rows}`, made + phone + fix === rows);
  const letters = names.filter((name) => name.endsWith(ending));
  say('as many letters lie there', letters.length === made);
  say(
    'each is whole',
    letters.every((name) => whole.test(read(`letters/${name}`))),
  );
  say(
    'nothing half-written lies about',
    [...names, ...readdirSync(out)].every((name) => !name.includes('.part')),
  );
  say('as many lines to phone', linesOf(read('calls.csv')).length === phone);
  const wrong = new Set(linesOf(read('to-fix.csv')).map(([, report]) => report));
  say('as many reports to fix', wrong.size === fix);
  const people = reports.flatMap(({ patient }) => [
    patient.name,
    patient.birthDate ?? patient.name,
  ]);
  const known = new RegExp([...new Set(people)].join('|'));
  const told = ['manifest.jsonl', 'run.json', 'recall.csv', 'recall.ics', 'summary.html'].map(read);
  say(
    'no record names a person or a birth date',
    ![...told, said].some((text) => known.test(text)),
  );
}

function linesOf(csv) {
  return parse(csv, { bom: true, from_line: 2 });
}
