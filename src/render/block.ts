// The letter's document model between markup and page: a small closed union, plain JSON.

import type { Direction } from '../direction.js';
import type { PictogramName } from '../letter/content.js';

export type { Direction };

/** A stretch of text with one look. `isolate` keeps a number and its unit in their own direction. */
export type Run = {
  readonly text: string;
  readonly strong: boolean;
  readonly lang: string | null;
  readonly isolate: Direction | null;
  readonly href: string | null;
};

export type ParagraphLook = 'body' | 'lead' | 'small' | 'caption' | 'label' | 'value' | 'address';
export type NoticeLook = 'summary' | 'urgent' | 'caution' | 'band' | 'plain';
export type TableLook = 'results' | 'plain';

export type Cell = {
  readonly header: boolean;
  readonly scope: 'row' | 'col' | null;
  readonly span: number;
  readonly blocks: readonly Block[];
};

export type Block =
  | { readonly kind: 'heading'; readonly level: 1 | 2 | 3; readonly runs: readonly Run[] }
  | { readonly kind: 'paragraph'; readonly look: ParagraphLook; readonly runs: readonly Run[] }
  | {
      readonly kind: 'list';
      readonly ordered: boolean;
      readonly items: readonly (readonly Block[])[];
      /** An empty box stands before each item, for the reader to tick. */
      readonly ticks?: true;
    }
  | {
      readonly kind: 'table';
      readonly look: TableLook;
      readonly caption: readonly Run[] | null;
      readonly head: readonly (readonly Cell[])[];
      readonly rows: readonly (readonly Cell[])[];
    }
  | { readonly kind: 'notice'; readonly look: NoticeLook; readonly blocks: readonly Block[] }
  /** The clinic's sign; what stands with it in its section goes beside it. */
  | { readonly kind: 'logo'; readonly src: string; readonly name: string }
  | { readonly kind: 'figure'; readonly scene: Scene; readonly caption: readonly Run[] | null }
  /** `keep` asks not to be split over pages. `sign` stands small where reading begins and says nothing of its own. */
  | {
      readonly kind: 'section';
      readonly lang: string | null;
      readonly dir: Direction | null;
      readonly keep: boolean;
      readonly sign?: PictogramName;
      readonly blocks: readonly Block[];
    }
  /** Two languages side by side, one block of each. */
  | {
      readonly kind: 'pair';
      readonly first: Block;
      readonly second: Block;
      /** The first column is the wider one; otherwise both are alike. */
      readonly wide?: true;
    }
  | { readonly kind: 'page-break' }
  | { readonly kind: 'rule' };

/**
 * A picture: shapes of the closed SVG subset, with a title and a description in words. One unit is one point at
 * the standard size; text anchors follow reading as in SVG: the start of right-to-left text is its right end.
 */
export type Scene = {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly description: string;
  readonly shapes: readonly Shape[];
};

/** `look` names a row of the look table (fill, stroke, dash): shapes carry no colours of their own. */
export type Shape =
  | {
      readonly kind: 'rect';
      readonly look: string;
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly radius: number;
    }
  | {
      readonly kind: 'circle';
      readonly look: string;
      readonly x: number;
      readonly y: number;
      readonly r: number;
    }
  | {
      readonly kind: 'line';
      readonly look: string;
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
    }
  | { readonly kind: 'path'; readonly look: string; readonly d: string }
  | {
      readonly kind: 'text';
      readonly look: string;
      readonly x: number;
      readonly y: number;
      readonly size: number;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly strong: boolean;
      readonly lang: string | null;
      readonly dir: Direction | null;
      readonly text: string;
    };

/** Repeated on every page, outside the reading order. `pageOf` holds {page} and {pages}. */
export type Running = {
  readonly runs: readonly Run[];
  readonly pageOf: string | null;
};

export type LetterDocument = {
  readonly lang: string;
  readonly dir: Direction;
  readonly title: string;
  readonly header: Running | null;
  readonly footer: Running | null;
  readonly blocks: readonly Block[];
};

/** How the paper is: size, base type size and whether two languages stand side by side. */
export type PageForm = {
  readonly paper: 'A4' | 'Letter';
  readonly size: 'dense' | 'compact' | 'smaller' | 'standard' | 'ample' | 'large' | 'extra-large';
};
