// ironleaf templates check DIR: a clinic's own templates in, what is wrong with them on stderr, the names of sound ones on stdout.
import type { CommandModule } from 'yargs';
import { sayProblem } from '../../problem.js';
import { status } from '../status.js';
import { readOwnTemplates } from '../templates/own-templates.js';

const example: [string, string] = [
  '$0 templates check our-templates',
  'What is wrong with them, by row and column',
];
type Words = { readonly folder: string };

const checkCommand: CommandModule<object, Words> = {
  command: 'check <folder>',
  describe: 'Check a folder of own templates: variables, helpers, tags, classes, size',
  builder: (yargs) =>
    yargs
      .positional('folder', {
        type: 'string',
        demandOption: true,
        describe: 'Folder with .hbs files',
      })
      .example(...example),
  handler: async ({ folder }) => {
    const read = await readOwnTemplates(folder);
    if (read.ok) {
      for (const name of read.value.keys()) console.log(`${name}.hbs: sound`);
      return;
    }
    for (const problem of read.problems) console.error(sayProblem(problem));
    process.exitCode = status.badData;
  },
};

export const templatesCommand: CommandModule<object, object> = {
  command: 'templates',
  describe: 'Templates of a clinic’s own',
  builder: (yargs) =>
    yargs
      .command(checkCommand)
      .demandCommand(1, 'Name a command, such as check.')
      .example(...example),
  handler: () => {},
};
