// Runs of text arrive; units that a line may not divide leave, shaped, with their levels (sizes still unknown).
import type { Direction } from '../../direction.js';
import type { Run } from '../block.js';
import { isolates, isUnpainted, levelsOf } from './bidi.js';
import { breakPlaces } from './breaks.js';
import { latin, type Family } from './faces.js';
import type { Fonts } from './fonts.js';
import type { Shaped } from './shape.js';

/** Text of one run, face and level. `run` is its place among the paragraph's runs. */
export type Piece = {
  readonly run: number;
  readonly file: string;
  readonly level: number;
  readonly lang: string;
  readonly text: string;
  readonly shaped: Shaped;
};

/** What stays on one line: pieces, then the spaces that vanish at a line's end. Widths in thousandths of an em. */
export type Unit = {
  readonly pieces: readonly Piece[];
  readonly spaces: readonly Piece[];
  readonly width: number;
  readonly spaceWidth: number;
  readonly must: boolean;
};

export type Paragraph = {
  readonly units: readonly Unit[];
  /** Code points that no face holds; nothing is drawn while there is one. */
  readonly missing: readonly number[];
  /** Times the size of the text: the tallest leading among the families used, and the base line's place. */
  readonly leading: number;
  readonly ascent: number;
  readonly descent: number;
};

export type Setting = {
  readonly lang: string;
  readonly dir: Direction;
  readonly strong: boolean;
};

/** A number with its unit stays on one line up to this length; a longer isolate may break. */
const longestWhole = 24;

/** UTF-16 unit by unit: which run it belongs to, and in which face it will be drawn. */
type Plan = {
  readonly text: string;
  readonly runOf: readonly number[];
  readonly whole: readonly (readonly [number, number])[];
};

/**
 * Cuts, orders and shapes a paragraph once; breaking into lines comes later and depends on the width.
 * @param setting language and direction of the surroundings; `strong` sets every run bold.
 * @example composeParagraph(runs, { lang: 'en', dir: 'ltr', strong: false }, fonts).units.length
 */
export function composeParagraph(runs: readonly Run[], setting: Setting, fonts: Fonts): Paragraph {
  const key = JSON.stringify([setting.lang, setting.dir, setting.strong, runs]);
  const known = fonts.paragraphs.get(key);
  if (known !== undefined) return known;
  const paragraph = compose(runs, setting, fonts);
  // A face may still be borrowed for what is missing.
  if (paragraph.missing.length === 0) fonts.paragraphs.set(key, paragraph);
  return paragraph;
}

function compose(runs: readonly Run[], setting: Setting, fonts: Fonts): Paragraph {
  const plan = planText(runs);
  const levels = levelsOf(plan.text, setting.dir);
  const missing = new Set<number>();
  const used = new Set<Family>(fonts.families(setting.lang).slice(0, 1));
  const langOf = (run: number) => runs[run]?.lang ?? setting.lang;
  const family = familyPlan(plan, levels, langOf, fonts, missing);
  const piecesOf = (from: number, to: number): Piece[] => {
    const pieces: Piece[] = [];
    let start = from;
    for (let at = from; at <= to; at += 1) {
      const steers = at < to && isUnpainted(plan.text.charAt(at));
      if (at < to && !steers && at > start && sameLook(at - 1, at)) continue;
      if (at === start && at < to && !steers) continue;
      if (at > start) pieces.push(pieceOf(start, at));
      start = steers ? at + 1 : at;
    }
    return pieces;
  };
  const sameLook = (a: number, b: number) =>
    plan.runOf[a] === plan.runOf[b] && family[a] === family[b] && levels[a] === levels[b];
  const pieceOf = (from: number, to: number): Piece => {
    const run = plan.runOf[from] ?? 0;
    const drawnIn = family[from] ?? latin;
    used.add(drawnIn);
    const strong = setting.strong || (runs[run]?.strong ?? false);
    const face = fonts.face(drawnIn, strong);
    const level = levels[from] ?? 0;
    const text = plan.text.slice(from, to);
    const lang = langOf(run);
    const shaped = fonts.shape(face, text, level % 2 === 1, lang);
    for (const glyph of shaped.glyphs) {
      if (glyph.id === 0) missing.add(glyph.text.codePointAt(0) ?? 0);
    }
    return { run, file: face.file, level, lang, text, shaped };
  };
  const units = unitBounds(plan, setting.lang).map(({ from, end, to, must }): Unit => {
    const pieces = piecesOf(from, end);
    const spaces = piecesOf(end, to);
    return { pieces, spaces, width: widthOf(pieces), spaceWidth: widthOf(spaces), must };
  });
  const faces = [...used].map((one) => fonts.face(one, setting.strong));
  return {
    units,
    missing: [...missing],
    leading: Math.max(...[...used].map((one) => one.leading)),
    ascent: Math.max(...faces.map((face) => face.ascent)),
    descent: Math.max(...faces.map((face) => face.descent)),
  };
}

export function widthOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, piece) => sum + piece.shaped.width, 0);
}

/** An isolated run is wrapped in the control characters that UAX 9 gives for it; they are not painted. */
function planText(runs: readonly Run[]): Plan {
  let text = '';
  const runOf: number[] = [];
  const whole: [number, number][] = [];
  runs.forEach((run, nth) => {
    const added =
      run.isolate === null ? run.text : `${isolates[run.isolate]}${run.text}${isolates.end}`;
    if (run.isolate !== null && run.text.length <= longestWhole) {
      whole.push([text.length, text.length + added.length]);
    }
    text += added;
    for (let at = 0; at < added.length; at += 1) runOf.push(nth);
  });
  return { text, runOf, whole };
}

const space = /[ \u1680\u2000-\u2006\u2008-\u200A\u205F\u3000]/;

function unitBounds(plan: Plan, lang: string) {
  const inWhole = (at: number) => plan.whole.some(([from, to]) => at > from && at < to);
  let from = 0;
  return breakPlaces(plan.text, lang)
    .filter(({ at, must }) => must || !inWhole(at))
    .map(({ at, must }) => {
      let end = at;
      while (end > from && /[\n\r]/.test(plan.text.charAt(end - 1))) end -= 1;
      const to = end;
      // Closing isolates may stand after a space; a space before them still vanishes.
      while (end > from && spaceOrControl(plan.text.charAt(end - 1))) end -= 1;
      const bounds = { from, end, to, must };
      from = at;
      return bounds;
    });
}

function spaceOrControl(character: string): boolean {
  return space.test(character) || isUnpainted(character);
}

const joins = /^(?:\p{M}|\u200C|\u200D|[\uFE00-\uFE0F])$/u;
/** Letters, digits and signs of numbers and units: one design in '12.5 µg/L' beside any script. */
const plainLatin = /^[\x21-\x7E\u00B0-\u00B5\u00D7\u2010-\u2013\u2212\u2264\u2265]$/;

/**
 * Which family draws each UTF-16 unit: for basic Latin at an even level the Latin one, so that '98 g/L' is
 * one design in any script; otherwise the first of the language's order that holds the whole character with
 * its marks. Spaces follow what stands before them.
 */
function familyPlan(
  plan: Plan,
  levels: Uint8Array,
  langOf: (run: number) => string,
  fonts: Fonts,
  missing: Set<number>,
): readonly Family[] {
  const chosen: Family[] = [];
  let previous: Family | null = null;
  for (const { index, segment } of graphemes(plan.text)) {
    const order = fonts.families(langOf(plan.runOf[index] ?? 0));
    const points = [...segment].filter((character) => !joins.test(character));
    const covering = (family: Family) =>
      points.every((character) => fonts.face(family, false).covers(character.codePointAt(0) ?? 0));
    let family: Family | undefined;
    if (isUnpainted(segment) || /^\s/.test(segment)) family = previous ?? order[0];
    if (family !== undefined && !isUnpainted(segment) && !covering(family)) family = undefined;
    if (plainLatin.test(segment) && (levels[index] ?? 0) % 2 === 0) family = latin;
    family ??= order.find(covering);
    if (family === undefined) {
      const lacking = points.find((character) =>
        order.every((one) => !fonts.face(one, false).covers(character.codePointAt(0) ?? 0)),
      );
      missing.add((lacking ?? segment).codePointAt(0) ?? 0);
      family = latin;
    }
    previous = family;
    for (let at = 0; at < segment.length; at += 1) chosen.push(family);
  }
  return chosen;
}

const simple = /^[\x20-\x7E\u00A0-\u02FF\u2010-\u2027\u2066-\u2069]*$/;
let segmenter: Intl.Segmenter | null = null;

/** Characters as readers see them, with their marks; the short way where every unit is a character. */
export function graphemes(
  text: string,
): Iterable<{ readonly index: number; readonly segment: string }> {
  if (!simple.test(text)) {
    segmenter ??= new Intl.Segmenter('und', { granularity: 'grapheme' });
    return segmenter.segment(text);
  }
  return Array.from(text, (segment, index) => ({ index, segment }));
}
