// What a letter's bytes depend on besides its report: fingerprints of the program, the templates and a language leave.
import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sealOf } from '../mailing/index.js';
import { programVersion, readLanguageFiles, readTemplate } from './assets.js';
import { type Arrangement, ownTemplates, partialNames } from './kit.js';

type Arranged = Arrangement & { readonly easyRead: boolean };

/** Short enough to read, long enough to differ. */
const digits = 16;

/** Code and, bundled into it, every row of knowledge: read from the files that are running. */
export async function programPrint(): Promise<string> {
  // Bundled, this module lies in dist/; unbundled, beside its neighbours.
  const here = dirname(fileURLToPath(import.meta.url));
  const names = (await readdir(here, { recursive: true })).filter((name) =>
    /\.(?:c?js|ts)$/.test(name),
  );
  const hash = createHash('sha256');
  for (const name of names.sort()) hash.update(name).update(await readFile(join(here, name)));
  return `${await programVersion()}+${hash.digest('hex').slice(0, digits)}`;
}

/** The template that letters of this run are arranged by, the clinic's own if it has one, with the parts it may include. */
export async function templatePrint({ design, templates, easyRead }: Arranged): Promise<string> {
  const own =
    templates === undefined || templates === null
      ? new Map<string, string>()
      : await ownTemplates(templates);
  const whole = easyRead ? 'easy-read' : design === 'short' ? 'short' : 'letter';
  const texts = [whole, ...partialNames].map((name) => own.get(name) ?? readTemplate(name));
  return sealOf([whole, ...(await Promise.all(texts))]).slice(0, digits);
}

export async function languagePrint(tag: string): Promise<string> {
  return sealOf(await readLanguageFiles(tag)).slice(0, digits);
}
