// Arrives: next-step-defaults.json. Leaves: next steps suggested for each pattern until a clinician chooses.
import { z } from 'zod';
import { nextSteps, patterns } from '../terms.js';
import rows from './next-step-defaults.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

const row = z.strictObject({
  ...rowFields,
  pattern: z.enum(patterns),
  step: z.enum(nextSteps),
  who: z.enum(['patient', 'clinic']),
  /** Days from the letter; null for a step without a date. */
  days: z.number().int().positive().nullable(),
  when: z.enum([
    'always',
    'periods',
    'tablets',
    'tablets-pregnant',
    'no-tablets',
    'no-tablets-pregnant',
  ]),
});

export type StepDefault = z.infer<typeof row>;

/** Suggested steps, in the order of the letter. */
export const stepDefaults: readonly StepDefault[] = readRows<StepDefault>(
  'next-step-defaults',
  row,
  rows,
);
