// ironleaf letter: one file of reports in, letters out, their paths on stdout.
import type { Argv, CommandModule } from 'yargs';
import type { WrittenReport } from '../../intake/written.js';
import { type Clinic, sayReasoning } from '../../letter/index.js';
import type { Checked } from '../../problem.js';
import { type Analyte, analytes } from '../../terms.js';
import { formats } from '../formats.js';
import { type Kit, openKit, sentences, sizeOf } from '../kit.js';
import { makeLetter, type Wishes } from '../make-letter.js';
import { type OutputFile, writeAll } from '../output.js';
import { startFast } from '../start-fast.js';
import { status } from '../status.js';
import { understand } from '../understand.js';
import { inputOptions, inputOptionsOf } from './input-options.js';
import { extraOptions, makeExtras } from './letter-extras.js';
import { formatsOf, letterOptions, named, scriptStyleOf } from './letter-options.js';
import { stepsOf } from './next-steps.js';
import { clinicOf, dateOf, readReports } from './shared.js';
import { sheetFiles } from './sheet-files.js';
import { stemOf } from './stem.js';

const describe = 'Make the letter of a report, or a call sheet when it must be a phone call first';

function options(yargs: Argv) {
  const positional = yargs.positional('report', {
    type: 'string',
    demandOption: true,
    describe: 'File with the results, or - for standard input',
  });
  return extraOptions(inputOptions(letterOptions(positional)))
    .option('format', { type: 'string', default: 'html,pdf', describe: formats.join(', ') })
    .option('out', { type: 'string', default: '.', describe: 'Folder for the files' })
    .option('checked-by', { type: 'string', describe: 'Clinician who read the letter' })
    .option('done', { type: 'string', describe: 'What was done about a held result' })
    .option('next-step', { type: 'string', array: true, describe: 'STEP or STEP=YYYY-MM-DD' })
    .option('words', {
      type: 'string',
      array: true,
      nargs: 1,
      describe: 'Own words for a step, printed in a box as typed: STEP=WORDS',
    })
    .option('tablets', { type: 'string', describe: 'Tablets were prescribed: the dose, in words' })
    .option('confirm', { choices: analytes, array: true, describe: 'This doubtful value stands' })
    .example('$0 letter report.json --language en --out letters', 'HTML and PDF into letters/');
}
type Words = Awaited<ReturnType<typeof options>['argv']>;

export const letterCommand: CommandModule<object, Words> = {
  command: 'letter <report>',
  describe,
  builder: (yargs) => options(yargs) as Argv<Words>,
  handler: async (words) => {
    startFast();
    const wishes = wishesOf(words);
    const clinic = await clinicOf(words.config, words.demo);
    const kit = await openKit(words);
    const reports = await readReports(words.report, await inputOptionsOf(words));
    const ends: End[] = [];
    for (const [index, written] of reports.entries()) {
      const stem = stemOf(words.report, written, index, reports.length);
      ends.push(await makeOne(written, stem, { words, wishes, clinic, kit }));
    }
    process.exitCode = statusOf(ends);
  },
};

type End = 'made' | 'held' | 'refused' | 'bad-data';
type Desk = {
  readonly words: Words;
  readonly wishes: Wishes;
  readonly clinic: Clinic;
  readonly kit: Kit;
};

async function makeOne(written: Checked<WrittenReport>, stem: string, desk: Desk): Promise<End> {
  const { words, wishes, clinic, kit } = desk;
  const understood = written.ok
    ? understand(written.value, wishes.date, (words.confirm ?? []) as readonly Analyte[])
    : written;
  if (!understood.ok) return say(sentences(understood.problems), 'bad-data');
  say(sentences(understood.notes), 'made');
  const outcome = await makeLetter(understood.value, clinic, wishes, kit);
  if (outcome.kind === 'refused') return say(sentences(outcome.problems), 'refused');
  if (outcome.kind === 'held') {
    const sheet = sayReasoning(outcome.callSheet);
    await write(words.out, [
      { name: `${stem}.call-sheet.txt`, content: sheet },
      ...(await sheetFiles(
        outcome.callSheet,
        `${stem}.call-sheet`,
        { ...wishes, paper: words.paper, size: 'compact' },
        kit,
      )),
    ]);
    return say([sheet.trimEnd()], 'held');
  }
  const tags = [wishes.language, wishes.beside].filter((tag) => tag !== null).join('-beside-');
  const extras = await makeExtras(understood.value, stem, words, desk);
  await write(words.out, [
    ...outcome.files.map(({ ending, content }) => ({ name: `${stem}.${tags}.${ending}`, content })),
    ...extras.files,
  ]);
  return say(extras.said, extras.refused ? 'refused' : 'made');
}

async function write(folder: string, files: readonly OutputFile[]): Promise<void> {
  for (const path of await writeAll(folder, files)) console.log(path);
}

function say(lines: readonly string[], end: End): End {
  for (const line of lines) console.error(line);
  return end;
}

function statusOf(ends: readonly End[]): number {
  if (ends.every((end) => end === 'made')) return status.allMade;
  return ends.every((end) => end === 'bad-data') ? status.badData : status.someHeldOrRefused;
}

function wishesOf(words: Words): Wishes {
  return {
    language: words.language,
    beside: words.beside ?? null,
    formats: formatsOf(words.format, formats),
    form: { paper: words.paper, size: sizeOf(words) },
    analogy: words.analogy,
    easyRead: words.easyRead,
    signedOnly: words.signedOnly,
    ...scriptStyleOf(words.scriptStyle, [words.language, words.beside]),
    checkedBy: named(words.checkedBy, '--checked-by'),
    done: named(words.done, '--done'),
    choices: {
      steps: stepsOf(words.nextStep, words.words),
      tabletsPrescribed: words.tablets === undefined ? null : { dose: words.tablets || null },
      noFood: !words.food,
    },
    date: dateOf(words.date),
  };
}
