// ironleaf completion: nothing arrives; a script for a shell that completes commands and options leaves on stdout.
import type { CommandModule } from 'yargs';
import yargs from 'yargs';

export const completionCommand: CommandModule = {
  command: 'completion',
  describe: 'Print a script that completes commands and options in a shell',
  builder: (own) =>
    own.example('$0 completion >> ~/.bashrc', 'Completion with the Tab key from the next shell on'),
  handler: () => {
    yargs().scriptName('ironleaf').showCompletionScript();
  },
};
