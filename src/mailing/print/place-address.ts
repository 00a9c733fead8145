// A placed letter, an address and a window arrive; the letter leaves with the address where the window shows it.
import { type Checked, faulty, fine, nowhere } from '../../problem.js';
import type { Run } from '../../render/block.js';
import { look } from '../../render/look.js';
import { breakLines } from '../../render/pdf/lines.js';
import { composeParagraph } from '../../render/pdf/paragraph.js';
import type { Fonts } from '../../render/pdf/index.js';
import type { Ground, PlacedLetter, Tag, TextInk } from '../../render/pdf/placed.js';
import { points, type WindowPreset } from './windows.js';

/** Points; leading in parts of the size. Post offices ask for 10 to 12 (common practice, no source). */
const type = { size: 10, leading: 1.2 } as const;

const paragraphTag: Tag = {
  parent: 0,
  role: 'P',
  lang: null,
  alt: null,
  scope: null,
  span: 1,
  numbering: null,
  href: null,
};

/**
 * The address is read first, each line a paragraph. @param fonts with the languages of the letter loaded.
 * Problems: `address-too-large` for the window, `address-glyph` that no loaded face holds; neither is printed cut.
 */
export function placeAddress(
  letter: PlacedLetter,
  address: readonly string[],
  window: WindowPreset,
  fonts: Fonts,
): Checked<PlacedLetter> {
  const [first, ...others] = letter.pages;
  if (first === undefined) throw new Error('a letter without pages');
  const { clear } = window;
  const line = type.size * type.leading;
  const width = points(window.width - 2 * clear);
  if (address.length * line > points(window.height - 2 * clear)) return fault('address-too-large');
  const ink: TextInk[] = [];
  const atRight = address.every(isRightToLeft);
  for (const [nth, text] of address.entries()) {
    const dir = isRightToLeft(text) ? 'rtl' : 'ltr';
    const set = composeParagraph([plain(text)], { lang: letter.lang, dir, strong: false }, fonts);
    if (set.missing.length > 0) return fault('address-glyph');
    const [only, ...more] = breakLines(set, (width * 1000) / type.size, dir, fonts);
    if (only === undefined || more.length > 0) return fault('address-too-large');
    // One block to the eye: a name in Arabic above a street in Latin letters begins where the street begins.
    const start = atRight ? width - (only.width * type.size) / 1000 : 0;
    for (const piece of only.pieces)
      ink.push({
        kind: 'text',
        tag: letter.tags.length + nth,
        x: points(window.left + clear) + start + (piece.x * type.size) / 1000,
        y: points(window.top + clear) + nth * line + type.size,
        size: type.size,
        width: (piece.width * type.size) / 1000,
        file: piece.file,
        colour: look.colour.ink,
        glyphs: piece.glyphs,
      });
  }
  const tags = [...letter.tags, ...address.map(() => paragraphTag)];
  return fine({ ...letter, tags, pages: [{ ...first, ink: [...ink, ...first.ink] }, ...others] });
}

/** Short lines at the left edge of the first page where the sheet is folded. */
export function placeFolds(letter: PlacedLetter, window: WindowPreset): PlacedLetter {
  const marks = window.folds.map((fold) => ({
    kind: 'rule' as const,
    x: points(5),
    y: points(fold),
    width: points(4),
    thick: 0.5,
    colour: look.colour.line,
  }));
  return onFirstPage(letter, marks);
}

/** The box of the window, for a test page. */
export function placeBox(letter: PlacedLetter, window: WindowPreset): PlacedLetter {
  const box = {
    kind: 'box' as const,
    x: points(window.left),
    y: points(window.top),
    width: points(window.width),
    height: points(window.height),
    fill: null,
    edge: look.colour.ink,
    edgeWidth: 0.5,
    sides: 'all' as const,
  };
  return onFirstPage(letter, [box]);
}

function onFirstPage(letter: PlacedLetter, grounds: readonly Ground[]): PlacedLetter {
  const [first, ...others] = letter.pages;
  if (first === undefined) return letter;
  return { ...letter, pages: [{ ...first, grounds: [...grounds, ...first.grounds] }, ...others] };
}

function isRightToLeft(text: string): boolean {
  return /\p{Script=Arabic}|\p{Script=Hebrew}/u.test(text);
}

function plain(text: string): Run {
  return { text, strong: false, lang: null, isolate: null, href: null };
}

function fault(code: 'address-too-large' | 'address-glyph'): Checked<never> {
  return faulty([
    {
      code,
      place: nowhere,
      cannot: 'cannot print this address in the window',
      found: null,
      expected: 'lines that fit, in letters of the letter’s own script or Latin ones',
      remedy: null,
    },
  ]);
}
