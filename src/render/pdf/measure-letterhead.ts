// A logo and the lines beside it arrive; strips leave: the logo where reading begins, the lines next to it.
import type { Block } from '../block.js';
import { readLogo } from '../logo.js';
import { look } from '../look.js';
import { addTag, inset, leftOf, type Bench, type Place } from './frame.js';
import type { Element } from './flow.js';

/**
 * The logo stands on the first line's strip, so that nothing parts them. It is a figure whose alternative is the
 * clinic's name, as in the HTML letter: who feels or hears the page learns what the picture is, and the clinic's
 * name follows in letters.
 */
export function measureLetterhead(
  { src, name }: Extract<Block, { kind: 'logo' }>,
  others: readonly Block[],
  place: Place,
  bench: Bench,
  measureAll: (blocks: readonly Block[], place: Place, bench: Bench) => readonly Element[],
): readonly Element[] {
  const logo = readLogo(src);
  if (logo === null) throw new Error('A logo passed the reader of markup and cannot be drawn');
  const { height: most, share, gap } = look.logo;
  const scale = Math.min((most * bench.base) / logo.height, (share * place.width) / logo.width);
  const [width, height] = [logo.width * scale, logo.height * scale];
  const tag = addTag(bench, place.tag, 'Figure', { alt: name });
  const x = leftOf(place, 0, width);
  const ink = { kind: 'logo', tag, x, y: 0, width, height, scale, src } as const;
  const lines = measureAll(others, inset(place, width + gap * bench.base, 0), bench);
  const [first, ...more] = lines;
  if (first?.kind !== 'strip') {
    const alone = { kind: 'strip', before: 0, after: 0, glue: 2, height, baseline: null } as const;
    return [{ ...alone, ink: [ink], grounds: [], repeat: null }, ...lines];
  }
  const marked = [{ ...first, ink: [ink, ...first.ink] }, ...more];
  const beside = marked.reduce((sum, one) => sum + (one.kind === 'strip' ? one.height : 0), 0);
  return marked.map((element, at) =>
    at === marked.length - 1 && element.kind === 'strip'
      ? { ...element, height: element.height + Math.max(0, height - beside) }
      : { ...element, glue: 2 },
  );
}
