// ironleaf explain: the clinician's reasoning, as a sheet to read on stdout, to print, or as JSON.
import type { Argv, CommandModule } from 'yargs';
import { advise } from '../../advise/index.js';
import { composeReasoning, sayReasoning } from '../../letter/index.js';
import { type Analyte, analytes } from '../../terms.js';
import { explainJson } from '../explain-json.js';
import { pageFormats } from '../formats.js';
import { openKit, sentences } from '../kit.js';
import { writeAll } from '../output.js';
import { startFast } from '../start-fast.js';
import { status } from '../status.js';
import { type Understood, understand } from '../understand.js';
import { inputOptions, inputOptionsOf } from './input-options.js';
import { formatsOf } from './letter-options.js';
import { dateOf, readReports } from './shared.js';
import { sheetFiles } from './sheet-files.js';
import { stemOf } from './stem.js';

const noChoices = { steps: null, tabletsPrescribed: null, noFood: false };

function options(yargs: Argv) {
  return inputOptions(
    yargs.positional('report', {
      type: 'string',
      demandOption: true,
      describe: 'File with the results, or - for standard input',
    }),
  )
    .option('json', { type: 'boolean', default: false, describe: 'Print JSON' })
    .option('format', { type: 'string', default: 'text', describe: pageFormats.join(', ') })
    .option('out', { type: 'string', default: '.', describe: 'Folder for HTML and PDF' })
    .option('paper', { choices: ['A4', 'Letter'] as const, default: 'A4' as const })
    .option('confirm', { choices: analytes, array: true, describe: 'This doubtful value stands' })
    .option('date', { type: 'string', describe: 'Date of reading, YYYY-MM-DD' })
    .example('$0 explain report.json', 'The reasoning, to read in twenty seconds')
    .example('$0 explain report.json --format pdf --out sheets', 'The same, to print');
}
type Words = Awaited<ReturnType<typeof options>['argv']>;

export const explainCommand: CommandModule<object, Words> = {
  command: 'explain <report>',
  describe: 'Show how the results were read, with the source of every number',
  builder: (yargs) => options(yargs) as Argv<Words>,
  handler: async (words) => {
    startFast();
    const date = dateOf(words.date);
    const reports = await readReports(words.report, await inputOptionsOf(words));
    const understood: Named[] = [];
    for (const [index, written] of reports.entries()) {
      const read = written.ok
        ? understand(written.value, date, (words.confirm ?? []) as readonly Analyte[])
        : written;
      for (const line of sentences(read.ok ? read.notes : read.problems)) console.error(line);
      const stem = stemOf(words.report, written, index, reports.length);
      if (read.ok) understood.push({ ...read.value, stem });
    }
    if (words.json) await printJson(understood);
    else await makeSheets(understood, words, date);
    if (understood.length < reports.length)
      process.exitCode = understood.length === 0 ? status.badData : status.someHeldOrRefused;
  },
};

type Named = Understood & { readonly stem: string };

async function printJson(all: readonly Named[]): Promise<void> {
  const [first, ...others] = all.map(explainJson);
  if (first === undefined) return;
  console.log(JSON.stringify(others.length === 0 ? first : [first, ...others], null, 2));
}

/** Text goes to stdout; of what is printed on paper the paths do. */
async function makeSheets(all: readonly Named[], words: Words, date: string): Promise<void> {
  const { format, out, paper } = words;
  const print = { formats: formatsOf(format, pageFormats), date, paper, size: 'dense' as const };
  const kit = await openKit();
  const english = await kit.language('en');
  for (const { report, interpretation, stem } of all) {
    const advice = advise(report, interpretation, noChoices, date);
    const sheet = composeReasoning(report, interpretation, advice, english);
    if (print.formats.includes('text')) console.log(sayReasoning(sheet));
    const files = await sheetFiles(sheet, `${stem}.reasoning`, print, kit);
    if (files.length > 0) for (const path of await writeAll(out, files)) console.log(path);
  }
}
