// A report, its interpretation and advice arrive; the clinician's sheet leaves, to be read in twenty seconds.
import type { Advice } from '../advise/advice.js';
import type { Interpretation, Reason } from '../interpret/interpretation.js';
import type { Report } from '../report/report.js';
import { type Explain, explainer } from './explain.js';
import type { Language } from './language.js';
import { foodBlocks } from './reasoning-food.js';
import { changesTable, numbersTable } from './reasoning-numbers.js';
import {
  numberSources,
  type SourceGroup,
  sourceGroups,
  type Sources,
} from './reasoning-sources.js';
import { summarise } from './reasoning-summary.js';

export type ReasoningTable = {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
};

/** One part of the sheet: paragraphs, a list and a table, each possibly empty. */
export type ReasoningBlock = {
  readonly slug: string;
  /** `summary` stands first in a box, a row for each label and its lines; `sources` stands last in small print; `call` is read out on the phone. */
  readonly look: 'summary' | 'part' | 'sources' | 'call';
  readonly heading: string;
  readonly paragraphs: readonly string[];
  readonly list: readonly string[];
  readonly table: ReasoningTable | null;
};

export type ReasoningContent = {
  readonly lang: string;
  readonly title: string;
  readonly intro: string;
  /** Whom and which day it is about; empty where the sheet says so itself. */
  readonly about: string;
  readonly blocks: readonly ReasoningBlock[];
};

/**
 * Says how the program came to its reading: ten lines first, then every number, rule and source to retrace it by.
 * Proposals and numbers from memory carry an exclamation mark wherever they are cited.
 * @param language English with its reasoning file; the sheet has no other language.
 * @example composeReasoning(report, interpretation, advice, english).blocks[0].heading // 'In short'
 */
export function composeReasoning(
  report: Report,
  interpretation: Interpretation,
  advice: Advice,
  language: Language,
): ReasoningContent {
  const explain = explainer(language);
  const sources = numberSources([...interpretation.sources, ...advice.sources], explain);
  const { lines, furtherSupports, furtherAgainst, flagsShown } = summarise(
    interpretation,
    explain,
    sources.cite,
  );
  const { flags, hold, nearMisses, clinicianNotes } = interpretation;
  const cited = (reasons: readonly Reason[]) =>
    reasons.map((reason) => sources.cite(explain.reason(reason), reason.rules));
  const block = (slug: string, parts: Parts): ReasoningBlock => ({
    slug,
    look: 'part',
    heading: explain.words(`heading.${slug}`),
    paragraphs: [],
    list: [],
    table: null,
    ...parts,
  });
  const blocks = [
    block('summary', { look: 'summary', table: { head: [], rows: lines } }),
    block('results', { table: numbersTable(interpretation, explain, sources.cite) }),
    block('changes', { table: changesTable(interpretation, explain, sources.cite) }),
    block('hold', { list: hold.reasons.length > 1 ? cited(hold.reasons) : [] }),
    block('supports', { list: cited(furtherSupports) }),
    block('against', { list: cited(furtherAgainst) }),
    block('flags', {
      list: flagsShown
        ? []
        : flags.map((raised) => sources.cite(explain.flag(raised), raised.rules)),
    }),
    block('near-misses', { list: cited(nearMisses) }),
    block('notes', {
      list: [
        ...cited(clinicianNotes),
        ...report.context.notes.map((note) => explain.words('note.own', { note })),
      ],
    }),
    ...foodBlocks(explain.words, sources.mark, report, advice, language),
    ...sourceGroups.map((group) =>
      block(`sources-${group}`, { look: 'sources', table: sourcesTable(explain, sources, group) }),
    ),
  ];
  return {
    lang: language.tag,
    title: explain.words('title'),
    intro: explain.words('intro'),
    about: aboutOf(report, interpretation, explain),
    blocks: blocks.filter(
      ({ paragraphs, list, table }) => paragraphs.length + list.length > 0 || table !== null,
    ),
  };
}

type Parts = Partial<Pick<ReasoningBlock, 'look' | 'paragraphs' | 'list' | 'table'>>;

function aboutOf({ patient }: Report, { collected, groups }: Interpretation, explain: Explain) {
  const { words, date } = explain;
  const group = groups.map((one) => words(`group.${one.group}`)).join(' or ');
  return words('about', {
    who: patient.name ?? patient.id ?? words('about.unnamed'),
    group: group === '' ? words('group.none') : group,
    date: date(collected),
  });
}

function sourcesTable(explain: Explain, { groups }: Sources, group: SourceGroup) {
  if (groups[group].length === 0) return null;
  return {
    head: (['ref', 'source', 'used', 'checked'] as const).map((column) =>
      explain.words(`column.${column}`),
    ),
    rows: groups[group].map(({ cells }) => cells),
  };
}
