// npm run bench -- page [N] measures the page in a browser (page.js).
// npm run bench [-- LENGTHS…]: letters a second, start and memory of the built program beside other ways, as a table.
// Everything runs in turn within one call, so that ratios hold on a busy machine; seconds alone do not.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeEvening } from './evening.js';
import { fixedLoop, measuredRun } from './measured-run.js';
import { measurePage } from './page.js';
import { chromiumRate, pdfkitRate } from './rivals.js';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const program = join(root, 'dist/ironleaf.js');
if (process.argv[2] === 'page') {
  const table = await measurePage(Number(process.argv[3] ?? 9));
  console.log(table.map((row) => `| ${row.join(' | ')} |`).join('\n'));
  process.exit();
}
const asked = process.argv.slice(2).map(Number);
const lengths = asked.length > 0 ? asked : [200, 1000, 5000];
const compared = 40;
const folder = mkdtempSync(join(tmpdir(), 'ironleaf-bench-'));
const rows = [];
const say = (what, value, more = '') => {
  rows.push([what, value, more]);
  console.error(`${what}: ${value} ${more}`);
};

async function mailing(count, format) {
  const path = join(folder, `${count}.csv`);
  await writeEvening(path, count);
  const out = join(folder, `${count}-${format}`);
  const words = [
    'mailing',
    path,
    '--demo',
    '--format',
    format,
    '--out',
    out,
    '--date',
    '2026-11-25',
  ];
  return { ...(await measuredRun([program, ...words])), letters: join(out, 'letters') };
}

const contents = (letters) =>
  readdirSync(letters).map((name) => readFileSync(join(letters, name), 'utf8'));

try {
  const loop = fixedLoop().seconds;
  say('fixed loop', `${loop.toFixed(2)} s`, 'what one thread gets at this moment');
  const starts = [];
  for (let i = 0; i < 5; i++) {
    const words = [
      'letter',
      join(root, 'examples/all-in-range.json'),
      '--demo',
      '--out',
      join(folder, 'one'),
    ];
    starts.push((await measuredRun([program, ...words])).wall);
  }
  say('cold start, one letter', `${starts.sort((a, b) => a - b)[2].toFixed(2)} s`, 'median of 5');

  const runs = [];
  for (const length of lengths) runs.push({ length, ...(await mailing(length, 'pdf')) });
  const [short, ...longer] = runs;
  for (const { length, wall, cpu, peak } of runs)
    say(
      `${length} letters`,
      `${(length / wall).toFixed(0)} a second`,
      `peak ${peak.toFixed(0)} MB, processor ${((1000 * cpu) / length).toFixed(1)} ms a letter`,
    );
  const long = longer.at(-1) ?? short;
  // Two lengths, so that the start drops out.
  const rate =
    long === short
      ? short.length / short.wall
      : (long.length - short.length) / (long.wall - short.wall);
  say(
    'letters a second once started',
    rate.toFixed(0),
    `${(rate * loop).toFixed(0)} in the time of the fixed loop`,
  );

  const html = contents((await mailing(compared, 'html')).letters);
  const text = contents((await mailing(compared, 'text')).letters);
  const floor = await pdfkitRate(text);
  say(
    'pdfkit alone, bare text',
    `${floor.toFixed(0)} a second`,
    `${(rate / floor).toFixed(2)} times as fast as this`,
  );
  const printed = await chromiumRate(html);
  say(
    'Chromium, one browser kept',
    `${printed.toFixed(1)} a second`,
    `${(rate / printed).toFixed(1)} times as fast as this`,
  );
  console.log(rows.map((row) => `| ${row.join(' | ')} |`).join('\n'));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
