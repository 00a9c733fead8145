// What letter and explain have in common: reading reports, the date, the clinic's details, the endings of names.
import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import { type InputOptions, largestFile, readInput } from '../../intake/index.js';
import type { WrittenReport } from '../../intake/written.js';
import type { Clinic } from '../../letter/index.js';
import type { Checked } from '../../problem.js';
import { readDate } from '../../report/index.js';
import { exampleClinic, languageTags } from '../assets.js';
import { readDetails } from '../config.js';
import { readInputFile } from '../input.js';
import { sentences } from '../kit.js';
import { Stop, status } from '../status.js';

/** Taken from the folder the program is started in when no other is named. */
export const ownConfig = 'ironleaf.config.json';
const largestConfig = 64 * 1024;

/** Every report of a file, each with its own problems; what was passed over is said on stderr. */
export async function readReports(
  path: string,
  options: InputOptions,
): Promise<readonly Checked<WrittenReport>[]> {
  const intake = await readInput(await readInputFile(path, largestFile), options);
  for (const sentence of sentences(intake.ignored)) console.error(sentence);
  return intake.reports;
}

/** The date wished for, or today's by this computer's clock. */
export function dateOf(wished: string | undefined): string {
  if (wished === undefined) {
    const now = new Date();
    const part = (number: number) => String(number).padStart(2, '0');
    return `${now.getFullYear()}-${part(now.getMonth() + 1)}-${part(now.getDate())}`;
  }
  const date = readDate(wished);
  if (date === null) throw new Stop(status.usage, ['--date: expected a date such as 2026-11-25.']);
  return date;
}

/** The clinic's details; without any, no letter may be made. */
export async function clinicOf(config: string | undefined, demo: boolean): Promise<Clinic> {
  const path = demo ? exampleClinic : (config ?? (existsSync(ownConfig) ? ownConfig : null));
  if (path === null)
    throw new Stop(status.usage, [
      'The clinic’s details are missing: name, address, phone, hours and emergency number go on every letter.',
      `Give them with --config FILE or as ${ownConfig} in this folder; --demo makes a stamped example.`,
    ]);
  const { name, bytes } = await readInputFile(path, largestConfig);
  const details = readDetails(name, bytes, await languageTags());
  if (!details.ok) throw new Stop(status.badData, sentences(details.problems));
  const { logo: file, ...clinic } = details.value;
  if (file === null) return { ...clinic, demo };
  const { readLogoFile } = await import('../logo/read-logo-file.js');
  const logo = await readLogoFile(dirname(path), file);
  if (!logo.ok) throw new Stop(status.badData, sentences(logo.problems));
  return { ...clinic, demo, logo: logo.value };
}
