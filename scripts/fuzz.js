// A number of files (and minutes at most) arrives; every reader is fed broken files until then, and the count leaves.
// node scripts/fuzz.js [files] [minutes]
import { bundled } from './bundled.js';

const [wanted, minutes] = [Number(process.argv[2] ?? 100_000), Number(process.argv[3] ?? 60)];
const batch = 1000;

const { fuzzReaders } = await bundled('tests/intake/fuzz.ts');

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
