// Held reports arrive; the list of people to phone leaves, most pressing first: as a table and as a page to print.
import type { ReasoningContent } from '../letter/index.js';
import { type HoldTier, holdTiers } from '../terms.js';
import { csvLine, csvStart } from './csv-line.js';
import type { Understood } from './desk.js';
import { languageName } from './language-name.js';
import words from './words.json' with { type: 'json' };

/** The operator's own list: it names the patient, for somebody must phone them. */
export type Call = {
  readonly tier: HoldTier;
  readonly number: number;
  readonly row: number | null;
  readonly id: string | null;
  readonly name: string | null;
  readonly born: string | null;
  readonly collected: string;
  /** Tag of the language the letter would be in; the caller may need an interpreter. */
  readonly language: string;
  readonly sheet: ReasoningContent;
  /** How many of the last lines of why are results. */
  readonly results: number;
};

export function callOf(
  { number, row, id, language }: Pick<Call, 'number' | 'row' | 'id' | 'language'>,
  { report, interpretation }: Understood,
  sheet: ReasoningContent,
): Call {
  const { name, birthDate } = report.patient;
  const { collected } = report.panel;
  return {
    tier: interpretation.hold.tier,
    number,
    row,
    id,
    name,
    born: birthDate,
    collected,
    language,
    sheet,
    results: interpretation.results.length,
  };
}

/** Most pressing tier first, then as in the file. */
export function sortCalls(calls: readonly Call[]): readonly Call[] {
  const rank = ({ tier }: Call) => holdTiers.indexOf(tier);
  return [...calls].sort((one, other) => rank(other) - rank(one) || one.number - other.number);
}

const columns = [
  'tier',
  'report',
  'row',
  'id',
  'name',
  'born',
  'collected',
  'language',
  'why',
  'seen',
  'say',
] as const;

/** @example callTable(calls) // '\uFEFF"tier","report",…\r\n"emergency","4",…\r\n' */
export function callTable(calls: readonly Call[]): string {
  const lines = calls.map((call) =>
    csvLine([
      call.tier,
      call.number,
      call.row,
      call.id,
      call.name,
      call.born,
      call.collected,
      languageName(call.language),
      whyOf(call).join(' '),
      seenOf(call).join('; '),
      itemsOf(call.sheet, 'say').join(' '),
    ]),
  );
  return csvStart + csvLine(columns) + lines.join('');
}

/** What templates/calls.hbs is filled with. */
export function callPages(calls: readonly Call[], date: string) {
  const shown = calls.slice(0, mostShown);
  const rest = calls.length - shown.length;
  const groups = [...holdTiers].reverse().map((tier) => ({
    heading: words.tier[tier],
    calls: shown
      .filter((call) => call.tier === tier)
      .map((call) => ({
        heading: call.name ?? call.id ?? `${words.report} ${call.number}`,
        who: [
          [words.id, call.id],
          [words.born, call.born],
          [words.sample, call.collected],
          [words.report, String(call.number)],
          [words.language, languageName(call.language)],
        ]
          .flatMap(([label, value]) => (value === null ? [] : [`${label}: ${value}`]))
          .join(' · '),
        why: whyOf(call).slice(1),
        results: seenOf(call).join(' · '),
        say: itemsOf(call.sheet, 'say'),
      })),
  }));
  const [first] = calls;
  return {
    lang: 'en',
    title: words.calls.title,
    date: `${words.letters}: ${date}`,
    count: `${words.calls.people}: ${calls.length}`,
    intro: [
      ...(rest > 0
        ? [words.calls.more.replace('{shown}', String(mostShown)).replace('{rest}', String(rest))]
        : []),
      words.calls.intro,
      words.calls.privacy,
    ],
    ask:
      first === undefined
        ? []
        : [...itemsOf(first.sheet, 'ask'), ...itemsOf(first.sheet, 'record')],
    askHeading: words.calls.ask,
    sayHeading: words.calls.say,
    record: words.calls.record,
    groups: groups.filter((group) => group.calls.length > 0),
  };
}

/** On some hundred sheets; a longer list takes the memory of the letters, and calls.csv holds it whole. */
const mostShown = 500;

function itemsOf(sheet: ReasoningContent, slug: string): readonly string[] {
  return sheet.blocks.find((block) => block.slug === slug)?.list ?? [];
}

/** The tier's sentence and the reasons. */
function whyOf({ sheet, results }: Call): readonly string[] {
  const all = itemsOf(sheet, 'why');
  return all.slice(0, all.length - results);
}

function seenOf({ sheet, results }: Call): readonly string[] {
  const all = itemsOf(sheet, 'why');
  return all.slice(all.length - results);
}
