// ironleaf explain: the clinician's reasoning on stdout, as a sheet to read or as JSON.
import type { Argv, CommandModule } from 'yargs';
import { advise } from '../../advise/index.js';
import { composeReasoning, sayReasoning } from '../../letter/index.js';
import { type Analyte, analytes } from '../../terms.js';
import { explainJson } from '../explain-json.js';
import { openKit, sentences } from '../kit.js';
import { status } from '../status.js';
import { type Understood, understand } from '../understand.js';
import { inputOptions, inputOptionsOf } from './input-options.js';
import { dateOf, readReports } from './shared.js';

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
    .option('confirm', { choices: analytes, array: true, describe: 'This doubtful value stands' })
    .option('date', { type: 'string', describe: 'Date of reading, YYYY-MM-DD' })
    .example('$0 explain report.json', 'The reasoning, to read in twenty seconds');
}
type Words = Awaited<ReturnType<typeof options>['argv']>;

export const explainCommand: CommandModule<object, Words> = {
  command: 'explain <report>',
  describe: 'Show how the results were read, with the source of every number',
  builder: (yargs) => options(yargs) as Argv<Words>,
  handler: async (words) => {
    const date = dateOf(words.date);
    const reports = await readReports(words.report, await inputOptionsOf(words));
    const understood: Understood[] = [];
    for (const written of reports) {
      const read = written.ok
        ? understand(written.value, date, (words.confirm ?? []) as readonly Analyte[])
        : written;
      for (const line of sentences(read.ok ? read.notes : read.problems)) console.error(line);
      if (read.ok) understood.push(read.value);
    }
    if (understood.length > 0) await (words.json ? printJson : printSheets)(understood, date);
    if (understood.length < reports.length)
      process.exitCode = understood.length === 0 ? status.badData : status.someHeldOrRefused;
  },
};

async function printJson(all: readonly Understood[]): Promise<void> {
  const [first, ...others] = all.map(explainJson);
  console.log(JSON.stringify(others.length === 0 ? first : [first, ...others], null, 2));
}

async function printSheets(all: readonly Understood[], date: string): Promise<void> {
  const english = await (await openKit()).language('en');
  for (const { report, interpretation } of all) {
    const advice = advise(report, interpretation, noChoices, date);
    console.log(sayReasoning(composeReasoning(report, interpretation, advice, english)));
  }
}
