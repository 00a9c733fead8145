// The rows that were used arrive; numbered, grouped tables of their sources leave, and the numbers to cite them by.
import type { SourceUsed } from '../interpret/interpretation.js';
import { absorptionRows } from '../knowledge/absorption.js';
import { allPathways, diseaseRules, holdRules, holdSigns } from '../knowledge/follow-up.js';
import { foodPicks } from '../knowledge/food-picks.js';
import { foods } from '../knowledge/foods.js';
import { heardByRows } from '../knowledge/heard-by.js';
import { helpSignRows } from '../knowledge/help-signs.js';
import { letterCautionRows } from '../knowledge/letter-cautions.js';
import { medicineGaps } from '../knowledge/medicine-gaps.js';
import { needFactors } from '../knowledge/need-factors.js';
import { needs } from '../knowledge/needs.js';
import { stepDefaults } from '../knowledge/next-step-defaults.js';
import { swapRows } from '../knowledge/swaps.js';
import { tabletPointRows } from '../knowledge/tablet-points.js';
import type { Explain } from './explain.js';
import { sayNumber, sayRow } from './row-words.js';

export const sourceGroups = ['grading', 'pathway', 'food', 'safety'] as const;
export type SourceGroup = (typeof sourceGroups)[number];

/** One line of a table: all that was used of one source that was checked in one way. */
type SourceLine = { readonly ref: string; readonly cells: readonly string[] };

export type Cite = (statement: string, rules: readonly string[]) => string;

export type Sources = {
  /** A statement with the numbers of its rows, such as ' [1, 4!]', before its full stop. */
  readonly cite: Cite;
  /** The numbers alone, with a space before them; empty without rows. */
  readonly mark: (rules: readonly string[]) => string;
  readonly groups: Readonly<Record<SourceGroup, readonly SourceLine[]>>;
};

const unchecked = ['proposal', 'from-memory'];

/**
 * Numbers the sources group by group; an exclamation mark follows the number of what nobody has checked yet.
 * @example numberSources(used, explain).cite('CRP is raised.', ['crp-raised']) // 'CRP is raised [7].'
 */
export function numberSources(used: readonly SourceUsed[], explain: Explain): Sources {
  const refs = new Map<string, string>();
  const groups: Record<SourceGroup, SourceLine[]> = {
    grading: [],
    pathway: [],
    food: [],
    safety: [],
  };
  let number = 0;
  for (const group of sourceGroups) {
    const rows = used.filter(({ rule }) => groupOf(rule) === group);
    for (const together of bySource(rows)) {
      const [first] = together;
      if (first === undefined) continue;
      number += 1;
      const ref = `${number}${unchecked.includes(first.checked) ? '!' : ''}`;
      for (const { rule } of together) refs.set(rule, ref);
      groups[group].push({ ref, cells: cellsOf(ref, together, explain) });
    }
  }
  const mark = (rules: readonly string[]) => {
    const cited = [...new Set(rules.flatMap((rule) => refs.get(rule) ?? []))];
    return cited.length === 0 ? '' : ` [${cited.join(', ')}]`;
  };
  const cite: Cite = (statement, rules) =>
    statement.endsWith('.')
      ? `${statement.slice(0, -1)}${mark(rules)}.`
      : `${statement}${mark(rules)}`;
  return { cite, mark, groups };
}

function cellsOf(ref: string, rows: readonly SourceUsed[], { words }: Explain): readonly string[] {
  const source = rows[0]?.source ?? '';
  const checked = rows[0]?.checked ?? 'proposal';
  const places = [...new Set(rows.map(({ at }) => at))].map((place) => {
    const used = rows
      .filter(({ at }) => at === place)
      .map(({ rule, number }) =>
        [sayRow(rule, words), number === null ? '' : sayNumber(number)].join(' ').trim(),
      );
    const what = [...new Set(used)].filter((one) => one !== '').join(', ');
    return what === '' ? place : `${what} (${place})`;
  });
  return [`[${ref}]`, source, places.join('; '), words(`checked.${checked}`)];
}

function bySource(rows: readonly SourceUsed[]): readonly (readonly SourceUsed[])[] {
  const found = new Map<string, SourceUsed[]>();
  for (const row of rows) {
    const key = `${row.source}|${row.checked}`;
    const list = found.get(key) ?? [];
    list.push(row);
    found.set(key, list);
  }
  return [...found.values()];
}

const idsOf = (...tables: readonly (readonly { readonly id: string }[])[]) =>
  new Set(tables.flatMap((table) => table.map(({ id }) => id)));

const members: readonly (readonly [SourceGroup, ReadonlySet<string>])[] = [
  ['pathway', idsOf(allPathways, diseaseRules, stepDefaults, responses())],
  ['food', idsOf(foods, swapRows, needs, needFactors, absorptionRows, foodPicks)],
  [
    'safety',
    idsOf(
      holdRules,
      holdSigns,
      helpSignRows,
      letterCautionRows,
      heardByRows,
      medicineGaps,
      tabletPointRows,
      falls(),
    ),
  ],
];

/** Rows of tables that other groups share, by name. */
function responses() {
  return ['response-days-from', 'response-days-until', 'recheck-weeks']
    .concat('response-rise-2-weeks', 'response-rise-4-weeks')
    .map((id) => ({ id }));
}

function falls() {
  return ['fall-same-day', 'fall-within-months', 'older-anaemia-years'].map((id) => ({ id }));
}

function groupOf(rule: string): SourceGroup {
  return members.find(([, ids]) => ids.has(rule))?.[0] ?? 'grading';
}
