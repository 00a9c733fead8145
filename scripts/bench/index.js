// npm run bench: starts, letters a second beside other ways, memory and sizes of the built program, as tables.
// npm run bench -- memory [LENGTHS…] [html]: memory alone, over mailings of these lengths.
// npm run bench -- page [N]: the page in a browser. Seconds are those of this machine at this moment; ratios last.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { measureMemory } from './memory.js';
import { measurePage } from './page.js';
import { measureRates } from './rates.js';
import { measureSizes } from './sizes.js';
import { measureStarts } from './starts.js';

const [word, ...rest] = process.argv.slice(2);
const lengths = rest.map(Number).filter((length) => length > 0);
const format = rest.includes('html') ? 'html' : 'pdf';
const folder = mkdtempSync(join(tmpdir(), 'ironleaf-bench-'));

try {
  if (word === 'page') print(await measurePage(lengths[0] ?? 9));
  else if (word === 'memory') print(await measureMemory(folder, lengths, format));
  else if (word === undefined) {
    print(await measureStarts(folder));
    print(await measureRates(folder));
    print(await measureMemory(folder, [], 'pdf'));
    print(await measureSizes(folder));
  } else throw new Error(`bench: expected nothing, memory or page, and not "${word}"`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** A table in Markdown; the first row is its head. */
function print(rows) {
  const widths = rows[0].map((_, nth) => Math.max(...rows.map((row) => row[nth].length)));
  const line = (cells) => `| ${cells.map((cell, nth) => cell.padEnd(widths[nth])).join(' | ')} |`;
  const [head, ...body] = rows;
  const rule = widths.map((width) => '-'.repeat(width));
  console.log(`${[head, rule, ...body].map(line).join('\n')}\n`);
}
