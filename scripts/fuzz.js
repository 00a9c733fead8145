// A number of files (and minutes at most) arrives; every door is fed broken files until then, and the counts leave.
// node scripts/fuzz.js [files] [minutes]: half of them reports, half what else a clinic brings; and for each hundred
// and each thousand of them an odd call of the library, changed records of a run, and an odd command line.
import { bundled } from './bundled.js';

const [wanted, minutes] = [Number(process.argv[2] ?? 100_000), Number(process.argv[3] ?? 60)];
const batch = 1000;

const { fuzzReaders } = await bundled('tests/intake/fuzz.ts');
const { fuzzDoors, fuzzRecords } = await bundled('tests/app/fuzz-doors.ts');
const { fuzzLibrary, fuzzWords } = await bundled('tests/app/fuzz-words.ts');

const end = Date.now() + minutes * 60_000;
let fed = 0;
while (fed < wanted && Date.now() < end) {
  const runs = Math.min(batch, wanted - fed);
  // A fault throws here, with its seed and the smallest file that shows it.
  await fuzzReaders(Math.ceil(runs / 2));
  await fuzzDoors(Math.ceil(runs / 2));
  await fuzzLibrary(Math.ceil(runs / 100));
  await fuzzRecords(Math.ceil(runs / 1000));
  await fuzzWords(Math.ceil(runs / 1000));
  fed += runs;
  console.error(`${fed} of ${wanted} files`);
}
console.log(`${fed} broken files read or refused: no crash, none over a second, no value made up.`);
