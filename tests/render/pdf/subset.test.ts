// A face is cut down; outlines, widths and checksums are read back by other means than ours.
import { readFileSync } from 'node:fs';
import { create } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { cutFont } from '../../../src/render/pdf/subset.js';

const noto = readFileSync('dist/fonts/NotoSans-Regular.ttf');
const tall = readFileSync('dist/fonts/NotoNastaliqUrdu-Regular.ttf');

function opened(bytes: Uint8Array) {
  const font = create(Buffer.from(bytes));
  if (!('getGlyph' in font)) throw new Error('one font was expected');
  return font;
}

describe('a face cut down', () => {
  // Read by fontkit, a general font library; the tables as OpenType 1.9.1 describes them.
  it.each([
    ['NotoSans', noto, [36, 37, 68, 200, 231, 1000]],
    ['NotoNastaliqUrdu', tall, [3, 40, 300, 900, 1695]],
  ])('draws each glyph of %s as the whole face does, as wide', (_, bytes, glyphs) => {
    const whole = opened(bytes);
    const cut = cutFont(bytes, glyphs);
    const small = opened(cut.bytes);
    for (const glyph of glyphs) {
      const number = cut.numbers.get(glyph) ?? -1;
      expect(number).toBeGreaterThan(0);
      const [one, other] = [whole.getGlyph(glyph), small.getGlyph(number)];
      expect(other.path.toSVG()).toBe(one.path.toSVG());
      expect(other.advanceWidth).toBe(one.advanceWidth);
    }
  });

  it('keeps the parts that an accented letter is composed of, and numbers them anew', () => {
    const whole = opened(noto);
    const [agrave] = whole.glyphsForString('\u00E0');
    const [a] = whole.glyphsForString('a');
    if (agrave === undefined || a === undefined) throw new Error('the face lacks a letter');
    const { numbers } = cutFont(noto, [agrave.id]);
    expect(numbers.has(a.id)).toBe(true);
    expect([...numbers.values()]).toEqual([...numbers.keys()].map((_, number) => number));
    expect(numbers.get(0)).toBe(0);
  });

  // OpenType 1.9.1, otff: the sum over a whole font file, as 32-bit numbers, is 0xB1B0AFBA.
  it('bears the checksums of the standard, and is a small part of the whole', () => {
    const { bytes } = cutFont(noto, [36, 37, 38]);
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    let sum = 0;
    for (let at = 0; at < bytes.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
    expect(sum).toBe(0xb1b0afba);
    expect(bytes.length).toBeLessThan(2000);
  });

  it('makes the same file of the same glyphs in any order', () => {
    expect(cutFont(noto, [68, 36, 36]).bytes).toEqual(cutFont(noto, [36, 68]).bytes);
  });

  it('refuses a file that is no TrueType font', () => {
    expect(() => cutFont(new Uint8Array(64), [1])).toThrow('A face has no table');
  });
});
