// A number of runs arrives; every file that is no report, but that somebody may bring or change, is broken and read by
// the door that takes it; each crash, each second of computing and each name that is repeated is told.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { readClinic, readDetails } from '../../src/app/config.js';
import { openShelf } from '../../src/app/languages/shelf.js';
import { readXliff } from '../../src/app/languages/read-xliff.js';
import { takeIn } from '../../src/app/languages/take-in.js';
import { unitsOf } from '../../src/app/languages/units.js';
import { writeXliff } from '../../src/app/languages/write-xliff.js';
import { readLogoFile } from '../../src/app/logo/read-logo-file.js';
import { readRunFile } from '../../src/app/run-file.js';
import { Stop } from '../../src/app/status.js';
import { readOwnTemplates } from '../../src/app/templates/own-templates.js';
import { eveningOf, inFolder, reopenBench, workMailing } from '../../src/app/work-mailing.js';
import { readColumnMap, readInput } from '../../src/intake/index.js';
import {
  judge,
  readAddresses,
  readIds,
  readPasswords,
  verifyFolder,
  whole,
} from '../../src/mailing/index.js';
import { type Checked, sayProblem } from '../../src/problem.js';
import { type Change, changed, changes } from '../intake/fuzz.js';
import { png, runFiles, secret, table } from './fuzz-doors-samples.js';

type Door = {
  readonly name: string;
  readonly files: readonly (string | Uint8Array)[];
  /** @param folder its own, kept from one call to the next. @returns the sentences an operator would see. */
  readonly read: (content: Uint8Array, folder: string) => Promise<readonly string[]>;
};

const said = (read: Checked<unknown>) =>
  (read.ok ? read.notes : read.problems).map((problem) => sayProblem(problem));
const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
const example = (name: string) => readFileSync(`examples/${name}`, 'utf8');

/** Writes the file into the folder and says what the command would. */
const withFile =
  (name: string, read: (folder: string, name: string) => Promise<readonly string[]>) =>
  async (content: Uint8Array, folder: string) => {
    writeFileSync(join(folder, name), content);
    return read(folder, name);
  };

async function doors(): Promise<readonly Door[]> {
  const shelf = await openShelf('pl');
  const units = unitsOf(shelf).slice(0, 25);
  return [
    {
      name: 'column map, and a table read with it',
      files: [
        '{"columns":{"Pat-Nr":"id","FERR":{"analyte":"ferritin","unit":"ug/L"},"Hb":{"analyte":"haemoglobin","unit":"g/L","part":"low"}},"tests":{"Eisen":"serum-iron"},"dates":"day-first","decimal":","}',
      ],
      read: async (bytes) => {
        const map = readColumnMap({ name: 'map.json', bytes });
        if (!map.ok) return said(map);
        const { reports, ignored } = await readInput(table, { columns: map.value });
        return [...ignored.map(sayProblem), ...reports.flatMap(said)];
      },
    },
    {
      name: 'clinic details',
      files: [example('clinic.json')],
      read: async (bytes) => [
        ...said(readClinic('clinic.json', bytes, false)),
        ...said(readDetails('clinic.json', bytes)),
      ],
    },
    {
      name: 'passwords and addresses',
      files: [`id,password\nSB-1,horse-battery\nSB-2,${secret}-staple\n`, 'id;a;b\n1;"x;y";z\n'],
      read: async (bytes) => [
        ...said(readPasswords('passwords.csv', textOf(bytes))),
        ...said(readAddresses('post.csv', textOf(bytes))),
      ],
    },
    {
      name: 'ids to sign',
      files: [`# remark\nSB-1\n${secret}\n`],
      read: async (bytes) => {
        const ids = readIds(textOf(bytes));
        if (ids.some((id) => id.trim() !== id || id === '')) throw new Error('an id is blank');
        return [];
      },
    },
    {
      name: 'a translation',
      files: [writeXliff('pl', units)],
      read: async (bytes) => {
        const read = readXliff('pl.xlf', textOf(bytes));
        if (!read.ok) return said(read);
        return takeIn('pl.xlf', read.value.segments, units, 'translated').refused.map(sayProblem);
      },
    },
    {
      name: 'own templates',
      files: ['letter.hbs', 'help.hbs', 'step.hbs'].map((name) =>
        readFileSync(`templates/${name}`, 'utf8'),
      ),
      read: withFile('letter.hbs', async (folder) => said(await readOwnTemplates(folder))),
    },
    {
      name: 'a logo',
      files: [example('clinic-logo.svg'), png],
      read: withFile('logo', async (folder, name) => said(await readLogoFile(folder, name))),
    },
  ];
}

const overwritten = fc.array(fc.tuple(fc.nat(100_000), fc.nat(255)), { maxLength: 4 });

function broken(file: string | Uint8Array, all: readonly Change[], bytes: [number, number][]) {
  const content =
    typeof file === 'string' ? new TextEncoder().encode(changed(file, all)) : Uint8Array.from(file);
  if (content.length > 0) for (const [at, byte] of bytes) content[at % content.length] = byte;
  return content;
}

/** Sentences of a command that stopped; anything else thrown is a crash. */
async function stopped(work: () => Promise<readonly string[]>): Promise<readonly string[]> {
  try {
    return await work();
  } catch (fault) {
    if (fault instanceof Stop && fault.status !== 70) return fault.sentences;
    throw fault;
  }
}

/** Feeds `runs` broken files to the doors. Throws, with the smallest file found, when one breaks a promise. */
export async function fuzzDoors(runs: number, seed?: number): Promise<void> {
  const all = await doors();
  const folders = new Map(all.map(({ name }) => [name, mkdtempSync(join(tmpdir(), 'ironleaf-'))]));
  const some = fc
    .constantFrom(...all)
    .chain((door) =>
      fc.tuple(fc.constant(door), fc.constantFrom(...door.files), changes, overwritten),
    );
  const holds = fc.asyncProperty(some, async ([door, file, edits, bytes]) => {
    const content = broken(file, edits, bytes);
    const started = process.cpuUsage();
    const sentences = await stopped(() => door.read(content, folders.get(door.name) ?? ''));
    if (process.cpuUsage(started).user > 1_000_000) throw new Error(`${door.name}: over a second`);
    tellNothing(door.name, sentences);
  });
  try {
    await fc.assert(holds, { numRuns: runs, ...(seed === undefined ? {} : { seed }) });
  } finally {
    for (const folder of folders.values()) rmSync(folder, { recursive: true, force: true });
  }
}

function tellNothing(door: string, sentences: readonly string[]) {
  const leak = sentences.find((sentence) => sentence.includes(secret));
  if (leak !== undefined) throw new Error(`${door} repeated a name: ${leak}`);
  // Line ends, escapes and marks of direction would let a file write on the operator's screen.
  const steering = sentences.find((sentence) =>
    /[\p{Cc}\u202A-\u202E\u2066-\u2069]/u.test(sentence.replaceAll('\n', ' ')),
  );
  if (steering !== undefined) throw new Error(`${door} steered: ${JSON.stringify(steering)}`);
}

/** Records of a run that somebody changed: verified, reviewed and resumed, and nothing outside the folder touched. */
export async function fuzzRecords(runs: number, seed?: number): Promise<void> {
  const home = mkdtempSync(join(tmpdir(), 'ironleaf-'));
  const folder = join(home, 'run');
  const outside = join(home, 'outside.txt');
  const sound = await runFiles(folder);
  const records = ['manifest.jsonl', 'run.json', 'signed.json', 'released/SB-2.json', 'lock'];
  const spots = fc.tuple(fc.constantFrom(...records), changes, overwritten);
  const holds = fc.asyncProperty(
    spots,
    fc.constantFrom('', '../outside.txt'),
    async ([record, edits, bytes], away) => {
      for (const [name, text] of sound) {
        mkdirSync(dirname(join(folder, name)), { recursive: true });
        writeFileSync(join(folder, name), text);
      }
      writeFileSync(outside, 'untouched');
      const text = sound.get(record) ?? '{}';
      const aimed =
        away === ''
          ? text
          : text.replace(/letters\/[\w.-]+/, away).replaceAll('"key":"', '"key":"0');
      writeFileSync(join(folder, record), broken(aimed, edits, bytes));
      tellNothing(
        record,
        await stopped(async () => {
          await readRunFile(folder);
          const { findings } = await verifyFolder(folder);
          const bench = await reopenBench(folder);
          await inFolder(folder, whole, async () => {
            await judge(await eveningOf(bench), 0);
            return workMailing(bench, whole, () => {});
          });
          return findings.map(({ code }) => code);
        }),
      );
      if (readFileSync(outside, 'utf8') !== 'untouched')
        throw new Error('wrote outside the folder');
    },
  );
  try {
    await fc.assert(holds, { numRuns: runs, ...(seed === undefined ? {} : { seed }) });
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}
