// Two letters of the same shape in two languages arrive; one document with both side by side leaves.
import { type Checked, faulty, fine, nowhere } from '../problem.js';
import type { Block, LetterDocument } from './block.js';

/**
 * Zips two documents block by block, going into sections that may be split, so that each heading, paragraph,
 * list or result stands beside its translation. Title, running lines, language and direction are the first's;
 * the second's blocks carry their own.
 * Problems: the documents differ in shape; the place where they part is named.
 * @example pairDocuments(arabic, english) // blocks: [{ kind: 'pair', first, second: { kind: 'section', lang: 'en', … } }]
 */
export function pairDocuments(
  first: LetterDocument,
  second: LetterDocument,
): Checked<LetterDocument> {
  const parted = differenceOf(withoutBands(first.blocks), withoutBands(second.blocks), 'letter');
  if (parted !== null) {
    return faulty([
      {
        code: 'shapes-differ',
        place: nowhere,
        cannot: `set ${first.lang} and ${second.lang} side by side: they part at ${parted}`,
        found: null,
        expected: 'the same blocks in the same order',
        remedy: null,
      },
    ]);
  }
  const stamps = first.blocks.some(isBand) ? [] : second.blocks.filter(isBand);
  const letter = zip(withoutBands(first.blocks), withoutBands(second.blocks), second);
  return fine({
    ...first,
    blocks: [
      ...first.blocks.filter(isBand),
      ...stamps.map((block) => inOther(block, second)),
      ...letter,
    ],
  });
}

/** Stamps differ in number (only a translation says that it is one) and open the page across both columns. */
function isBand(block: Block): boolean {
  return block.kind === 'notice' && block.look === 'band';
}

function withoutBands(blocks: readonly Block[]): readonly Block[] {
  return blocks.filter((block) => !isBand(block));
}

function inOther(block: Block, { lang, dir }: LetterDocument): Block {
  return { kind: 'section', lang, dir, keep: false, blocks: [block] };
}

function zip(
  first: readonly Block[],
  second: readonly Block[],
  other: LetterDocument,
): readonly Block[] {
  return first.flatMap((block, index): readonly Block[] => {
    const beside = second[index];
    if (beside === undefined) return [block];
    if (block.kind === 'rule' || block.kind === 'page-break') return [block];
    // Columns inside a column would be too narrow, so what holds a pair is opened; what it asks to keep stays together.
    const mayOpen = block.kind === 'section' && beside.kind === 'section' && opens(block);
    if (block.kind === 'pair' && beside.kind === 'pair') {
      return zip(childrenOf(block), childrenOf(beside), other);
    }
    if (mayOpen) {
      const opened = zip(block.blocks, beside.blocks, other);
      return block.keep ? [{ ...block, blocks: opened }] : opened;
    }
    return [
      {
        kind: 'pair',
        first: block,
        second: inOther(withoutLogo(beside), other),
      },
    ];
  });
}

/** A section that stays whole or has a sign stands beside the other whole, so its sentences may part into paragraphs differently. */
function opens(block: Block & { readonly kind: 'section' }): boolean {
  return (
    block.lang === null &&
    block.sign === undefined &&
    !isLetterhead(block) &&
    (!block.keep || block.blocks.some(holdsPair))
  );
}

function holdsPair(block: Block): boolean {
  return block.kind === 'pair' || (block.kind === 'section' && block.blocks.some(holdsPair));
}

/** Lines of an address belong together. */
function isLetterhead({ blocks }: Block & { readonly kind: 'section' }): boolean {
  return blocks.every(
    (block) =>
      block.kind === 'logo' ||
      (block.kind === 'paragraph' && ['address', 'label'].includes(block.look)) ||
      (block.kind === 'section' && isLetterhead(block)),
  );
}

/** One clinic, one sign on the page. */
function withoutLogo(block: Block): Block {
  if (block.kind !== 'section' || !isLetterhead(block)) return block;
  const blocks = block.blocks.filter(({ kind }) => kind !== 'logo').map(withoutLogo);
  return { ...block, blocks };
}

/** Where two lists of blocks stop having the same shape; null when they never do. */
function differenceOf(
  first: readonly Block[],
  second: readonly Block[],
  place: string,
): string | null {
  for (const [index, block] of first.entries()) {
    const here = `${place}, block ${index + 1}`;
    const beside = second[index];
    if (beside === undefined || signOf(block) !== signOf(beside)) return `${here} (${block.kind})`;
    if (block.kind === 'section' && !opens(block)) continue;
    const inner = differenceOf(childrenOf(block), childrenOf(beside), here);
    if (inner !== null) return inner;
  }
  return second.length > first.length ? `${place}, block ${first.length + 1}` : null;
}

function signOf(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `heading ${block.level}`;
    case 'list':
      return `list ${block.ordered} ${block.items.length}`;
    case 'table':
      return `table ${block.rows.map((row) => row.length).join(' ')}`;
    case 'notice':
      return `notice ${block.look}`;
    default:
      return block.kind;
  }
}

function childrenOf(block: Block): readonly Block[] {
  if (block.kind === 'pair') return [block.first, block.second];
  return block.kind === 'section' || block.kind === 'notice' ? block.blocks : [];
}
