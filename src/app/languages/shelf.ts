// The tag of a language arrives; what stands in its folder leaves: catalogue files, glossary and record; and goes back.
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import {
  type Act,
  expectedMessages,
  isOutdated,
  entryOf,
  metaFile,
  type Namespace,
  noRecord,
  patientNamespaces,
  type Placed,
  placedTexts,
  readRecord,
  type ReviewStep,
  stateOf,
  translatedNamespaces,
  type TranslationRecord,
  weakest,
} from '../../letter/index.js';
import { sayProblem } from '../../problem.js';
import { languageFolder, languageTags, readLanguageFiles } from '../assets.js';
import { Stop, status } from '../status.js';

const glossaryFile = z.array(
  z.strictObject({
    concept: z.string().min(1),
    source: z.string().min(1),
    target: z.string().min(1),
    avoid: z.array(z.string().min(1)),
    note: z.string(),
  }),
);
export type GlossaryTerm = Readonly<z.infer<typeof glossaryFile>[number]>;

export type Shelf = {
  readonly meta: Readonly<z.infer<typeof metaFile>>;
  readonly locale: string;
  readonly files: Readonly<Record<string, unknown>>;
  readonly glossary: readonly GlossaryTerm[];
  readonly record: TranslationRecord;
  /** Every text the folder holds for patients. */
  readonly texts: readonly Placed[];
};

/** Reads a folder that may still be unfinished. Stops when a file of it cannot be read. */
export async function openShelf(tag: string): Promise<Shelf> {
  const tags = await languageTags();
  if (!tags.includes(tag))
    throw new Stop(status.usage, [
      `there is no language "${tag.slice(0, 20)}"; there are: ${tags.join(', ')}.`,
      '  A new language begins with its own folder and meta.json.',
    ]);
  const files = await readLanguageFiles(tag).catch(() => {
    throw new Stop(status.badData, [`locales/${tag}: a file is not JSON.`]);
  });
  return shelfOf(tag, files);
}

/** The same from files already read. */
export function shelfOf(tag: string, files: Readonly<Record<string, unknown>>): Shelf {
  const meta = metaFile.safeParse(files.meta);
  if (!meta.success) throw unread(tag, 'meta');
  const glossary = glossaryFile.safeParse(files.glossary ?? []);
  if (!glossary.success) throw unread(tag, 'glossary');
  for (const namespace of translatedNamespaces) {
    const messages = z.record(z.string(), z.string()).safeParse(files[namespace] ?? {});
    if (!messages.success) throw unread(tag, namespace);
  }
  const record = readRecord(tag, files.record ?? { acts: [] });
  if (!record.ok) throw new Stop(status.badData, record.problems.map(sayProblem));
  return {
    meta: meta.data,
    locale: meta.data.intl ?? tag,
    files,
    glossary: glossary.data,
    record: isSource(meta.data) ? noRecord : record.value,
    texts: placedTexts(files, translatedNamespaces),
  };
}

const unread = (tag: string, file: string): Stop =>
  new Stop(status.badData, [`locales/${tag}/${file}.json: cannot read the file.`]);

export const isSource = ({ reviewState }: Shelf['meta']): boolean => reviewState === 'source';

export type Standing = {
  /** Messages there are, and messages the language needs for letters. */
  readonly have: number;
  readonly need: number;
  readonly state: ReviewStep | 'source';
  /** Messages whose English text, or own text, changed after somebody answered for them. */
  readonly outdated: number;
  /** Forms of the letter that the language can say beside the usual one. */
  readonly forms: readonly Namespace[];
};

/** How far a language is: coverage of what every letter needs, and the state of its weakest message. */
export function standingOf({ meta, locale, files, record, texts }: Shelf): Standing {
  const needed = patientNamespaces.flatMap((namespace) =>
    [...expectedMessages(namespace, locale).keys()].map((key) => ({ namespace, key })),
  );
  const has = ({ namespace, key }: { namespace: Namespace; key: string }) =>
    ((files[namespace] ?? {}) as Record<string, string>)[key] !== undefined;
  const entries = texts.map((placed) => ({
    placed,
    entry: entryOf(record, placed.namespace, placed.key),
  }));
  return {
    have: needed.filter(has).length,
    need: needed.length,
    state: isSource(meta) ? 'source' : weakest(texts.map((placed) => stateOf(record, placed))),
    outdated: isSource(meta)
      ? 0
      : entries.filter(({ placed, entry }) => entry !== null && isOutdated(entry, placed)).length,
    forms: translatedNamespaces.filter(
      (namespace) => namespace in files && !patientNamespaces.some((one) => one === namespace),
    ),
  };
}

/** Writes one file of the folder as the others are written: two spaces, a line for each message. */
export async function putFile(tag: string, name: string, content: unknown): Promise<string> {
  const path = join(languageFolder(tag), `${name}.json`);
  await writeFile(path, `${JSON.stringify(content, null, 2)}\n`).catch(() => {
    throw new Stop(status.cannotWrite, [`cannot write locales/${tag}/${name}.json.`]);
  });
  return path;
}

/** Writes the record, and the state of the weakest message into meta.json, so that neither contradicts the other. */
export async function putRecord(tag: string, acts: readonly Act[]): Promise<string> {
  const path = await putFile(tag, 'record', { acts });
  const shelf = await openShelf(tag);
  const { state } = standingOf(shelf);
  if (state !== shelf.meta.reviewState)
    await putFile(tag, 'meta', { ...shelf.meta, reviewState: state });
  return path;
}
