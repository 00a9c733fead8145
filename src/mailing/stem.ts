// A patient's id or a row arrives; the part of a file name that stands for it leaves.
import { sha256 } from './seal.js';

/**
 * A safe part of a file name: ASCII letters, digits and hyphens, at most 60; null when nothing is left.
 * @example slug('../../SB 1001') // 'SB-1001'
 */
export function slug(text: string): string | null {
  const plain = text
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
  return plain === '' ? null : plain;
}

/** Names that some systems keep for devices. */
const reserved = /^(?:con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * Names a letter after the patient's id, never after the patient. Where the id cannot stand in a file name
 * as it is, a few digits of its hash keep two ids apart; without an id the place in the file is the name.
 * @example stemOf('SB 1001', 4) // 'SB-1001-1d3a2f'
 * @example stemOf(null, 4) // 'report-4'
 */
export function stemOf(id: string | null, number: number): string {
  const plain = id === null ? null : slug(id);
  if (id === null || plain === null) return `report-${number}`;
  const faithful = plain === id && !reserved.test(id) && !/(?:^|-)report-\d+$/i.test(id);
  return faithful ? plain : `${plain}-${sha256(id).slice(0, 6)}`;
}
