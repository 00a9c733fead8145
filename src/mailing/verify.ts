// A folder of letters arrives; everything in it that is not as the manifest says leaves.
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { hashFile } from './hash-file.js';
import { letterFolder } from './letter-folder.js';
import { readLedger } from './manifest.js';

export type Finding = {
  readonly code:
    | 'missing'
    | 'changed'
    | 'not-recorded'
    | 'half-written'
    | 'torn-record'
    | 'strange-record';
  /** A file of the folder, or a row of its manifest; null for a line that was torn off. */
  readonly file: string | null;
};

type Verified = { readonly checked: number; readonly findings: readonly Finding[] };

/**
 * Hashes every recorded file again, and looks for files in the folder to be mailed that no record knows: a letter
 * of a held or refused report would be one.
 * @example (await verifyFolder('evening')).findings // []
 */
export async function verifyFolder(folder: string): Promise<Verified> {
  const { last, torn, strange } = await readLedger(folder);
  const recorded = [...last.values()].flatMap(({ files }) => files);
  const findings: Finding[] = [];
  for (const { name, sha256: expected } of recorded) {
    const found = await hashFile(join(folder, name));
    if (found === null) findings.push({ code: 'missing', file: name });
    else if (found.sha256 !== expected) findings.push({ code: 'changed', file: name });
  }
  const known = new Set(recorded.map(({ name }) => name));
  const inLetters = await readdir(join(folder, letterFolder)).catch(() => []);
  for (const name of inLetters.map((each) => `${letterFolder}/${each}`).sort()) {
    if (known.has(name)) continue;
    findings.push({ code: name.endsWith('.part') ? 'half-written' : 'not-recorded', file: name });
  }
  const beside = await readdir(folder).catch(() => []);
  for (const name of beside.filter((each) => each.endsWith('.part')).sort())
    findings.push({ code: 'half-written', file: name });
  for (let line = 0; line < torn; line += 1) findings.push({ code: 'torn-record', file: null });
  for (const { file, row } of strange)
    findings.push({ code: 'strange-record', file: `${file}, row ${row}` });
  return { checked: recorded.length, findings };
}
