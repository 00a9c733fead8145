// The told state: every word of one letter in one language, in order, with no look. Same shape in every language.
import type { Direction } from '../direction.js';
import type { Urgency } from '../advise/advice.js';
import type { Analogy, Analyte, Position } from '../terms.js';

/**
 * A whole sentence with the key of its message.
 * Values, units, ranges, dates and phones stand between U+2066 (or U+2067, U+2068) and U+2069,
 * so that they keep their own direction in every output.
 */
/** `key` names the message; of several that were joined, all, with a space between. */
export type Said = { readonly key: string; readonly text: string };

/** A stamp; `lang` is set where it is not in the letter's own language. */
export type Band = Said & { readonly lang: string | null };

export type HeadedList = { readonly heading: Said; readonly items: readonly Said[] };
export type SignedList = HeadedList & { readonly sign: PictogramName };

export type Passage = { readonly heading: Said; readonly paragraphs: readonly (readonly Said[])[] };

/** Numbers for the drawing, words for its labels; the scale is the drawing's business. */
export type NumberLine = {
  readonly kind: 'number-line';
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly labels: {
    /** The laboratory's own strings. */
    readonly value: string;
    readonly low: string | null;
    readonly high: string | null;
    readonly yours: Said;
    readonly usual: Said;
  };
  readonly title: Said;
  readonly description: Said;
};

/** Fill of each part from this patient's own positions; null where it was not measured. */
export type AnalogyPicture = {
  readonly kind: 'analogy';
  readonly set: Analogy;
  /** Stores (ferritin), carriers (transferrin or TIBC), load (saturation), goods (haemoglobin). */
  readonly levels: Readonly<Record<'store' | 'carriers' | 'load' | 'goods', Position | null>>;
  /** The store is shut away while ill. */
  readonly locked: boolean;
  readonly labels: Readonly<Record<'store' | 'carriers' | 'goods' | 'reuse', Said>>;
  readonly title: Said;
  readonly description: Said;
};

/** Two to seven points of one test, oldest first. */
export type Trend = {
  readonly kind: 'trend';
  readonly points: readonly {
    readonly value: number;
    readonly label: string;
    readonly date: string;
  }[];
  readonly low: number | null;
  readonly high: number | null;
  readonly usual: Said;
  readonly title: Said;
  readonly description: Said;
};

export type PictogramName =
  | 'blood-test'
  | 'calendar'
  | 'clinician'
  | 'drink'
  | 'food'
  | 'fruit'
  | 'phone'
  | 'portion'
  | 'tablets'
  | 'warning';

/** Stands beside one idea of the easy-read letter. */
export type Pictogram = {
  readonly kind: 'pictogram';
  readonly name: PictogramName;
  readonly title: Said;
  readonly description: Said;
};

export type Picture = NumberLine | AnalogyPicture | Trend | Pictogram;

export type ResultTold = {
  readonly analyte: Analyte;
  readonly position: Position | null;
  /** Everyday name, then what it is, where it lies, what that means. */
  readonly name: Said;
  readonly whatItIs: Said;
  /** Copied from the laboratory, byte for byte. */
  readonly value: string;
  readonly unit: string;
  readonly interval: string | null;
  readonly valueLine: Said;
  readonly verdict: Said;
  /** What the verdict may not be read without: a limit of the method, laboratory and guideline apart, worked out. */
  readonly provisos: readonly Said[];
  /** The provisos and what a result like this means. */
  readonly meaning: readonly Said[];
  readonly change: Said | null;
  readonly line: NumberLine | null;
  readonly trend: Trend | null;
};

/** `sign` is what the step is about, drawn beside it. */
export type StepTold = {
  readonly text: Said;
  readonly words: string | null;
  readonly sign: PictogramName;
};

export type Content = {
  readonly lang: string;
  readonly dir: Direction;
  readonly title: Said;
  /** Text of the document's title: no name of the patient in it. */
  readonly documentTitle: string;
  readonly sender: {
    readonly name: string;
    readonly lines: readonly string[];
    /** A data: URL, or null. */
    readonly logo: string | null;
  };
  readonly about: readonly Said[];
  readonly greeting: Said;
  /** Stamps that open every page: example, not checked, translation not checked. */
  readonly bands: readonly Band[];
  /** Opening lines of a letter that was held and then released. */
  readonly released: readonly Said[];
  readonly summary: { readonly heading: Said; readonly sentences: readonly Said[] };
  readonly yourSteps: {
    readonly heading: Said;
    /** What the boxes before the steps are for. */
    readonly howToTick: Said;
    readonly steps: readonly StepTold[];
  };
  readonly ourSteps: { readonly heading: Said; readonly steps: readonly StepTold[] };
  readonly results: {
    readonly heading: Said;
    readonly howToRead: readonly Said[];
    readonly rows: readonly ResultTold[];
    readonly notMeasured: readonly Said[];
  };
  readonly meaning: Passage;
  readonly picture: (Passage & { readonly figure: AnalogyPicture }) | null;
  readonly food:
    | (Passage & {
        /** Names of foods; the sign shows what a helping may look like. */
        readonly foods: readonly SignedList[];
        /** Swaps and cautions, each a whole sentence. */
        readonly lists: readonly HeadedList[];
      })
    | null;
  readonly tablets: (Passage & { readonly items: readonly Said[] }) | null;
  readonly help: {
    readonly heading: Said;
    /** True when help moves up to third place. */
    readonly first: boolean;
    readonly groups: readonly {
      readonly urgency: Urgency;
      readonly heading: Said;
      /** Short phrases: a list. */
      readonly lines: readonly Said[];
    }[];
    /** Whole sentences after the groups: what to do when the clinic is closed. */
    readonly notes: readonly Said[];
  };
  readonly choices: Passage;
  readonly contact: {
    readonly heading: Said;
    readonly lines: readonly Said[];
    /** Interpreter, large print: how else this letter can be had. */
    readonly formats: readonly Said[];
  };
  /** Heading of what closes the letter: cautions, choices and other formats. */
  readonly closing: { readonly heading: Said };
  readonly cautions: readonly Said[];
  readonly signature: readonly Said[];
  readonly running: { readonly header: Said; readonly footer: Said; readonly pageOf: Said };
};
