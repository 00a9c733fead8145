// A number of files (and minutes at most) arrives; every reader is fed broken files until then, and the count leaves.
// node scripts/fuzz.js [files] [minutes]
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const outfile = join(root, 'node_modules/.cache/ironleaf-fuzz.js');
const [wanted, minutes] = [Number(process.argv[2] ?? 100_000), Number(process.argv[3] ?? 60)];
const batch = 1000;

mkdirSync(dirname(outfile), { recursive: true });
await build({
  entryPoints: [join(root, 'tests/intake/fuzz.ts')],
  outfile,
  bundle: true,
  packages: 'external',
  platform: 'node',
  format: 'esm',
  logLevel: 'warning',
});
const { fuzzReaders } = await import(pathToFileURL(outfile).href);

const end = Date.now() + minutes * 60_000;
let fed = 0;
while (fed < wanted && Date.now() < end) {
  const runs = Math.min(batch, wanted - fed);
  // A fault throws here, with its seed and the smallest file that shows it.
  await fuzzReaders(runs);
  fed += runs;
  console.error(`${fed} of ${wanted} files`);
}
console.log(`${fed} broken files read or refused: no crash, none over a second, no value made up.`);
