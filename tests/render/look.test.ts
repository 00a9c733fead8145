// The table of look: contrast after WCAG 2.2, the same order in grey, every row present in the style sheet.
import { describe, expect, it } from 'vitest';
import { look, pictureScale, scaleOf } from '../../src/render/look.js';
import { styleSheet } from '../../src/render/style-sheet.js';

/** Relative luminance and contrast ratio as defined in WCAG 2.2. */
function luminance(colour: string): number {
  const channels = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255);
  const [red = 0, green = 0, blue = 0] = channels.map((c) =>
    c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [light = 0, deep = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (deep + 0.05);
}

describe('colours', () => {
  // WCAG 2.2, 1.4.6 (text, 7:1), 1.4.3 (4.5:1 at least) and 1.4.11 (parts of pictures, 3:1).
  it.each(['colour', 'dark'] as const)(
    'keep their contrast on every ground of the %s set',
    (name) => {
      const set = look[name];
      for (const text of [set.ink, set.quiet, set.accent]) {
        expect(contrast(text, set.paper)).toBeGreaterThanOrEqual(7);
        expect(contrast(text, set.wash)).toBeGreaterThanOrEqual(4.5);
        expect(contrast(text, set.sand)).toBeGreaterThanOrEqual(4.5);
      }
      expect(contrast(set.line, set.paper)).toBeGreaterThanOrEqual(3);
    },
  );

  it('checks the formula on the two ends of the scale', () => {
    // WCAG 2.2: black on white is 21:1, white on white 1:1.
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21);
    expect(contrast('#ffffff', '#ffffff')).toBe(1);
  });

  it('hold no red', () => {
    for (const colour of Object.values(look.colour)) {
      const [red = 0, green = 0] = [1, 3].map((at) =>
        Number.parseInt(colour.slice(at, at + 2), 16),
      );
      expect(red).toBeLessThanOrEqual(green + 2);
    }
  });
});

describe('the style sheet', () => {
  const sheet = styleSheet(
    { paper: 'A4', size: 'large' },
    { header: 'h', footer: 'f', pageOf: '{page}/{pages}' },
  );

  it.each([
    ...Object.keys(look.shapes).map((name) => `.shape-${name}{`),
    ...Object.keys(look.notice).map((name) => `.notice.${name}{`),
    ...Object.keys(look.table).map((name) => `table.${name} th`),
    ...['body', 'lead', 'small', 'caption', 'label', 'value', 'address'].map(
      (name) => `p.${name},`,
    ),
    ...['h1{', 'h2{', 'h3{'],
  ])('has a rule for %s', (rule) => {
    expect(sheet).toContain(rule);
  });

  it('prints on the paper asked for, at the size asked for', () => {
    expect(sheet).toContain('size:595.28pt 841.89pt');
    expect(sheet).toContain('font-size:18pt');
    expect(
      styleSheet({ paper: 'Letter', size: 'standard' }, { header: '', footer: '', pageOf: '' }),
    ).toContain('size:612pt 792pt');
  });

  it('numbers pages with the words of the letter', () => {
    expect(sheet).toContain('content:counter(page) "\\2f " counter(pages)');
  });

  it('never slants, underlines or capitalises for emphasis', () => {
    expect(sheet).not.toMatch(/italic|text-transform|text-decoration:underline|text-align:justify/);
  });
});

describe('the size of a picture', () => {
  it.each([
    ['as drawn at the standard size', 360, 493, 14, 1],
    ['larger in large print', 360, 493, 18, 18 / 14],
    ['never wider than its column', 360, 180, 14, 0.5],
  ])('is %s', (_, width, column, base, expected) => {
    expect(pictureScale({ width, shapes: [] }, column, base)).toBeCloseTo(expected);
  });
});

describe('the size of text', () => {
  const names = Object.keys(look.scale) as (keyof typeof look.scale)[];

  // RNIB and UK Association for Accessible Formats, large print: 16 to 18 point and above, for all of the text; from memory.
  it('is never under the base in large print, and is as in the table in any other', () => {
    for (const name of names) {
      expect(scaleOf(name, look.sizes.large), name).toBeGreaterThanOrEqual(1);
      expect(scaleOf(name, look.sizes['extra-large']), name).toBeGreaterThanOrEqual(1);
      expect(scaleOf(name, look.sizes.standard), name).toBe(look.scale[name]);
    }
  });

  it('is the same on paper and in the style sheet', () => {
    const sizeOf = (size: 'standard' | 'large') =>
      /p\.small,figcaption\.small\{font-size:([\d.]+)em/.exec(
        styleSheet({ paper: 'A4', size }, { header: '', footer: '', pageOf: '' }),
      )?.[1];
    expect([sizeOf('standard'), sizeOf('large')]).toEqual(['0.85', '1']);
  });
});
