// Lengths and a format arrive; the highest memory of a mailing of each length leaves.
import { rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { mailing } from './ours.js';

export async function measureMemory(folder, lengths, format) {
  const rows = [
    [
      `mailing, ${format}`,
      'letters a second',
      'processor a letter',
      'highest memory',
      'a letter more',
    ],
  ];
  let before = null;
  for (const length of lengths.length > 0 ? lengths : [200, 1000, 3000]) {
    const { wall, cpu, peak, letters } = await mailing(folder, length, format);
    rmSync(dirname(letters), { recursive: true });
    const more = before && (1000 * (peak - before.peak)) / (length - before.length);
    rows.push([
      `${length} letters`,
      (length / wall).toFixed(0),
      `${((1000 * cpu) / length).toFixed(1)} ms`,
      `${peak.toFixed(0)} MiB`,
      more === null ? '' : `${more.toFixed(1)} KiB`,
    ]);
    before = { peak, length };
  }
  return rows;
}
