// ironleaf languages: what the languages are and how far they are checked; files for translators out and in.
import type { Argv, CommandModule } from 'yargs';
import { languageTags } from '../assets.js';
import { openShelf, type Shelf, standingOf } from '../languages/shelf.js';
import { status } from '../status.js';
import { exportLanguage, importLanguage, printBack, printProof, record } from './languages-work.js';

const tagOf = <T>(yargs: Argv<T>) =>
  yargs.positional('tag', {
    type: 'string',
    demandOption: true,
    describe: 'Such as pl or zh-Hans',
  });
const outOf = <T>(yargs: Argv<T>) =>
  yargs.option('out', { type: 'string', default: '.', describe: 'Folder for the files' });

const examples: Readonly<Record<'export' | 'import', [string, string]>> = {
  export: ['$0 languages export pl --to xliff --out work', 'A file for translators'],
  import: [
    '$0 languages import work/pl.xlf --by "A. Name" --credential "translator" --as translated',
    'What fits is taken in; of the rest it says why not',
  ],
};

function options(yargs: Argv) {
  return yargs
    .option('json', { type: 'boolean', default: false, describe: 'For other programs' })
    .command(
      'export <tag>',
      'Write an XLIFF 2.0 file for translators',
      (own) =>
        outOf(tagOf(own))
          .option('to', {
            choices: ['xliff'] as const,
            default: 'xliff' as const,
            describe: 'Form of the file',
          })
          .example(...examples.export),
      ({ tag, out }) => exportLanguage(tag, out),
    )
    .command(
      'import <file>',
      'Take in a translated XLIFF file and record who answers for it',
      (own) =>
        own
          .positional('file', { type: 'string', demandOption: true, describe: 'XLIFF 2.0 file' })
          .option('by', { type: 'string', demandOption: true, describe: 'Name of the translator' })
          .option('credential', {
            type: 'string',
            demandOption: true,
            describe: 'What qualifies the translator',
          })
          .option('as', {
            choices: ['translated', 'revised', 'signed'] as const,
            default: 'translated' as const,
            describe: 'The most that this person answers for',
          })
          .option('date', { type: 'string', describe: 'Day of the work, YYYY-MM-DD' })
          .example(...examples.import),
      (words) => importLanguage(words),
    )
    .command(
      'proof <tag>',
      'Write a page with every message beside English, to be read through',
      (own) => outOf(tagOf(own)).example('$0 languages proof pl --out work', 'work/pl.proof.html'),
      ({ tag, out }) => printProof(tag, out),
    )
    .command(
      'back-translation <tag>',
      'Write a sheet to translate back: the answer in short, safety, next steps',
      (own) =>
        outOf(tagOf(own)).example(
          '$0 languages back-translation pl --out work',
          'The sheet, and a key for whoever compares',
        ),
      ({ tag, out }) => printBack(tag, out),
    )
    .command(
      'record <tag>',
      'Enter new texts that nobody answers for as drafts by a computer',
      (own) =>
        tagOf(own)
          .option('date', { type: 'string', describe: 'Day of the drafts' })
          .example('$0 languages record pl', 'In a clone, after npm run build'),
      ({ tag, date }) => record(tag, date),
    )
    .example('$0 languages', 'Tags, scripts, coverage and how far each is checked')
    .example(...examples.export)
    .example(...examples.import);
}

export const languagesCommand: CommandModule<object, { json: boolean }> = {
  command: 'languages',
  describe: 'List the languages and how far they are checked; export and import translations',
  builder: (yargs) => options(yargs) as unknown as Argv<{ json: boolean }>,
  handler: async ({ json }) => {
    const shelves = await Promise.all((await languageTags()).map(openShelf));
    const rows = shelves.map(rowOf);
    if (json) console.log(JSON.stringify(rows, null, 2));
    else for (const line of table(rows)) console.log(line);
    process.exitCode = status.allMade;
  },
};

type Row = ReturnType<typeof rowOf>;

function rowOf(shelf: Shelf) {
  const { tag, name, englishName, script, dir } = shelf.meta;
  const { have, need, state, outdated, forms } = standingOf(shelf);
  return { tag, name, englishName, script, dir, have, need, state, outdated, forms };
}

function table(rows: readonly Row[]): readonly string[] {
  const cells = [
    ['tag', 'script', 'direction', 'coverage', 'state', 'outdated', 'also', 'language'],
    ...rows.map(({ tag, script, dir, have, need, state, outdated, forms, name, englishName }) => [
      tag,
      script,
      dir,
      `${Math.floor((100 * have) / need)} %`,
      state,
      String(outdated),
      forms.join(' ') || '-',
      name === englishName ? name : `${englishName} · ${name}`,
    ]),
  ];
  const widths = (cells[0] ?? []).map((_, nth) =>
    Math.max(...cells.map((row) => (row[nth] ?? '').length)),
  );
  return cells.map((row) =>
    row
      .map((cell, nth) => cell.padEnd(widths[nth] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}
