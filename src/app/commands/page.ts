// ironleaf page: the whole program as one page, served on this computer alone or written into a folder.
import { spawn } from 'node:child_process';
import type { Argv, CommandModule } from 'yargs';
import { languageTags } from '../assets.js';
import { readClinic } from '../config.js';
import { readInputFile } from '../input.js';
import { sentences } from '../kit.js';
import { writeAll } from '../output.js';
import { assemblePage } from '../page/assemble.js';
import { servePage } from '../page/serve.js';
import { Stop, status } from '../status.js';

const largestConfig = 64 * 1024;

function options(yargs: Argv) {
  return yargs
    .option('build', {
      type: 'string',
      describe: 'Write the page into this folder, to open from disk',
    })
    .option('languages', {
      type: 'string',
      default: 'en,es,ar,hi',
      describe: 'Languages of the copy, or all',
    })
    .option('config', {
      type: 'string',
      describe: 'File with the clinic’s details, kept in the page',
    })
    .option('port', {
      type: 'number',
      default: 0,
      describe: 'Port to serve on; 0 takes a free one',
    })
    .option('open', {
      type: 'boolean',
      default: true,
      describe: '--no-open only prints the address',
    })
    .example('$0 page', 'Serves the page on this computer and opens it')
    .example('$0 page --build stick --languages en,ar', 'One file that works with no network');
}
type Words = Awaited<ReturnType<typeof options>['argv']>;

export const pageCommand: CommandModule<object, Words> = {
  command: 'page',
  describe:
    'Open the page: paste results, check them, print the letter; nothing leaves the computer',
  builder: (yargs) => options(yargs) as Argv<Words>,
  handler: async (words) => {
    const page = await assemblePage(await tagsOf(words.languages), await clinicOf(words.config));
    if (words.build !== undefined) {
      const paths = await writeAll(words.build, [{ name: 'ironleaf.html', content: page.html }]);
      for (const path of paths) console.log(path);
      console.error(
        `${(page.html.length / 1_000_000).toFixed(1)} MB; opens in any browser from where it lies.`,
      );
      return;
    }
    const { url } = await servePage(page, words.port).catch((fault: NodeJS.ErrnoException) => {
      throw new Stop(status.cannotWrite, [
        `--port: cannot listen (${fault.code ?? 'unknown reason'}).`,
      ]);
    });
    console.log(url);
    console.error('Only this computer can reach it. Stop with Ctrl+C.');
    if (words.open) openBrowser(url);
  },
};

async function tagsOf(written: string): Promise<readonly string[]> {
  const known = await languageTags();
  if (written === 'all') return known;
  const tags = written.split(',').map((tag) => tag.trim());
  const unknown = tags.filter((tag) => !known.includes(tag));
  if (unknown.length > 0)
    throw new Stop(status.usage, [`--languages: expected some of ${known.join(',')}, or all.`]);
  return tags;
}

async function clinicOf(path: string | undefined): Promise<unknown> {
  if (path === undefined) return null;
  const { name, bytes } = await readInputFile(path, largestConfig);
  const clinic = readClinic(name, bytes, false, await languageTags());
  if (!clinic.ok) throw new Stop(status.badData, sentences(clinic.problems));
  const { demo: _, ...details } = clinic.value;
  return details;
}

const openers: Readonly<Record<string, readonly [command: string, ...words: string[]]>> = {
  darwin: ['open'],
  win32: ['cmd', '/c', 'start', ''],
};

/** A convenience: where there is no browser to open, the printed address is enough. */
function openBrowser(url: string): void {
  const [command, ...words] = openers[process.platform] ?? (['xdg-open'] as const);
  const child = spawn(command, [...words, url], { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
}
