// Rows of window envelopes arrive; where an address must stand to be seen, and nothing else with it, leaves.
import { z } from 'zod';
import { type Row, readRows, rowFields } from '../../knowledge/row.js';
import rows from './windows.json' with { type: 'json' };

/**
 * Millimetres from the top left corner of the flat sheet. `clear` stays free round the address inside the box;
 * no line of the letter stands above `bodyFrom`.
 */
export type WindowPreset = Row & {
  readonly paper: 'A4';
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly clear: number;
  readonly bodyFrom: number;
  readonly folds: readonly number[];
};

const millimetres = z.number().positive();

const schema: z.ZodType<WindowPreset> = z.strictObject({
  ...rowFields,
  paper: z.literal('A4'),
  left: millimetres,
  top: millimetres,
  width: millimetres,
  height: millimetres,
  clear: millimetres,
  bodyFrom: millimetres,
  folds: z.array(millimetres).min(1),
});

export const windowPresets = readRows('windows', schema, rows);

/** @example findWindow('din-5008-b')?.folds // [105, 210] */
export function findWindow(id: string): WindowPreset | null {
  return windowPresets.find((row) => row.id === id) ?? null;
}

/** @example points(25.4) // 72 */
export function points(length: number): number {
  return (length * 72) / 25.4;
}
