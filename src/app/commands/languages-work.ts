// What the subcommands of ironleaf languages do: files of a language in, files for translators and reviewers out, and back.
import { type Language, type Namespace, recordDrafts, withoutSource } from '../../letter/index.js';
import { largestFile } from '../../intake/index.js';
import { readInputFile } from '../input.js';
import { openKit, sentences } from '../kit.js';
import { keepTranslation } from '../languages/keep-translation.js';
import { writeBackKey, writeBackSheet, writeProof } from '../languages/proof.js';
import { readXliff } from '../languages/read-xliff.js';
import { isSource, openShelf, putFile, putRecord, type Shelf } from '../languages/shelf.js';
import { type Taken, takeIn } from '../languages/take-in.js';
import { unitsOf } from '../languages/units.js';
import { writeXliff } from '../languages/write-xliff.js';
import { writeAll } from '../output.js';
import { Stop, status } from '../status.js';
import { named } from './letter-options.js';
import { dateOf } from './shared.js';

/** A folder gets TAG.xlf; a name that ends in .xlf is the file itself. */
export async function exportLanguage(tag: string, out: string): Promise<void> {
  const shelf = translationOf(await openShelf(tag));
  const own = /^(?:(.*)[/\\])?([^/\\]+\.xlf)$/.exec(out);
  const [folder, name] = own === null ? [out, `${tag}.xlf`] : [own[1] ?? '.', own[2] ?? ''];
  await write(folder, [{ name, content: writeXliff(tag, unitsOf(shelf)) }]);
}

export type ImportWords = {
  readonly file: string;
  readonly by: string;
  readonly credential: string;
  readonly as: Taken['state'];
  readonly date?: string | undefined;
};

/** Writes what can be taken in, and says of everything else why not. Status 1 when something was refused. */
export async function importLanguage({ file, by, credential, as, date }: ImportWords) {
  const who = named(by, '--by') ?? '';
  const qualified = named(credential, '--credential') ?? '';
  const day = dateOf(date);
  const { name, bytes } = await readInputFile(file, largestFile);
  const read = readXliff(name, new TextDecoder().decode(bytes));
  if (!read.ok) throw new Stop(status.badData, sentences(read.problems));
  const { tag, segments } = read.value;
  const shelf = translationOf(await openShelf(tag));
  const { taken, untouched, refused } = takeIn(name, segments, unitsOf(shelf), as);
  if (taken.length > 0) {
    const kept = keepTranslation(shelf, taken, { who, credential: qualified, date: day });
    for (const [namespace, messages] of Object.entries(kept.files) as [Namespace, object][])
      console.log(await putFile(tag, namespace, messages));
    console.log(await putRecord(tag, kept.acts));
  }
  for (const sentence of sentences(refused)) console.error(sentence);
  console.error(
    `${tag}: ${taken.length} messages taken in, ${untouched} untouched, ${refused.length} refused.`,
  );
  process.exitCode = refused.length > 0 ? status.someHeldOrRefused : status.allMade;
}

export async function printProof(tag: string, out: string): Promise<void> {
  const { shelf, language, english } = await bothOf(tag);
  const content = writeProof(language, english, unitsOf(shelf));
  await write(out, [{ name: `${tag}.proof.html`, content }]);
}

/** Two files: the sheet shows no English; the key to it is for whoever compares. */
export async function printBack(tag: string, out: string): Promise<void> {
  const { shelf, language, english } = await bothOf(tag);
  const units = unitsOf(shelf);
  await write(out, [
    { name: `${tag}.back-translation.html`, content: writeBackSheet(language, units) },
    { name: `${tag}.back-translation-key.html`, content: writeBackKey(english, units) },
  ]);
}

export async function record(tag: string, date: string | undefined): Promise<void> {
  const shelf = translationOf(await openShelf(tag));
  const strange = withoutSource(shelf.texts);
  // English is part of the build while the other languages are read from their folders.
  if (strange.length > 0)
    throw new Stop(status.badData, [
      ...strange.map(
        ({ namespace, key }) =>
          `locales/${tag}/${namespace}.json, ${key}: cannot find its English.`,
      ),
      '  After a change in locales/en build first: npm run build',
    ]);
  console.log(await putRecord(tag, recordDrafts(shelf.record, shelf.texts, dateOf(date))));
}

async function bothOf(tag: string) {
  const shelf = translationOf(await openShelf(tag));
  const kit = await openKit();
  const [language, english]: readonly Language[] = await Promise.all([
    kit.language(tag),
    kit.language('en'),
  ]);
  if (language === undefined || english === undefined) throw new Error('a language went missing');
  return { shelf, language, english };
}

function translationOf(shelf: Shelf): Shelf {
  if (isSource(shelf.meta))
    throw new Stop(status.usage, ['English is the source: it is not a translation.']);
  return shelf;
}

async function write(folder: string, files: Parameters<typeof writeAll>[1]): Promise<void> {
  for (const path of await writeAll(folder, files)) console.log(path);
}
