// Nothing arrives; the words between layout and drawing leave: tags, ink and pages, all plain JSON in points.
import type { BoxLook } from '../look.js';
import type { Glyph } from './shape.js';

/** Tags of ISO 32000-1, 14.8.4, that a letter uses. */
export type Role =
  | 'Document'
  | 'Sect'
  | 'Div'
  | 'H1'
  | 'H2'
  | 'H3'
  | 'P'
  | 'L'
  | 'LI'
  | 'Lbl'
  | 'LBody'
  | 'Table'
  | 'Caption'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Figure'
  | 'Link'
  | 'Span';

/** One element of the tag tree; its place in the list is its name, and parents stand before children. */
export type Tag = {
  readonly parent: number | null;
  readonly role: Role;
  readonly lang: string | null;
  readonly alt: string | null;
  readonly scope: 'Row' | 'Column' | null;
  readonly span: number;
  readonly numbering: 'Disc' | 'Decimal' | null;
  readonly href: string | null;
};

/** A line's piece: `x` is its left edge, `y` its base line, from the top left corner of the page. */
export type TextInk = {
  readonly kind: 'text';
  readonly tag: number;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly width: number;
  readonly file: string;
  readonly colour: string;
  readonly glyphs: readonly Glyph[];
};

export type Outline = { readonly kind: 'outline'; readonly look: string; readonly path: string };

export type Letters = {
  readonly kind: 'letters';
  readonly look: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly file: string;
  readonly glyphs: readonly Glyph[];
};

/** What a picture draws, in its own units. */
export type SceneInk = Outline | Letters;

/** Drawn at a place of its own; `scale` points for each of its units. */
type ScaledInk = {
  readonly tag: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly scale: number;
};

/** A picture that says nothing of its own. */
export type SignGround = Omit<ScaledInk, 'tag'> & {
  readonly kind: 'sign';
  readonly name: string;
  readonly shapes: readonly Outline[];
};

export type PictureInk = ScaledInk & {
  readonly kind: 'picture';
  readonly shapes: readonly SceneInk[];
};

/** The clinic's logo as its data: URL. */
export type LogoInk = ScaledInk & { readonly kind: 'logo'; readonly src: string };

/** Holds a tag's place in the reading order where nothing is drawn, such as an empty cell. */
type EmptyInk = { readonly kind: 'empty'; readonly tag: number; readonly y: number };

export type Ink = TextInk | PictureInk | LogoInk | EmptyInk;

/** Grounds, edges and rules: drawn beneath, outside the reading order. */
export type Ground =
  | {
      readonly kind: 'box';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly fill: string | null;
      readonly edge: string | null;
      readonly edgeWidth: number;
      readonly sides: BoxLook['sides'] | 'end';
    }
  | {
      readonly kind: 'rule';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly thick: number;
      readonly colour: string;
    }
  | SignGround;

/** `running` is repeated on every page and read by nobody: header, footer, page number. */
export type PlacedPage = {
  readonly grounds: readonly Ground[];
  readonly ink: readonly Ink[];
  readonly running: readonly TextInk[];
};

export type PlacedLetter = {
  readonly lang: string;
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly tags: readonly Tag[];
  readonly pages: readonly PlacedPage[];
};
