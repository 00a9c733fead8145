// A placed page arrives; the box round the ink of every glyph leaves, in points from the top left corner.
import type { Fonts } from '../../../src/render/pdf/index.js';
import type { PlacedPage, TextInk } from '../../../src/render/pdf/placed.js';

export type InkBox = {
  readonly text: string;
  readonly baseline: number;
  readonly size: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};

/** Extents come from HarfBuzz, not from our own widths. Glyphs without ink are left out. */
export function inkBoxes(page: PlacedPage, fonts: Fonts): readonly InkBox[] {
  const texts = page.ink.filter((one) => one.kind === 'text');
  return [...texts, ...page.running].flatMap((one) => boxesOf(one, fonts));
}

function boxesOf({ x, y, size, file, glyphs }: TextInk, fonts: Fonts): readonly InkBox[] {
  const { font, perEm } = fonts.faceOfFile(file);
  const scale = size / perEm;
  let pen = x;
  return glyphs.flatMap(({ id, text, advance, dx, dy }) => {
    const at = { x: pen + (dx * size) / 1000, y: y - (dy * size) / 1000 };
    pen += (advance * size) / 1000;
    const extents = font.glyphExtents(id);
    if (extents === null || extents === undefined || extents.width === 0) return [];
    const left = at.x + extents.xBearing * scale;
    const top = at.y - extents.yBearing * scale;
    const right = left + extents.width * scale;
    const bottom = top - extents.height * scale;
    return [{ text, baseline: y, size, left, right, top, bottom }];
  });
}

/**
 * Pairs of glyphs of different lines whose ink stands in the same place, as text.
 * @param touch em that two boxes may share: hairs that meet, or letters that slant, whose boxes are larger than they are.
 */
export function collisions(boxes: readonly InkBox[], touch = 0.02): readonly string[] {
  const sorted = [...boxes].sort((a, b) => a.top - b.top);
  return sorted.flatMap((one, at) => {
    const found: string[] = [];
    for (const other of sorted.slice(at + 1)) {
      const slack = touch * Math.min(one.size, other.size);
      if (other.top > one.bottom) break;
      const clear =
        other.top > one.bottom - slack ||
        other.left > one.right - slack ||
        other.right < one.left + slack ||
        Math.abs(other.baseline - one.baseline) < 1;
      if (!clear) found.push(`${one.text} at ${one.baseline}, ${other.text} at ${other.baseline}`);
    }
    return found;
  });
}
