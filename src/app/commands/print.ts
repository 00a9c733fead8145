// ironleaf print: the folder of a run in; one PDF of all its letters out, in the order of the file.
import { join } from 'node:path';
import type { Argv, CommandModule } from 'yargs';
import {
  type Addresses,
  eveningLetters,
  findWindow,
  openPrintFile,
  type PrintFile,
  printName,
  readAddresses,
  recordLists,
  testPage,
  type WindowPreset,
  whole,
  windowPresets,
} from '../../mailing/index.js';
import { readInputFile } from '../input.js';
import { sentences, sizeOf } from '../kit.js';
import { Stop, status } from '../status.js';
import { type Bench, eveningOf, inFolder, reopenBench } from '../work-mailing.js';
import { afterPrint } from './say-next.js';

function options(yargs: Argv) {
  return yargs
    .positional('folder', { type: 'string', demandOption: true, describe: 'Folder of a run' })
    .option('window', {
      choices: windowPresets.map(({ id }) => id),
      describe: 'Window of the envelopes: where the address stands',
    })
    .option('addresses', { type: 'string', describe: 'Table: id, then the lines of the address' })
    .option('fold-marks', { type: 'boolean', default: false, describe: 'Marks at the left edge' })
    .option('single-sided', {
      type: 'boolean',
      default: false,
      describe: 'No blank backs: letters are printed on one side',
    })
    .option('test-page', {
      type: 'boolean',
      default: false,
      describe: 'Only a page with the box of the window, to try in an envelope',
    })
    .example('$0 print evening', 'print.pdf: every letter on sheets of its own')
    .example('$0 print evening --window din-5008-b --test-page', 'Try the window first');
}
type Words = Awaited<ReturnType<typeof options>['argv']>;

export const printCommand: CommandModule<object, Words> = {
  command: 'print <folder>',
  describe: 'Put all letters of a run into one PDF for a print house',
  builder: (yargs) => options(yargs) as Argv<Words>,
  handler: async (words) => {
    const window = windowOf(words);
    const bench = await reopenBench(words.folder);
    const addresses = await addressesOf(words);
    await inFolder(words.folder, whole, async () => {
      const name = words.testPage ? 'print-test.pdf' : printName;
      const print = await openFor(bench, words, window, name);
      const left = await fill(print, bench, words, window, addresses).catch(async (fault) => {
        await print.giveUp();
        throw fault;
      });
      await print.finish();
      await recordLists(words.folder, whole, bench.desk.now);
      console.log(join(words.folder, name));
      for (const line of words.testPage ? left : [...left, ...afterPrint(words.folder)])
        console.error(line);
      if (left.length > 0) process.exitCode = status.someHeldOrRefused;
    });
  },
};

function windowOf({ window, addresses, testPage: test }: Words): WindowPreset | null {
  if (window === undefined) {
    if (addresses !== undefined || test)
      throw new Stop(status.usage, ['--window: name the window of the envelopes.']);
    return null;
  }
  if (addresses === undefined && !test)
    throw new Stop(status.usage, ['--addresses: a window needs addresses to show.']);
  return findWindow(window);
}

async function openFor(bench: Bench, words: Words, window: WindowPreset | null, name: string) {
  const { kit, choices } = bench;
  return openPrintFile({
    path: join(bench.folder, name),
    form: {
      paper: window?.paper ?? choices.paper,
      size: sizeOf(choices),
    },
    fonts: await kit.fonts(),
    window,
    folds: words.foldMarks || words.testPage,
    box: words.testPage,
    duplex: !words.singleSided && !words.testPage,
    facts: {
      title: 'Letters',
      created: `${choices.date}T00:00:00Z`,
      producerVersion: kit.version,
    },
  });
}

/** Returns what was left out, by letter; a letter without an address must not end in another's envelope. */
async function fill(
  print: PrintFile,
  bench: Bench,
  words: Words,
  window: WindowPreset | null,
  addresses: Addresses,
): Promise<readonly string[]> {
  if (words.testPage && window !== null) {
    const { document, address } = testPage(window);
    const added = await print.add(document, address);
    return added.ok ? [] : sentences(added.problems);
  }
  const left: string[] = [];
  const count = { letters: 0, sheets: 0, unchecked: 0 };
  for await (const { stem, id, checked, document } of eveningLetters(
    await eveningOf(bench),
    bench.folder,
  )) {
    const address = window === null ? null : (addresses.get(id ?? stem) ?? []);
    if (address?.length === 0) left.push(`${stem}: left out; there is no address for it.`);
    else {
      const added = document.ok ? await print.add(document.value, address) : document;
      if (added.ok) {
        count.letters += 1;
        if (!checked) count.unchecked += 1;
        count.sheets += added.value;
      } else left.push(...sentences(added.problems).map((line) => `${stem}: left out; ${line}`));
    }
  }
  if (count.letters + left.length === 0)
    throw new Stop(status.noInput, ['There is no letter to print; run ironleaf mailing first.']);
  console.error(`${count.letters} letters on ${count.sheets} sheets, ${left.length} left out.`);
  if (count.unchecked > 0)
    console.error(`${count.unchecked} of them nobody signed; each of their pages says so.`);
  return left;
}

async function addressesOf({ addresses }: Words): Promise<Addresses> {
  if (addresses === undefined) return new Map();
  const { name, bytes } = await readInputFile(addresses, 64 * 1024 * 1024);
  const read = readAddresses(name, new TextDecoder().decode(bytes));
  if (!read.ok) throw new Stop(status.badData, sentences(read.problems));
  return read.value;
}
