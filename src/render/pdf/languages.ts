// A letter arrives; the languages whose faces must be open before it is laid out leave.
import type { Block, LetterDocument } from '../block.js';

/**
 * Every language that text of the letter is in, its own first.
 * @example [...languagesOf(letter)] // ['ar', 'en']
 */
export function languagesOf(letter: LetterDocument): ReadonlySet<string> {
  const running = [...langs(letter.header?.runs), ...langs(letter.footer?.runs)];
  return new Set([letter.lang, ...letter.blocks.flatMap(languagesIn), ...running]);
}

function languagesIn(block: Block): readonly string[] {
  switch (block.kind) {
    case 'heading':
    case 'paragraph':
      return langs(block.runs);
    case 'list':
      return block.items.flat().flatMap(languagesIn);
    case 'table': {
      const cells = [...block.head, ...block.rows].flat();
      return [
        ...langs(block.caption),
        ...cells.flatMap((cell) => cell.blocks.flatMap(languagesIn)),
      ];
    }
    case 'section':
      return [...(block.lang === null ? [] : [block.lang]), ...block.blocks.flatMap(languagesIn)];
    case 'notice':
      return block.blocks.flatMap(languagesIn);
    case 'pair':
      return [block.first, block.second].flatMap(languagesIn);
    case 'figure': {
      const words = block.scene.shapes.filter((shape) => shape.kind === 'text');
      return [...langs(words), ...langs(block.caption)];
    }
    case 'logo':
    case 'page-break':
    case 'rule':
      return [];
  }
}

type Spoken = { readonly lang: string | null };

function langs(runs: readonly Spoken[] | null | undefined): readonly string[] {
  return (runs ?? []).flatMap((run) => (run.lang === null ? [] : [run.lang]));
}
