// Blocks arrive as letters are read; which of them were in an earlier letter leaves: what is made of these is worth keeping.
import type { Block } from './block.js';

const met = new WeakSet<Block>();

/** Says that this very block has come back. */
export function meetAgain(block: Block): void {
  met.add(block);
}

export function metBefore(block: Block): boolean {
  return met.has(block);
}
