// Judges every letter the examples can make: a table on standard output, a page in out/; status 1 when an English gate fails.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
process.chdir(root);
const outfile = join(root, 'node_modules/.cache/ironleaf-readability.js');
await build({
  entryPoints: [join(root, 'tests/readability/report.ts')],
  outfile,
  bundle: true,
  packages: 'external',
  platform: 'node',
  format: 'esm',
  logLevel: 'warning',
});
const { everyVerdict, pageOf, tableOf } = await import(pathToFileURL(outfile).href);

const { verdicts, skipped } = everyVerdict();
mkdirSync('out', { recursive: true });
writeFileSync('out/readability.html', pageOf(verdicts, skipped));
console.log(tableOf(verdicts));
console.log('out/readability.html');
const failed = verdicts.filter(({ faults }) => faults.length > 0);
for (const { name, faults } of failed) console.error(`${name}: ${faults.join('; ')}`);
if (skipped.length > 0) console.error(`Not read: ${skipped.join(', ')}.`);
process.exitCode = failed.length === 0 ? 0 : 1;
