// Judges every letter the examples can make: a table on standard output, a page in out/; status 1 when an English gate fails.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundled } from './bundled.js';

process.chdir(dirname(dirname(fileURLToPath(import.meta.url))));
const { everyVerdict, pageOf, tableOf } = await bundled('tests/readability/report.ts');

const { verdicts, skipped } = everyVerdict();
mkdirSync('out', { recursive: true });
writeFileSync('out/readability.html', pageOf(verdicts, skipped));
console.log(tableOf(verdicts));
console.log('out/readability.html');
const failed = verdicts.filter(({ faults }) => faults.length > 0);
for (const { name, faults } of failed) console.error(`${name}: ${faults.join('; ')}`);
if (skipped.length > 0) console.error(`Not read: ${skipped.join(', ')}.`);
process.exitCode = failed.length === 0 ? 0 : 1;
