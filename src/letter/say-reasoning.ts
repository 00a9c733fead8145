// The clinician's sheet arrives; the same sheet as plain text for a terminal leaves.
import type { ReasoningBlock, ReasoningContent, ReasoningTable } from './reasoning.js';

/** One heading a block, one line an item; tables in columns, sources as lines. */
export function sayReasoning({ title, about, intro, blocks }: ReasoningContent): string {
  const top = [title, '='.repeat(title.length), ...[about, intro].filter((line) => line !== '')];
  return `${[...top, ...blocks.flatMap(sayBlock)].join('\n')}\n`;
}

function sayBlock({ look, heading, paragraphs, list, table }: ReasoningBlock): readonly string[] {
  const rows = table === null ? [] : sayTable[look](table);
  const told = [...paragraphs, ...list.map((item) => `- ${item}`), ...rows];
  return look === 'summary' ? ['', ...told] : ['', heading, ...told];
}

const sayTable: Readonly<
  Record<ReasoningBlock['look'], (table: ReasoningTable) => readonly string[]>
> = {
  summary: ({ rows }) =>
    sayColumns({
      head: [],
      rows: rows.flatMap(([label = '', ...lines]) =>
        lines.map((line, at) => [at === 0 ? label : '', line]),
      ),
    }),
  part: sayColumns,
  sources: sayLines,
  call: sayColumns,
};

/** Every column as wide as its widest cell, but for the last. */
function sayColumns({ head, rows }: ReasoningTable): readonly string[] {
  const all = head.length === 0 ? rows : [head, ...rows];
  const widths = (all[0] ?? []).map((_cell, at) =>
    Math.max(...all.map((row) => (row[at] ?? '').length)),
  );
  return all.map((row) =>
    row
      .map((cell, at) => cell.padEnd(widths[at] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}

/** @example '[2] WHO 2024 …: ferritin low, below 15 µg/L (table 2). Read in the source.' */
function sayLines({ rows }: ReasoningTable): readonly string[] {
  return rows.map(([ref = '', source = '', used = '', checked = '']) =>
    `${ref} ${source}: ${used}. ${checked.charAt(0).toUpperCase()}${checked.slice(1)}.`.trim(),
  );
}
