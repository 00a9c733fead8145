// In: levels and facts. Out: the one row of the table that decides, the second statements, the near misses.
import {
  companionRules,
  type PatternRow,
  patternRules,
  type TableFact,
  tableTests,
  type TableTest,
} from '../knowledge/pattern-rules.js';
import type { Pattern } from '../terms.js';
import type { Levels } from './level.js';

export type Situation = { readonly levels: Levels; readonly facts: ReadonlySet<TableFact> };

export type Decision = {
  readonly row: PatternRow;
  readonly companions: readonly PatternRow[];
};

/**
 * The first row of src/knowledge/pattern-rules.json that fits, and every second statement.
 * The last row fits everything, so exactly one main pattern comes out.
 * @example decide(allUsual).row.pattern // 'all-in-range'
 */
export function decide(situation: Situation): Decision {
  const row = patternRules.find((one) => fits(one, situation));
  // Stryker disable next-line all: the last row fits everything, so only a broken table comes here.
  if (row === undefined) throw new Error('knowledge: no row of the pattern table fits');
  const unreadable: readonly Pattern[] = ['post-iron-dose-artefact', 'discordant-or-implausible'];
  const facts = unreadable.includes(row.pattern)
    ? new Set<TableFact>([...situation.facts, 'unreadable'])
    : situation.facts;
  const companions = companionRules.filter(
    (one) => one.pattern !== row.pattern && fits(one, { ...situation, facts }),
  );
  return { row, companions };
}

/** A row that one level alone kept from fitting. */
export type NearMiss = { readonly row: PatternRow; readonly test: TableTest };

/**
 * Rows for a pattern not `said` that a single test kept from fitting; measured tests only.
 * A row of one test is one test away from everybody, and is passed over.
 * @example nearMisses(situation, new Set(['all-in-range']))[0]?.test // 'ferritin'
 */
export function nearMisses(situation: Situation, said: ReadonlySet<Pattern>): readonly NearMiss[] {
  return patternRules.flatMap((row) => {
    if (said.has(row.pattern) || Object.keys(row.when).length < 2) return [];
    if (!factsFit(row, situation)) return [];
    const [test, another] = tableTests.filter((one) => !levelFits(row, one, situation));
    if (test === undefined || another !== undefined) return [];
    return situation.levels[test] === 'not-measured' ? [] : [{ row, test }];
  });
}

function fits(row: PatternRow, situation: Situation): boolean {
  return factsFit(row, situation) && tableTests.every((test) => levelFits(row, test, situation));
}

function levelFits(row: PatternRow, test: TableTest, { levels }: Situation): boolean {
  return row.when[test]?.includes(levels[test]) ?? true;
}

function factsFit({ needs, without }: PatternRow, { facts }: Situation): boolean {
  return needs.every((fact) => facts.has(fact)) && !without.some((fact) => facts.has(fact));
}
