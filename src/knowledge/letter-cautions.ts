// Arrives: letter-cautions.json. Leaves: cautions of the whole letter and when each is printed.
import { z } from 'zod';
import rows from './letter-cautions.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  when: z.enum([
    'always',
    'tablets',
    'no-tablets',
    'high-or-unclear-iron',
    'iron-at-home',
    'in-range',
    'ill',
    'low-iron',
    'low-iron-and-periods',
  ]),
});

export type LetterCautionRow = z.infer<typeof row>;

/** Cautions in the order of the letter. */
export const letterCautionRows: readonly LetterCautionRow[] = readRows<LetterCautionRow>(
  'letter-cautions',
  row,
  rows,
);
