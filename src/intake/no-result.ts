// A cell arrives; whether it says that there is no result leaves.

const words: ReadonlySet<string> = new Set([
  '',
  '-',
  '--',
  '---',
  '–',
  '—',
  '.',
  '…',
  'n/a',
  'na',
  'nd',
  'n.d.',
  'nil',
  'none',
  'null',
  'pending',
  'awaited',
  'to follow',
  'not done',
  'not measured',
  'not performed',
  'no result',
  'no sample',
]);

/** True for an empty cell and for words such as 'n/a' or 'pending', which are no value and no fault. */
export function saysNoResult(cell: string): boolean {
  return words.has(cell.trim().toLowerCase());
}
