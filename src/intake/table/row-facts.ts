// The facts of one row, before rows of one person are gathered.
import type { Problem } from '../../problem.js';
import type { DatedResult } from '../order-panels.js';
import type { WrittenContext, WrittenPatient } from '../written.js';

export type RowFacts = {
  readonly row: number;
  readonly patient: WrittenPatient;
  readonly collected: string | null;
  readonly context: WrittenContext;
  readonly language: string | null;
  readonly results: readonly DatedResult[];
  readonly problems: readonly Problem[];
};
