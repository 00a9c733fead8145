// ironleaf schema: the JSON Schema of a report file on stdout.
import type { CommandModule } from 'yargs';
import { reportFileSchema } from '../../intake/index.js';

export const schemaCommand: CommandModule = {
  command: 'schema',
  describe: 'Print the JSON Schema of a report file',
  builder: (yargs) =>
    yargs.example('$0 schema > report.schema.json', 'For an editor or a validator'),
  handler: () => {
    console.log(JSON.stringify(reportFileSchema(), null, 2));
  },
};
