// The choices of a run arrive and are kept beside its letters, so that a release or a review goes on with the same.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { writeWhole } from '../mailing/index.js';
import { scriptStyles } from '../render/script-style.js';
import { analogies } from '../terms.js';
import { pageFormats } from './formats.js';
import { designs } from './kit.js';
import { Stop, status } from './status.js';

const runFile = z.strictObject({
  /** Paths as seen from the root of the file system; the file itself is never copied. */
  input: z.string(),
  config: z.string().nullable(),
  demo: z.boolean(),
  columns: z.string().nullable(),
  languageColumn: z.string().nullable(),
  /** File with the passwords of the letters; they themselves are written down nowhere. */
  passwords: z.string().nullable(),
  language: z.string(),
  beside: z.string().nullable(),
  formats: z.array(z.enum(pageFormats)).min(1),
  paper: z.enum(['A4', 'Letter']),
  largePrint: z.boolean(),
  compact: z.boolean().default(false),
  analogy: z.enum([...analogies, 'off']),
  easyRead: z.boolean(),
  signedOnly: z.boolean().default(false),
  scriptStyle: z.enum(scriptStyles).nullable().default(null),
  food: z.boolean(),
  design: z.enum(designs).default('full'),
  templates: z.string().nullable().default(null),
  date: z.iso.date(),
});
export type RunChoices = Readonly<z.infer<typeof runFile>>;

const name = 'run.json';

/** Null in a new folder. Stops when the file is not one of ours. */
export async function readRunFile(folder: string): Promise<RunChoices | null> {
  const text = await readFile(join(folder, name), 'utf8').catch(() => null);
  if (text === null) return null;
  try {
    return runFile.parse(JSON.parse(text));
  } catch {
    throw new Stop(status.badData, [
      `${name}: cannot read the choices of an earlier run.`,
      '  Delete the file and run ironleaf mailing again with all options.',
    ]);
  }
}

export function writeRunFile(folder: string, choices: RunChoices): Promise<void> {
  return writeWhole(join(folder, name), `${JSON.stringify(choices, null, 2)}\n`);
}
