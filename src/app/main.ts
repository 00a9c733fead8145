// Arguments in, an exit status out: the one place where a fault of ours is caught, without data.
import '../walk-schemas.js';
import yargs from 'yargs';
import { hideBin } from 'yargs/helpers';
import { programVersion } from './assets.js';
import { commandsFor } from './commands/index.js';
import { standardInput } from './input.js';
import { Stop, status } from './status.js';

async function run(words: readonly string[]): Promise<void> {
  const commands = [...(await commandsFor(words[0]))];
  await yargs(words)
    .scriptName('ironleaf')
    .usage(
      '$0 <command>\n\nTurns a patient’s iron blood results into a letter the patient can read.',
    )
    .locale('en')
    .command(commands)
    .example('$0 letter report.json --demo', 'A letter of an invented clinic, to look at')
    .demandCommand(1, 'Name a command.')
    .strict()
    .help()
    // Installed, yargs would look for a version in the wrong place.
    .version(await programVersion())
    // Help is laid out before every command, asked for or not: unwrapped it costs little.
    .wrap(words.includes('--help') ? Math.min(100, process.stdout.columns ?? 80) : null)
    // Without the throw, yargs would run the command on with bad arguments.
    .fail((message, fault) => {
      throw fault ?? new Stop(status.usage, [message, 'See ironleaf --help.']);
    })
    .exitProcess(false)
    .parseAsync();
}

run(hideBin(process.argv).map((word) => (word === '-' ? standardInput : word))).catch(sayFault);

function sayFault(fault: unknown): void {
  if (fault instanceof Stop) {
    for (const sentence of fault.sentences) console.error(sentence);
    process.exitCode = fault.status;
  } else {
    // The message of an unknown fault may hold a patient's data: only its kind is shown.
    const kind = fault instanceof Error ? fault.name : typeof fault;
    console.error(`ironleaf: a fault of the program (${kind}). Nothing more was written.`);
    if (process.env.IRONLEAF_DEBUG === '1') console.error(fault);
    process.exitCode = status.ourFault;
  }
}
