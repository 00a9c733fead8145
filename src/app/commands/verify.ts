// ironleaf verify: a folder of letters in; what in it is not as its records say out.
import type { Argv, CommandModule } from 'yargs';
import { type Finding, verifyFolder } from '../../mailing/index.js';
import { readRunFile } from '../run-file.js';
import { Stop, status } from '../status.js';

function options(yargs: Argv) {
  return yargs
    .positional('folder', { type: 'string', demandOption: true, describe: 'Folder of a run' })
    .example('$0 verify evening', 'Hash every letter and list again');
}
type Words = Awaited<ReturnType<typeof options>['argv']>;

const said: Readonly<Record<Finding['code'], string>> = {
  missing: 'is recorded but not there.',
  changed: 'is not as it was written.',
  'not-recorded': 'lies among the letters, but no record knows it. Do not mail it.',
  'half-written': 'was left half-written by a run that was stopped.',
  'strange-record': 'is no record of this program; somebody changed it.',
  'torn-record': 'manifest: a line cannot be read; a run was stopped while writing it.',
};

export const verifyCommand: CommandModule<object, Words> = {
  command: 'verify <folder>',
  describe: 'Hash every letter and list of a run again and compare with its records',
  builder: (yargs) => options(yargs) as Argv<Words>,
  handler: async ({ folder }) => {
    const { checked, findings } = await verifyFolder(folder);
    if (checked === 0 && (await readRunFile(folder)) === null)
      throw new Stop(status.noInput, ['This folder holds no run.']);
    for (const { code, file } of findings)
      console.log(file === null ? said[code] : `${file}: ${said[code]}`);
    console.error(`${checked} files checked, ${findings.length} not as recorded.`);
    if (findings.length > 0) {
      console.error('Running the same ironleaf mailing command again puts letters right.');
      process.exitCode = status.badData;
    }
  },
};
