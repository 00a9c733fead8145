// A short run of the fuzz over every door but those of reports: files of a clinic, records of a run, words, values.
import { it } from 'vitest';
import { fuzzDoors, fuzzRecords } from './fuzz-doors.js';
import { fuzzLibrary, fuzzWords } from './fuzz-words.js';

const seed = 20261125;

it('no file of a clinic that is broken crashes a door, takes long or is repeated to the screen', async () => {
  await fuzzDoors(700, seed);
}, 60_000);

it('no record of a run that somebody changed crashes a command or touches a file outside the folder', async () => {
  await fuzzRecords(40, seed);
}, 120_000);

it('no words on a command line crash the program or bring out a name', async () => {
  await fuzzWords(40, seed);
}, 120_000);

it('no odd text or number crashes a letter of the library', async () => {
  await fuzzLibrary(150, seed);
}, 60_000);
