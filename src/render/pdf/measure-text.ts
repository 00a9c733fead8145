// Runs and their look arrive; one strip for each line leaves, tagged and placed across the column.
import type { Run } from '../block.js';
import { look, type Scale, scaleOf } from '../look.js';
import { addTag, leftOf, type Bench, type Place } from './frame.js';
import type { Glue, Strip } from './flow.js';
import { breakLines } from './lines.js';
import { composeParagraph, type Paragraph } from './paragraph.js';
import type { TextInk } from './placed.js';

/** How a paragraph is set. `tag` is the element its lines belong to. */
export type TextStyle = {
  readonly look: keyof Scale;
  readonly tag: number;
  readonly before: number;
  readonly after: number;
  /** Holds all lines together, and to what follows. */
  readonly lead: boolean;
};

/** The paragraph at its look, shaped; what no face holds is noted on the bench. */
export function composeAt(
  runs: readonly Run[],
  at: keyof Scale,
  place: Place,
  bench: Bench,
): Paragraph {
  const { strong } = look.text[at];
  const setting = { lang: place.lang, dir: place.dir, strong };
  const paragraph = composeParagraph(runs, setting, bench.fonts);
  for (const point of paragraph.missing) bench.missing.add(point);
  return paragraph;
}

/**
 * Lines of a paragraph, one strip each. Two lines at least stay together at either end of a page.
 * @example measureText(runs, { look: 'body', tag, before: 0, after: 7, lead: false }, place, bench).length
 */
export function measureText(
  runs: readonly Run[],
  style: TextStyle,
  place: Place,
  bench: Bench,
): readonly Strip[] {
  const paragraph = composeAt(runs, style.look, place, bench);
  const size = bench.base * scaleOf(style.look, bench.base);
  const height = size * leadingOf(style.look, paragraph);
  const baseline = baselineIn(height, size, paragraph);
  const tags = tagsOfRuns(runs, style.tag, place, bench);
  const { colour } = look.text[style.look];
  // Lines of an address or of a small result are read one by one: only running text has a measure.
  const most = style.look === 'address' ? Number.POSITIVE_INFINITY : bench.measure * 1000;
  const room = Math.min((place.width * 1000) / size, most);
  const lines = breakLines(paragraph, room, place.dir, bench.fonts);
  return lines.map((line, nth) => {
    const left = leftOf(place, 0, (line.width * size) / 1000);
    const ink = line.pieces.map((piece): TextInk => {
      const { file, glyphs } = piece;
      const linked = runs[piece.run]?.href ?? null;
      return {
        kind: 'text',
        tag: tags[piece.run] ?? style.tag,
        x: left + (piece.x * size) / 1000,
        y: baseline,
        size,
        width: (piece.width * size) / 1000,
        file,
        colour: linked === null ? colour : look.colour.accent,
        glyphs,
      };
    });
    return {
      kind: 'strip',
      before: nth === 0 ? style.before : 0,
      after: nth === lines.length - 1 ? style.after : 0,
      glue: style.lead ? 2 : glueOf(nth, lines.length),
      height,
      baseline,
      ink,
      grounds: [],
      repeat: null,
    };
  });
}

/** Neither the first nor the last line of a paragraph stands alone on a page. */
function glueOf(nth: number, lines: number): Glue {
  return lines > 1 && (nth === 0 || nth === lines - 2) ? 2 : 0;
}

function leadingOf(at: keyof Scale, paragraph: Paragraph): number {
  const heading = at === 'h1' || at === 'h2' || at === 'h3';
  return paragraph.leading - (heading ? look.leading.body - look.leading.heading : 0);
}

/** Ink stands in the middle of its line. */
export function baselineIn(height: number, size: number, paragraph: Paragraph): number {
  const { ascent, descent } = paragraph;
  return (height - ((ascent + descent) * size) / 1000) / 2 + (ascent * size) / 1000;
}

/** A link and a stretch in another language are elements of their own; the rest belongs to the paragraph. */
function tagsOfRuns(
  runs: readonly Run[],
  tag: number,
  place: Place,
  bench: Bench,
): readonly number[] {
  return runs.map((run) => {
    const lang = run.lang === place.lang ? null : run.lang;
    if (run.href !== null) return addTag(bench, tag, 'Link', { lang, href: run.href });
    return lang === null ? tag : addTag(bench, tag, 'Span', { lang });
  });
}
