// What lies beside the program: templates, locales, fonts, the example clinic. Read on demand, never from the network.
import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds templates/ and locales/: found upwards from this file, bundled or not. */
function findRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'templates')) || !existsSync(join(folder, 'locales'))) {
    const parent = dirname(folder);
    if (parent === folder) throw new Error('templates/ and locales/ are not beside the program');
    folder = parent;
  }
  return folder;
}

const root = findRoot();

export const exampleClinic = join(root, 'examples', 'clinic.json');
/** The folder of one language's files. */
export const languageFolder = (tag: string): string => join(root, 'locales', tag);
export const fontFolder = join(root, 'dist', 'fonts');

export function readTemplate(name: string): Promise<string> {
  return readFile(join(root, 'templates', `${name}.hbs`), 'utf8');
}

/** Tags of the languages that have a folder in locales/, sorted. */
export async function languageTags(): Promise<string[]> {
  const entries = await readdir(join(root, 'locales'), { withFileTypes: true });
  return entries
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}

/** Every JSON file of one language by namespace, such as { letter: {…}, foods: {…} }. */
export async function readLanguageFiles(tag: string): Promise<Record<string, unknown>> {
  const folder = join(root, 'locales', tag);
  const names = (await readdir(folder)).filter((name) => name.endsWith('.json')).sort();
  const entries = await Promise.all(
    names.map(async (name) => [
      name.replace(/\.json$/, ''),
      JSON.parse(await readFile(join(folder, name), 'utf8')) as unknown,
    ]),
  );
  return Object.fromEntries(entries) as Record<string, unknown>;
}

export async function programVersion(): Promise<string> {
  const facts = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')) as {
    version: string;
  };
  return facts.version;
}
