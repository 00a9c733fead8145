// A length, a form or an example arrives; what the built program did and took leaves.
import { mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeEvening } from './evening.js';
import { measuredRun } from './measured-run.js';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const program = join(root, 'dist/ironleaf.cjs');
const date = ['--date', '2026-11-25'];

/** One mailing of so many letters, never one taken up again: its time and memory, and the folder of its letters. */
export async function mailing(within, count, format) {
  const folder = mkdtempSync(join(within, 'mailing-'));
  const table = join(folder, `${count}.csv`);
  const out = join(folder, `${count}-${format}`);
  await writeEvening(table, count);
  const words = ['mailing', table, '--demo', '--format', format, '--out', out, ...date];
  return { ...(await measuredRun([program, ...words])), letters: join(out, 'letters') };
}

/** One letter of an example. */
export function letter(folder, example, format, language = 'en') {
  const report = join(root, 'examples', example);
  const words = ['letter', report, '--demo', '--format', format, '--language', language];
  return measuredRun([program, ...words, '--out', folder, ...date]);
}

export const median = (numbers) =>
  numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)];
