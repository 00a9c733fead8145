// The blocks of a letter arrive; its headings and paragraphs as text leave, in the order they are read.
import type { Block, LetterDocument, Run } from '../../src/render/block.js';

export type Passage = {
  readonly kind: 'heading' | 'paragraph';
  /** Isolated runs stand between U+2066 and U+2069, as messages have them. */
  readonly text: string;
  /** Without what stands in bold: a heading run in, and headings are no sentences. */
  readonly unbold: string;
};

function textOf(runs: readonly Run[]): string {
  return runs
    .map(({ text, isolate }) => (isolate === null ? text : `\u2066${text}\u2069`))
    .join('')
    .replace(/\s+/g, ' ')
    .trim();
}

const wordsOf = (runs: readonly Run[]) => ({
  text: textOf(runs),
  unbold: textOf(runs.filter(({ strong }) => !strong)),
});

function passagesIn(block: Block): readonly Passage[] {
  switch (block.kind) {
    case 'heading':
      return [{ kind: 'heading', ...wordsOf(block.runs) }];
    case 'paragraph':
      return [{ kind: 'paragraph', ...wordsOf(block.runs) }];
    case 'list':
      return block.items.flat().flatMap(passagesIn);
    case 'table':
      return [...block.head, ...block.rows]
        .flat()
        .flatMap(({ blocks }) => blocks.flatMap(passagesIn));
    case 'notice':
    case 'section':
      return block.blocks.flatMap(passagesIn);
    case 'pair':
      return [block.first, block.second].flatMap(passagesIn);
    default:
      return [];
  }
}

export function passagesOf(document: LetterDocument): readonly Passage[] {
  return document.blocks.flatMap(passagesIn);
}
