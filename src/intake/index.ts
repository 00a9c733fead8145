// Any file arrives; written reports leave, each on its own. The door of the room.
import { faulty, type Problem } from '../problem.js';
import { readJson } from './json/index.js';
import { sniff } from './sniff.js';
import type { InputFile, Intake } from './written.js';

export { reportFileSchema } from './json/index.js';
export { largestFile } from './sniff.js';

/**
 * Reads a file of any known format; the format is told from the content, then from the name.
 * Every problem is a value, in its report or, for the whole file, as the only report.
 * @example (await readInput({ name: 'ada.json', bytes })).reports
 */
export async function readInput(file: InputFile): Promise<Intake> {
  const sniffed = sniff(file);
  if ('problem' in sniffed) return refused('text', sniffed.problem);
  const { format, text, notes } = sniffed;
  const intake = await readAs(format, file.name, text);
  return { ...intake, ignored: [...notes, ...intake.ignored] };
}

async function readAs(format: Intake['format'], name: string, text: string): Promise<Intake> {
  if (format === 'json') return readJson(name, text);
  throw new Error(`no reader for ${format}`);
}

function refused(format: Intake['format'], problem: Problem): Intake {
  return { format, reports: [faulty([problem])], ignored: [] };
}
