// A report, its interpretation and advice arrive; the clinician's sheet leaves, to be read in twenty seconds.
import type { Advice } from '../advise/advice.js';
import type {
  GradedResult,
  Interpretation,
  Reason,
  SourceUsed,
} from '../interpret/interpretation.js';
import type { Report } from '../report/report.js';
import type { Language } from './language.js';
import { type Explain, explainer } from './explain.js';

/** One part of the sheet: paragraphs, a list and a table, each possibly empty. */
export type ReasoningBlock = {
  readonly slug: string;
  readonly heading: string;
  readonly paragraphs: readonly string[];
  readonly list: readonly string[];
  readonly table: {
    readonly head: readonly string[];
    readonly rows: readonly (readonly string[])[];
  } | null;
};

export type ReasoningContent = {
  readonly lang: string;
  readonly title: string;
  readonly intro: string;
  readonly blocks: readonly ReasoningBlock[];
};

/**
 * Says how the program came to its reading; proposals and numbers from memory are marked in capitals.
 * @param language English with its reasoning file; the sheet has no other language.
 * @example composeReasoning(report, interpretation, advice, english).blocks[0].heading // 'Pattern'
 */
export function composeReasoning(
  report: Report,
  interpretation: Interpretation,
  advice: Advice,
  language: Language,
): ReasoningContent {
  const explain = explainer(language);
  const { pattern, hold } = interpretation;
  const blocks = [
    block(explain, 'pattern', {
      paragraphs: [explain.words(`pattern.${pattern.main}`)],
      list: pattern.companions.map((each) => explain.words(`pattern.${each}`)),
    }),
    block(explain, 'hold', {
      paragraphs: [explain.words(`tier.${hold.tier}`)],
      list: hold.reasons.map(explain.reason),
    }),
    block(explain, 'supports', { list: pattern.supports.map(explain.reason) }),
    block(explain, 'against', { list: pattern.against.map(explain.reason) }),
    block(explain, 'missing', {
      list: pattern.missing.map((each) => explain.words(`analyte.${each}`)),
    }),
    block(explain, 'flags', { list: flags(explain, interpretation) }),
    block(explain, 'results', { table: results(explain, interpretation) }),
    block(explain, 'changes', { table: changes(explain, interpretation) }),
    block(explain, 'near-misses', { list: interpretation.nearMisses.map(explain.reason) }),
    block(explain, 'notes', {
      list: [...interpretation.clinicianNotes.map(explain.reason), ...report.context.notes],
    }),
    block(explain, 'food', food(explain, advice)),
    block(explain, 'sources', { table: sources(explain, interpretation.sources) }),
    block(explain, 'advice-sources', { table: sources(explain, advice.sources) }),
  ];
  return {
    lang: language.tag,
    title: explain.words('title'),
    intro: explain.words('intro'),
    blocks: blocks.filter(
      ({ paragraphs, list, table }) => paragraphs.length + list.length > 0 || table !== null,
    ),
  };
}

function block(
  explain: Explain,
  slug: string,
  parts: Partial<Pick<ReasoningBlock, 'paragraphs' | 'list' | 'table'>>,
): ReasoningBlock {
  const heading = explain.words(`heading.${slug}`);
  return { slug, heading, paragraphs: [], list: [], table: null, ...parts };
}

function flags(explain: Explain, { flags: raised }: Interpretation): readonly string[] {
  return raised.map(({ flag, analyte, facts }) => {
    const about = analyte === null ? '' : `${explain.words(`analyte.${analyte}`)}: `;
    return `${about}${explain.withFacts(explain.words(`flag.${flag}`), facts)}`;
  });
}

function results(explain: Explain, { results: graded }: Interpretation): ReasoningBlock['table'] {
  if (graded.length === 0) return null;
  const columns = ['test', 'result', 'position', 'yardstick'] as const;
  return {
    head: columns.map((column) => explain.words(`column.${column}`)),
    rows: graded.map((result) => [
      explain.words(`analyte.${result.analyte}`),
      resultOf(explain, result),
      explain.words(`position.${result.position ?? 'none'}`),
      yardsticks(explain, result),
    ]),
  };
}

function resultOf(explain: Explain, { copied, derived, doubt }: GradedResult): string {
  return [
    `${copied.value} ${copied.unit}`.trim(),
    ...(derived === null ? [] : [`(${explain.words('derived')})`]),
    ...(doubt === null ? [] : [`(${explain.words('doubtful')}: ${doubt.question})`]),
  ].join(' ');
}

function yardsticks(explain: Explain, { comparedWith, also, unit }: GradedResult): string {
  const all = comparedWith === null ? also : [comparedWith, ...also];
  if (all.length === 0) return explain.words('none.no-lab-range');
  return all
    .map(({ by, low, high, source, position }) => {
      const range = `${low ?? '…'} to ${high ?? '…'} ${unit}`;
      const whose = by === 'laboratory' ? explain.words('by.laboratory') : source;
      return `${range} (${whose}): ${explain.words(`position.${position ?? 'none'}`)}`;
    })
    .join('; ');
}

function changes(explain: Explain, { changes: all }: Interpretation): ReasoningBlock['table'] {
  if (all.length === 0) return null;
  const percent = (value: number | null) => (value === null ? '' : `${Math.round(value)} %`);
  return {
    head: (['test', 'result', 'change', 'limit'] as const).map((column) =>
      explain.words(`column.${column}`),
    ),
    rows: all.map(({ analyte, earlier, verdict, percent: by, limitUp, limitDown }) => [
      explain.words(`analyte.${analyte}`),
      `${earlier.copied.value} ${earlier.copied.unit}, ${earlier.collected}`,
      `${explain.words(`change.${verdict}`)} ${percent(by)}`.trim(),
      [percent(limitUp), percent(limitDown)].filter((limit) => limit !== '').join(' / '),
    ]),
  };
}

function food(explain: Explain, { food: advice, staff }: Advice): Partial<ReasoningBlock> {
  return {
    paragraphs: [explain.words(`food-mode.${advice.mode}`)],
    list: [
      ...advice.why.map((reason) => explain.coded('food-mode-reason', reason)),
      ...staff.map((reason: Reason) => explain.coded('staff', reason)),
    ],
  };
}

function sources(explain: Explain, used: readonly SourceUsed[]): ReasoningBlock['table'] {
  if (used.length === 0) return null;
  return {
    head: (['number', 'source', 'checked'] as const).map((column) =>
      explain.words(`column.${column}`),
    ),
    rows: used.map(({ rule, number, source, at, checked }) => [
      number ?? rule,
      `${source}, ${at}`,
      explain.words(`checked.${checked}`),
    ]),
  };
}
