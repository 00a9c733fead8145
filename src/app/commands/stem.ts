// The path of an input and one of its reports arrive; the beginning of the names of what is made from it leaves.
import { basename, extname } from 'node:path';
import type { WrittenReport } from '../../intake/written.js';
import type { Checked } from '../../problem.js';
import { slug } from '../output.js';

/**
 * Named after the input file; with several reports also after the id. Never after a person.
 * @example stemOf('in/heavy-periods.json', written, 0, 1) // 'heavy-periods'
 */
export function stemOf(
  path: string,
  written: Checked<WrittenReport>,
  index: number,
  count: number,
): string {
  const stem = slug(basename(path, extname(path))) ?? 'letter';
  if (count === 1) return stem;
  const id =
    written.ok && written.value.patient.id !== null ? slug(written.value.patient.id) : null;
  return [stem, String(index + 1), id].filter((part) => part !== null).join('-');
}
