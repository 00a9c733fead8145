// Makes every letter and reasoning sheet of examples/ into out/ with the built program, and prints their paths.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const out = 'out';
const program = 'dist/ironleaf.cjs';
mkdirSync(out, { recursive: true });

let worst = 0;
for (const file of readdirSync('examples').sort()) {
  if (!/\.(json|csv)$/.test(file) || file === 'clinic.json') continue;
  const report = join('examples', file);
  run(['letter', report, '--demo', '--format', 'html,pdf', '--out', out]);
  const sheet = join(out, `${file.replace(/\.[a-z]+$/, '')}.reasoning.txt`);
  writeFileSync(sheet, run(['explain', report], { print: false }));
  console.log(sheet);
}
process.exitCode = worst;

/** Exit status 1 (a held letter) is what some examples are there to show; anything above is a fault. */
function run(words, { print = true } = {}) {
  const done = spawnSync(process.execPath, [program, ...words], { encoding: 'utf8' });
  if (print) process.stdout.write(done.stdout);
  process.stderr.write(done.stderr);
  if (done.status !== 0 && done.status !== 1) worst = done.status ?? 70;
  return done.stdout;
}
