// Any file arrives; written reports leave, each on its own. The door of the room.
import type { Checked } from '../problem.js';
import type { LargeFile } from './large-file.js';
import type { InputOptions } from './read-input.js';
import type { ReportSource } from './report-source.js';
import type { ColumnMap } from './table/column-map.js';
import type { InputFile } from './written.js';

export { readAge } from './age-as-written.js';
export { reportFileSchema } from './json/index.js';
export type { LargeFile } from './large-file.js';
export { type InputOptions, readInput } from './read-input.js';
export type { ReportRead, ReportSource } from './report-source.js';
export { largestFile } from './sniff.js';
export { readColumnMap } from './table/column-map.js';

/**
 * Opens a file whose reports are read one at a time, so that its length costs hardly any memory: tables, messages,
 * one JSON object a line and lists in JSON. Spreadsheets, pasted text and one object alone are read as a whole.
 * The same reports as `readInput` gives, except that a broken object of a list spoils only itself.
 * @example (await openReports(file, {})).read(0).report
 */
export async function openReports(
  file: LargeFile,
  options: Pick<InputOptions, 'columns'> = {},
): Promise<ReportSource> {
  const { openLarge } = await import('./open-large.js');
  return openLarge(file, options);
}

/**
 * Proposes what the columns of a table file mean (CSV or a spreadsheet); the notes say what could not be told.
 * Problems: a file that is no text and no spreadsheet, or whose rows cannot be cut.
 * @example await proposeColumns(file) // { ok: true, value: { columns: { 'Pat-Nr': 'id' }, … }, … }
 */
export async function proposeColumns(file: InputFile): Promise<Checked<ColumnMap>> {
  const { propose } = await import('./propose-columns.js');
  return propose(file);
}
