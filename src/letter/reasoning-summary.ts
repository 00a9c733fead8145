// An interpretation arrives; the ten lines that a clinician reads first leave, and what they left for further below.
import type { Interpretation, Reason } from '../interpret/interpretation.js';
import { companionRules, patternRules } from '../knowledge/pattern-rules.js';
import { holdTiers } from '../terms.js';
import type { Explain } from './explain.js';
import type { Cite } from './reasoning-sources.js';
import { within } from './say-facts.js';

/** A label and the lines that stand beside it. */
type SummaryLine = readonly [label: string, ...lines: string[]];

type Summary = {
  readonly lines: readonly SummaryLine[];
  readonly furtherSupports: readonly Reason[];
  readonly furtherAgainst: readonly Reason[];
  /** Whether every flag stands in the lines. */
  readonly flagsShown: boolean;
};

type Cited = (reason: Reason) => string;

const mostWhy = 4;
const mostAgainst = 2;
const mostFlags = 2;

/** What tells most comes first: facts beside the values, then the three tests that patterns turn on. */
const telling = ['haemoglobin', 'ferritin', 'transferrin-saturation'];

/**
 * At most ten lines: pattern, why, what speaks against it, flags, hold and what is missing.
 * A letter that is held says so in the first line.
 * @example summarise(interpretation, explain, cited).lines[0] // ['Pattern', 'Iron deficiency anaemia.']
 */
export function summarise(interpretation: Interpretation, explain: Explain, cite: Cite): Summary {
  const { words } = explain;
  const { pattern, flags, hold } = interpretation;
  const cited: Cited = (reason) => cite(explain.reason(reason), reason.rules);
  const supports = byTelling(pattern.supports);
  const shown = supports.length > mostWhy ? mostWhy - 1 : supports.length;
  const [top, further] = [supports.slice(0, shown), supports.slice(shown)];
  const weighty = byTelling(pattern.against);
  const against = pattern.against.length > mostAgainst ? mostAgainst - 1 : pattern.against.length;
  const blurs = flags.map((raised) => cite(explain.flag(raised), raised.rules));
  const names = [pattern.main, ...pattern.companions].map((each) => words(`pattern.${each}`));
  const held = holdTiers.indexOf(hold.tier) >= holdTiers.indexOf('same-day');
  const holds = labelled(words('summary.hold'), [
    [words(`tier.${hold.tier}`), ...cut(hold.reasons.map(cited), 1, explain)].join(' '),
  ]);
  const lines = [
    ...(held ? holds : []),
    ...labelled(words('summary.pattern'), [
      cite(`${names.join(`. ${words('summary.also')}: `)}.`, decidingRules(interpretation)),
    ]),
    ...labelled(words('summary.why'), [
      ...(top.length === 0 ? [words('summary.nothing-why')] : top.map(cited)),
      ...alsoFits(further, explain),
    ]),
    ...labelled(
      words('summary.against'),
      weighty.length === 0
        ? [words('summary.nothing-against')]
        : cut(weighty.map(cited), against, explain),
    ),
    ...labelled(words('summary.flags'), [
      blurs.length === 0 ? words('summary.no-flags') : cut(blurs, mostFlags, explain).join(' '),
    ]),
    ...(held ? [] : holds),
    ...labelled(words('summary.missing'), [missing(interpretation, explain)]),
  ];
  return {
    lines,
    furtherSupports: further,
    furtherAgainst: weighty.slice(against),
    flagsShown: flags.length <= mostFlags,
  };
}

/** Rows of the decision table that name the pattern or a second statement. */
function decidingRules({ pattern, sources }: Interpretation): readonly string[] {
  const named = [pattern.main, ...pattern.companions];
  const rows = [...patternRules, ...companionRules].filter((row) => named.includes(row.pattern));
  return sources.map(({ rule }) => rule).filter((rule) => rows.some(({ id }) => id === rule));
}

function byTelling(reasons: readonly Reason[]): readonly Reason[] {
  const rank = ({ facts: { analyte } }: Reason) => {
    if (analyte === undefined) return -1;
    const place = telling.indexOf(String(analyte));
    return place === -1 ? telling.length : place;
  };
  return reasons.toSorted((one, other) => rank(one) - rank(other));
}

/** The first few, and how many more stand further below. */
function cut(sentences: readonly string[], most: number, { words }: Explain): readonly string[] {
  const more = sentences.length - most;
  if (more <= 0) return sentences;
  return [...sentences.slice(0, most), words('summary.more', { count: String(more) })];
}

/** Tests that fit as well, by name: their numbers stand in the table of numbers. */
function alsoFits(reasons: readonly Reason[], { words }: Explain): readonly string[] {
  if (reasons.length === 0) return [];
  const tests = reasons.flatMap(({ code, facts: { analyte } }) => {
    const level = /-(low|usual|high)$/.exec(code)?.[1];
    return analyte === undefined || level === undefined
      ? []
      : [words(`fits.${level}`, { test: within(words, String(analyte)) })];
  });
  return tests.length === 0 ? [] : [words('summary.fits', { tests: tests.join(', ') })];
}

function missing({ pattern }: Interpretation, { words }: Explain): string {
  if (pattern.missing.length === 0) return words('summary.all-measured');
  return `${pattern.missing.map((each) => words(`analyte.${each}`)).join(', ')}.`;
}

function labelled(label: string, texts: readonly string[]): readonly SummaryLine[] {
  return [[label, ...texts]];
}
