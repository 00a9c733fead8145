// ironleaf columns: a laboratory's table in, a column map to look over out, as JSON on stdout.
import type { Argv, CommandModule } from 'yargs';
import { largestFile, proposeColumns } from '../../intake/index.js';
import { readInputFile } from '../input.js';
import { sentences } from '../kit.js';
import { Stop, status } from '../status.js';

function options(yargs: Argv) {
  return yargs
    .positional('file', { type: 'string', demandOption: true, describe: 'A CSV, TSV or XLSX file' })
    .example('$0 columns lab.csv > map.json', 'Then: ironleaf check lab.csv --columns map.json');
}
type Words = Awaited<ReturnType<typeof options>['argv']>;

export const columnsCommand: CommandModule<object, Words> = {
  command: 'columns <file>',
  describe: 'Propose what the columns of a table mean, for a person to confirm',
  builder: (yargs) => options(yargs) as Argv<Words>,
  handler: async ({ file }) => {
    const proposed = await proposeColumns(await readInputFile(file, largestFile));
    if (!proposed.ok) throw new Stop(status.badData, sentences(proposed.problems));
    for (const sentence of sentences(proposed.notes)) console.error(sentence);
    console.error('This is a proposal: look at every line before you use it.');
    console.log(JSON.stringify(proposed.value, null, 2));
  },
};
