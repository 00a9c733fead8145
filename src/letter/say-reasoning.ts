// The clinician's sheet arrives; the same sheet as plain text for a terminal leaves.
import type { ReasoningBlock, ReasoningContent } from './reasoning.js';

/** One heading a block, one line an item; tables as lines of cells. */
export function sayReasoning(content: ReasoningContent): string {
  const top = [content.title, '='.repeat(content.title.length), content.intro];
  return `${[...top, ...content.blocks.flatMap(sayBlock)].join('\n')}\n`;
}

function sayBlock({ heading, paragraphs, list, table }: ReasoningBlock): readonly string[] {
  return ['', heading, ...paragraphs, ...list.map((item) => `- ${item}`), ...sayTable(table)];
}

function sayTable(table: ReasoningBlock['table']): readonly string[] {
  if (table === null) return [];
  return table.rows.map((row) => `- ${row.filter((cell) => cell !== '').join(' | ')}`);
}
