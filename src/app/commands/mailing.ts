// ironleaf mailing: one file of many reports in; letters to print, people to phone and rows to fix out.
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Argv, CommandModule } from 'yargs';
import { letterFolder, readShard, type Shard, shardName, whole } from '../../mailing/index.js';
import { pageFormats } from '../formats.js';
import { growSlowly } from '../grow-slowly.js';
import { type RunChoices, readRunFile } from '../run-file.js';
import { sayProgress } from '../say-progress.js';
import { Stop, status } from '../status.js';
import { inFolder, openBench, workMailing } from '../work-mailing.js';
import { formatsOf, letterOptions } from './letter-options.js';
import { afterMailing, afterShare } from './say-next.js';
import { dateOf, ownConfig } from './shared.js';

function options(yargs: Argv) {
  return letterOptions(
    yargs.positional('file', {
      type: 'string',
      demandOption: true,
      describe: 'File with many reports',
    }),
  )
    .option('out', { type: 'string', demandOption: true, describe: 'Folder of this run' })
    .option('format', { type: 'string', default: 'pdf', describe: pageFormats.join(', ') })
    .option('language-column', { type: 'string', describe: 'Column that names the language' })
    .option('columns', { type: 'string', describe: 'File that says what columns mean' })
    .option('passwords', {
      type: 'string',
      describe: 'Table: id, password; locks each PDF with AES-256',
    })
    .option('shard', { type: 'string', describe: 'i/n: this run’s part of the file' })
    .example('$0 mailing evening.csv --out evening', 'Letters, calls.csv and to-fix.csv')
    .epilogue(
      'A run that was stopped goes on when the same command is given again. calls.csv names patients: it is the operator’s own list.',
    );
}
type Words = Awaited<ReturnType<typeof options>['argv']>;

export const mailingCommand: CommandModule<object, Words> = {
  command: 'mailing <file>',
  describe: 'Make the letters of a whole file, and the lists of whom to phone and what to fix',
  builder: (yargs) => options(yargs) as Argv<Words>,
  handler: async (words) => {
    growSlowly();
    const shard = shardOf(words.shard);
    const choices = await choicesOf(words);
    const tell = sayProgress(process.stderr, () => performance.now());
    const bench = await openBench(words.out, choices);
    const { outcomes } = await inFolder(words.out, shard, () => workMailing(bench, shard, tell));
    const lists = [
      'calls.csv',
      'calls.pdf',
      'to-fix.csv',
      'recall.csv',
      'recall.ics',
      'summary.pdf',
    ];
    for (const name of [letterFolder, ...lists.map((list) => shardName(list, shard))])
      console.log(join(words.out, name));
    const { made, held, refused } = outcomes;
    const next =
      shard.count > 1
        ? afterShare(join(words.out, shardName('calls.pdf', shard)), held)
        : afterMailing(words.out, outcomes);
    for (const line of next) console.error(line);
    if (held + refused > 0)
      // A share without a letter is no failed share: a scheduler would only repeat it.
      process.exitCode =
        made + held === 0 && shard.count === 1 ? status.badData : status.someHeldOrRefused;
  },
};

function shardOf(written: string | undefined): Shard {
  const shard = written === undefined ? whole : readShard(written);
  if (shard === null) throw new Stop(status.usage, ['--shard: expected i/n such as 2/8.']);
  return shard;
}

/** The date of the first run holds until another is given: a run resumed after midnight changes no letter. */
async function choicesOf(words: Words): Promise<RunChoices> {
  const before = await readRunFile(words.out);
  return {
    input: resolve(words.file),
    config: configOf(words),
    demo: words.demo,
    columns: words.columns === undefined ? null : resolve(words.columns),
    languageColumn: words.languageColumn ?? null,
    passwords: words.passwords === undefined ? null : resolve(words.passwords),
    language: words.language,
    beside: words.beside ?? null,
    formats: [...formatsOf(words.format, pageFormats)],
    paper: words.paper,
    largePrint: words.largePrint,
    compact: words.compact,
    analogy: words.analogy,
    easyRead: words.easyRead,
    signedOnly: words.signedOnly,
    scriptStyle: words.scriptStyle ?? null,
    food: words.food,
    design: words.design,
    templates: words.templates === undefined ? null : resolve(words.templates),
    date: words.date === undefined ? (before?.date ?? dateOf(undefined)) : dateOf(words.date),
  };
}

/** Remembered as a whole path: a release may be given from another folder. */
function configOf({ config, demo }: Words): string | null {
  if (config !== undefined) return resolve(config);
  return !demo && existsSync(ownConfig) ? resolve(ownConfig) : null;
}
