// Reports are counted one by one; a page about the whole run leaves, without a name or an id on it.
import type { HoldTier, Pattern } from '../terms.js';
import { holdTiers, patterns } from '../terms.js';
import type { Understood } from './desk.js';
import { languageName } from './language-name.js';
import words from './words.json' with { type: 'json' };

/** Counts of one run. */
export type Tally = {
  readonly outcomes: Record<'made' | 'held' | 'refused', number>;
  readonly patterns: Map<Pattern, number>;
  readonly tiers: Map<HoldTier, number>;
  readonly languages: Map<string, number>;
  readonly refusals: Map<string, number>;
};

export function openTally(): Tally {
  return {
    outcomes: { made: 0, held: 0, refused: 0 },
    patterns: new Map(),
    tiers: new Map(),
    languages: new Map(),
    refusals: new Map(),
  };
}

export function countUp<K>(counts: Map<K, number>, key: K): void {
  counts.set(key, (counts.get(key) ?? 0) + 1);
}

export function countReading(tally: Tally, { interpretation }: Understood): void {
  countUp(tally.patterns, interpretation.pattern.main);
  countUp(tally.tiers, interpretation.hold.tier);
}

type Bar = { readonly label: string; readonly count: number };

/** Widths in units of the picture. */
const chart = { width: 470, label: 250, bar: 170, row: 15, height: 10 } as const;

/** What templates/summary.hbs is filled with: bars of counts, each with its number beside it. */
export function summaryPage(tally: Tally, date: string, name: (pattern: Pattern) => string) {
  const { outcomes } = tally;
  const total = outcomes.made + outcomes.held + outcomes.refused;
  const charts = [
    chartOf(words.summary.outcomes, [
      { label: words.summary.made, count: outcomes.made },
      { label: words.summary.held, count: outcomes.held },
      { label: words.summary.refused, count: outcomes.refused },
    ]),
    chartOf(
      words.summary.patterns,
      patterns.flatMap((each) => bar(tally.patterns.get(each), name(each))),
    ),
    chartOf(
      words.summary.tiers,
      [...holdTiers].reverse().flatMap((each) => bar(tally.tiers.get(each), words.tier[each])),
    ),
    chartOf(words.summary.languages, sorted(tally.languages, languageName)),
    chartOf(words.summary.refusals, sorted(tally.refusals, plain)),
  ];
  return {
    lang: 'en',
    title: words.summary.title,
    intro: [`${words.letters}: ${date}. ${words.summary.reports}: ${total}.`, words.summary.note],
    charts: charts.filter(({ bars }) => bars.length > 0),
  };
}

function bar(count: number | undefined, label: string): readonly Bar[] {
  return count === undefined ? [] : [{ label, count }];
}

/** A code as a label. @example plain('value-unread') // 'Value unread' */
function plain(code: string): string {
  return code.charAt(0).toUpperCase() + code.slice(1).replaceAll('-', ' ');
}

function sorted(
  counts: ReadonlyMap<string, number>,
  name: (key: string) => string,
): readonly Bar[] {
  return [...counts]
    .map(([key, count]) => ({ label: name(key), count }))
    .sort((one, other) => other.count - one.count || (one.label < other.label ? -1 : 1));
}

function chartOf(heading: string, all: readonly Bar[]) {
  const most = Math.max(1, ...all.map(({ count }) => count));
  return {
    heading,
    view: `0 0 ${chart.width} ${Math.max(1, all.length) * chart.row}`,
    told: all.map(({ label, count }) => `${label}: ${count}`).join('; '),
    bars: all.map(({ label, count }, at) => {
      const width = Math.round((chart.bar * count) / most);
      const y = at * chart.row;
      return {
        label,
        count: String(count),
        x: String(chart.label),
        y: String(y + 2),
        width: String(width),
        height: String(chart.height),
        base: String(y + 11),
        labelX: String(chart.label - 6),
        countX: String(chart.label + width + 6),
      };
    }),
  };
}
