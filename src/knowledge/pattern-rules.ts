// In: nothing. Out: the decision table, first row that fits decides, and the table of second statements.
import { z } from 'zod';
import { levels, patterns } from '../terms.js';
import companionRows from './companion-rules.json' with { type: 'json' };
import profileRows from './pattern-profiles.json' with { type: 'json' };
import ruleRows from './pattern-rules.json' with { type: 'json' };
import { readRows, rowFields } from './row.js';

/** The seven tests the table looks at; transferrin stands for TIBC too. */
export const tableTests = [
  'haemoglobin',
  'mcv',
  'serum-iron',
  'transferrin',
  'transferrin-saturation',
  'ferritin',
  'crp',
] as const;
export type TableTest = (typeof tableTests)[number];

/** What is known beside the levels. */
const tableFacts = [
  'recent-iron',
  'contradiction',
  'bleed',
  'ferritin-certain',
  'outside-range',
  'disease-rule',
  'unreadable',
] as const;
export type TableFact = (typeof tableFacts)[number];

const patternRow = z.object({
  ...rowFields,
  pattern: z.enum(patterns),
  /** Levels that fit; a test left out fits at any level. */
  when: z.partialRecord(z.enum(tableTests), z.array(z.enum(levels)).min(1)),
  needs: z.array(z.enum(tableFacts)),
  without: z.array(z.enum(tableFacts)),
});
export type PatternRow = z.infer<typeof patternRow>;

export const patternRules: readonly PatternRow[] = readRows('pattern-rules', patternRow, ruleRows);
export const companionRules: readonly PatternRow[] = readRows(
  'companion-rules',
  patternRow,
  companionRows,
);

const profileRow = z.object({
  ...rowFields,
  pattern: z.enum(patterns),
  when: z.partialRecord(z.enum(tableTests), z.array(z.enum(levels)).min(1)),
});
/** What each pattern looks like when it is complete: the yardstick for what supports it and what speaks against it. */
export const patternProfiles: readonly z.infer<typeof profileRow>[] = readRows(
  'pattern-profiles',
  profileRow,
  profileRows,
);
