// ironleaf check: a file of results in; what would be understood of it, line by line, on stdout. No letter is made.
import type { Argv, CommandModule } from 'yargs';
import { largestFile, readInput } from '../../intake/index.js';
import { type Place, visible } from '../../problem.js';
import { type Analyte, analytes } from '../../terms.js';
import { readInputFile } from '../input.js';
import { type CheckedFile, sayUnderstanding, standings } from '../say-understanding.js';
import { type Status, status } from '../status.js';
import { inputOptions, inputOptionsOf } from './input-options.js';
import { dateOf } from './shared.js';

function options(yargs: Argv) {
  return inputOptions(
    yargs.positional('file', {
      type: 'string',
      demandOption: true,
      describe: 'File with results, or - for standard input',
    }),
  )
    .option('confirm', { choices: analytes, array: true, describe: 'This doubtful value stands' })
    .option('json', { type: 'boolean', default: false, describe: 'Print JSON' })
    .option('date', { type: 'string', describe: 'Date of reading, YYYY-MM-DD' })
    .example('$0 check - --sex female', 'Reads pasted text from standard input');
}
type Words = Awaited<ReturnType<typeof options>['argv']>;

export const checkCommand: CommandModule<object, Words> = {
  command: 'check <file>',
  describe: 'Show line by line what would be understood of a file, without making a letter',
  builder: (yargs) => options(yargs) as Argv<Words>,
  handler: async (words) => {
    const input = await inputOptionsOf(words);
    const intake = await readInput(await readInputFile(words.file, largestFile), input);
    const confirmed = (words.confirm ?? []) as readonly Analyte[];
    const checked = sayUnderstanding(intake, dateOf(words.date), confirmed);
    console.log(words.json ? JSON.stringify(checked, null, 2) : sheetOf(checked).join('\n'));
    process.exitCode = statusOf(checked);
  },
};

const formatNames: Readonly<Record<CheckedFile['format'], string>> = {
  json: 'a report file (JSON)',
  csv: 'a table (CSV)',
  fhir: 'FHIR R4',
  hl7v2: 'HL7 v2',
  xlsx: 'a spreadsheet (XLSX)',
  text: 'pasted text',
};

function sheetOf({ format, people, lines }: CheckedFile): readonly string[] {
  const places = lines.map(({ place }) => placeOf(place));
  const width = Math.max(0, ...places.map((place) => place.length));
  const counts = standings.map(
    (standing) => `${lines.filter((line) => line.standing === standing).length} ${standing}`,
  );
  return [
    `Read as ${formatNames[format]}: ${counts.join(', ')}.`,
    ...people.map((person) => `Person: ${person}.`),
    ...lines.map(({ standing, words }, i) =>
      [(places[i] ?? '').padEnd(width), standing.padEnd(widest), words].join('  ').trimEnd(),
    ),
  ];
}

const widest = Math.max(...standings.map((standing) => standing.length));

/** A line where the file has lines; else the path or column. */
function placeOf({ row, field }: Place): string {
  if (row !== null) return `line ${row}`;
  return field === null ? 'file' : visible(field);
}

/** 0: everything read could become a letter; 1: part of it, or with a question first; 65: nothing. */
function statusOf({ lines, usable }: CheckedFile): Status {
  if (usable === 0) return status.badData;
  const open = lines.some(({ standing }) => standing === 'doubtful' || standing === 'wrong');
  return open ? status.someHeldOrRefused : status.allMade;
}
