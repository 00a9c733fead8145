// npm run matrix [-- LANGUAGES…]: every example in every language and form, one process; counts and faults, status 1 with faults.
import { readdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundled } from './bundled.js';

process.chdir(dirname(dirname(fileURLToPath(import.meta.url))));
const { makeMatrix, readExamples } = await bundled('tests/matrix/matrix.ts');

const every = readdirSync('locales', { withFileTypes: true }).filter((entry) =>
  entry.isDirectory(),
);
const asked = process.argv.slice(2);
const languages = asked.length > 0 ? asked : every.map(({ name }) => name).sort();
const { examples, refused } = await readExamples(['examples', 'examples/formats']);

const began = performance.now();
const seconds = () => ((performance.now() - began) / 1000).toFixed(0);
const { letters, files, without, readBack, faults } = await makeMatrix(
  examples,
  languages,
  10,
  (name, count) => console.error(`${seconds()} s, ${count} letters: ${name}`),
);
for (const one of refused) console.log(`Not understood, as it should be: ${one}`);
for (const fault of faults) console.log(`FAULT ${fault}`);
console.log(
  `${examples.length} reports, ${languages.length} languages: ${letters} letters and sheets (${files} files, ` +
    `${readBack} PDFs read back), ${without} sheets rightly not made, ${faults.length} faults, ${seconds()} s, ` +
    `${(process.memoryUsage.rss() / 1e6).toFixed(0)} MB at the end.`,
);
process.exitCode = faults.length === 0 ? 0 : 1;
