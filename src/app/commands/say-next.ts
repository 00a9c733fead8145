// What was done to a folder arrives; what a clinic does next leaves, a line each, for standard error.
import { join } from 'node:path';

const command = (verb: string, folder: string) =>
  `ironleaf ${verb} ${/^[\w./\\:-]+$/.test(folder) ? folder : `"${folder}"`}`;

type Outcomes = Readonly<Record<'made' | 'held' | 'refused', number>>;

/** @example afterMailing('evening', { made: 9, held: 0, refused: 0 }) // ['Next, to check them: …'] */
export function afterMailing(folder: string, { made, held, refused }: Outcomes): readonly string[] {
  const review = `Next, to check and sign the letters: ${command('review', folder)}`;
  return [
    ...phoneFirst(join(folder, 'calls.pdf'), held),
    ...(refused > 0
      ? [`${refused} to fix: ${join(folder, 'to-fix.csv')}; then give the same command again.`]
      : []),
    ...(made > 0 ? [review] : []),
  ];
}

/** @param calls path of the share's own list. */
export function afterShare(calls: string, held: number): readonly string[] {
  return [
    ...phoneFirst(calls, held),
    'When every share is done, give the same command without --shard: it writes the whole lists.',
  ];
}

function phoneFirst(calls: string, held: number): readonly string[] {
  return held > 0 ? [`First phone ${held}: ${calls} says whom and why.`] : [];
}

/** @param open letters without a signature. */
export function afterReview(folder: string, open: number): readonly string[] {
  const list = join(folder, 'to-sign.txt');
  if (open === 0) return afterSigning(folder, 0);
  return [
    `${open} letters are not signed. Delete from ${list} the lines a clinician does not agree with, then:`,
    `  ${command('review', folder)} --sign ${/\s/.test(list) ? `"${list}"` : list} --checked-by "Name of the clinician"`,
  ];
}

export function afterSigning(folder: string, open: number): readonly string[] {
  return [
    ...(open > 0 ? [`${open} letters are not signed; each of their pages says so.`] : []),
    `Next, one file for the print house: ${command('print', folder)}`,
  ];
}

export function afterPrint(folder: string): readonly string[] {
  return [`Before posting: ${command('verify', folder)}`];
}
