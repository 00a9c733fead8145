// Letters and forms go in; places on pages are checked against plain rules of typesetting (common practice, no source).
import { beforeAll, describe, expect, it } from 'vitest';
import type { Block, LetterDocument, PageForm } from '../../../src/render/block.js';
import { look } from '../../../src/render/look.js';
import { type Fonts, layOut } from '../../../src/render/pdf/index.js';
import type { PlacedLetter, PlacedPage } from '../../../src/render/pdf/placed.js';
import { a4, cell, heading, letter, paragraph, run, testFonts } from './sample.js';

let fonts: Fonts;

beforeAll(async () => {
  fonts = await testFonts();
  await fonts.load(['en', 'pl', 'ar']);
});

function placed(document: LetterDocument, form: PageForm = a4): PlacedLetter {
  const made = layOut(document, form, fonts);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

/** Lines of a page, top to bottom, as text. */
function lines(page: PlacedPage | undefined): readonly string[] {
  const found = new Map<number, string>();
  for (const ink of page?.ink ?? []) {
    if (ink.kind !== 'text') continue;
    const words = ink.glyphs.map((glyph) => glyph.text).join('');
    found.set(ink.y, (found.get(ink.y) ?? '') + words);
  }
  return [...found].sort(([a], [b]) => a - b).map(([, text]) => text.trim());
}

const sentence =
  'One plain sentence that is long enough to fill the line and go on to the next one.';

describe('pages', () => {
  it('are plain JSON', () => {
    const made = placed(letter([heading(1, 'Title'), paragraph(sentence)]));
    expect(JSON.parse(JSON.stringify(made))).toEqual(made);
  });

  it('never end with a heading, wherever it falls', () => {
    for (let before = 10; before < 60; before += 1) {
      const filler = Array.from({ length: before }, (_, nth) => paragraph(`Line ${nth}`));
      const made = placed(letter([...filler, heading(2, 'A heading'), paragraph(sentence)]));
      for (const page of made.pages) expect(lines(page).at(-1)).not.toBe('A heading');
    }
  });

  it('leave no first or last line of a paragraph alone', () => {
    const long = paragraph(Array(5).fill(sentence).join(' '));
    for (let before = 10; before < 40; before += 1) {
      const filler = Array.from({ length: before }, (_, nth) => paragraph(`Line ${nth}`));
      const made = placed(letter([...filler, long]));
      for (const page of made.pages) {
        const own = lines(page).filter((line) => !line.startsWith('Line')).length;
        expect(own).not.toBe(1);
      }
    }
  });

  it('never divide a notice that fits on one', () => {
    const notice: Block = {
      kind: 'notice',
      look: 'urgent',
      blocks: Array(6).fill(paragraph(sentence)),
    };
    for (let before = 10; before < 30; before += 1) {
      const filler = Array.from({ length: before }, (_, nth) => paragraph(`Line ${nth}`));
      const made = placed(letter([...filler, notice]));
      expect(made.pages.flatMap((page) => page.grounds).length).toBe(1);
    }
  });

  it('divide a notice that is taller than one, each part in its own frame', () => {
    const notice: Block = {
      kind: 'notice',
      look: 'plain',
      blocks: Array(40).fill(paragraph(sentence)),
    };
    const made = placed(letter([notice]));
    expect(made.pages.length).toBeGreaterThan(1);
    expect(made.pages.every((page) => page.grounds.length === 1)).toBe(true);
    expect(made.pages.flatMap(lines).length).toBe(80);
  });

  it('keep a section whole when it asks for it', () => {
    const blocks = Array(6).fill(paragraph('Kept together'));
    for (let before = 10; before < 30; before += 1) {
      const filler = Array.from({ length: before }, (_, nth) => paragraph(`Line ${nth}`));
      const kept: Block = { kind: 'section', lang: null, dir: null, keep: true, blocks };
      const made = placed(letter([...filler, kept]));
      const counts = made.pages.map(
        (page) => lines(page).filter((line) => line === 'Kept together').length,
      );
      expect(counts.filter((count) => count > 0)).toEqual([6]);
    }
  });

  it('lose no line and stay inside the margins', () => {
    const blocks = Array.from({ length: 120 }, (_, nth) => paragraph(`Line ${nth}`));
    const made = placed(letter(blocks));
    expect(made.pages.flatMap(lines)).toEqual(
      Array.from({ length: 120 }, (_, nth) => `Line ${nth}`),
    );
    const { margin, height } = look.page.A4;
    for (const ink of made.pages.flatMap((page) => page.ink)) {
      expect(ink.y).toBeGreaterThan(margin);
      expect(ink.y).toBeLessThan(height - margin);
    }
  });

  it('leave no short word alone on the last line of a paragraph', () => {
    const words =
      'We will call you in the week after your visit, or you can call us then to book it.';
    for (let drop = 0; drop < 30; drop += 1) {
      const block = paragraph(words.slice(drop));
      const made = placed(letter([{ kind: 'pair', first: block, second: paragraph('') }]));
      const last = lines(made.pages[0]).at(-1) ?? '';
      expect(last.split(' ').length).toBeGreaterThan(1);
    }
  });

  it('do not hold a label to what follows its own part', () => {
    const part: Block = {
      kind: 'section',
      lang: null,
      dir: null,
      keep: true,
      blocks: [heading(3, 'Name'), { kind: 'paragraph', look: 'label', runs: [run('Value')] }],
    };
    const made = placed(letter(Array(30).fill(part)));
    const counts = made.pages.map((page) => lines(page).filter((line) => line === 'Name').length);
    expect(counts[0]).toBeGreaterThan(10);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(30);
  });

  it('number no more for the sake of a few lines, which closer parts take in', () => {
    const parts = Array.from({ length: 400 }, (_, nth) => paragraph(`Line ${nth}`));
    const counts = Array.from({ length: 90 }, (_, nth) => {
      const { pages } = placed(letter(parts.slice(0, 100 + nth)));
      return { pages: pages.length, last: lines(pages.at(-1)).length };
    });
    const most = Math.max(...counts.map(({ last }) => last));
    for (const { pages, last } of counts) {
      if (pages === 4) expect(last).toBeGreaterThan(most / 4);
    }
    expect(new Set(counts.map(({ pages }) => pages))).toContain(4);
  });

  it('begin anew where the letter asks', () => {
    const made = placed(letter([paragraph('One'), { kind: 'page-break' }, paragraph('Two')]));
    expect(made.pages.map(lines)).toEqual([['One'], ['Two']]);
  });
});

describe('tables', () => {
  const rows = (count: number): Block => ({
    kind: 'table',
    look: 'results',
    caption: null,
    head: [['Test', 'Result'].map((words) => cell(words, { header: true, scope: 'col' }))],
    rows: Array.from({ length: count }, (_, nth) => [
      cell(`Test ${nth}`, { header: true, scope: 'row' }),
      cell(`${nth} g/L`),
    ]),
  });

  it('show their head again on every page, read once', () => {
    const made = placed(letter([rows(60)], { header: null, footer: null }));
    expect(made.pages.length).toBeGreaterThan(1);
    const heads = made.pages.map((page) =>
      lines(page).filter((line) => line.includes('TestResult')),
    );
    expect(heads.map((found) => found.length)).toEqual([1, ...made.pages.slice(1).map(() => 0)]);
    for (const page of made.pages.slice(1)) expect(page.running.length).toBe(2);
  });

  it('stand their cells one under another when the print is too large, and cut no word', () => {
    const words = ['Haemoglobin', '98 g/L', '120–160', '101 g/L', 'Lower', 'Below the range.'];
    const head = ['Test', 'Your result', 'Usual range', 'Last time', 'Change', 'Meaning'];
    const table: Block = {
      kind: 'table',
      look: 'results',
      caption: null,
      head: [head.map((text) => cell(text, { header: true, scope: 'col' }))],
      rows: [words.map((text, nth) => cell(text, nth === 0 ? { header: true, scope: 'row' } : {}))],
    };
    const made = placed(letter([table]), { paper: 'A4', size: 'extra-large' });
    expect(made.pages.flatMap(lines)).toEqual([
      'Haemoglobin',
      'Your result98 g/L',
      'Usual range120–160',
      'Last time101 g/L',
      'ChangeLower',
      'MeaningBelow the range.',
    ]);
  });
});

describe('columns side by side', () => {
  const long = (words: string) => paragraph(Array(60).fill(words).join(' '));

  it('begin at one height', () => {
    const made = placed(
      letter([{ kind: 'pair', first: paragraph('First'), second: paragraph('Second') }]),
    );
    const [first, second] = made.pages[0]?.ink ?? [];
    expect(first?.y).toBe(second?.y);
  });

  it('stand one under the other in large print', () => {
    const pair: Block = { kind: 'pair', first: paragraph('First'), second: paragraph('Second') };
    const made = placed(letter([pair]), { paper: 'A4', size: 'extra-large' });
    expect(made.pages.flatMap(lines)).toEqual(['First', 'Second']);
  });

  it('go on side by side over the page', () => {
    const filler = Array.from({ length: 15 }, (_, nth) => paragraph(`Line ${nth}`));
    const pair: Block = {
      kind: 'pair',
      first: long('Left words here.'),
      second: long('Right words there.'),
    };
    const made = placed(letter([...filler, pair]));
    expect(made.pages.length).toBe(2);
    for (const page of made.pages) {
      expect(lines(page).some((line) => line.includes('Left') && line.includes('Right'))).toBe(
        true,
      );
    }
  });
});

describe('right-to-left letters', () => {
  const mirrored = (blocks: readonly Block[]) =>
    placed(letter(blocks, { lang: 'en', dir: 'rtl', header: null, footer: null }));

  it('set lines against the right margin', () => {
    const [ink] = mirrored([paragraph('Short')]).pages[0]?.ink ?? [];
    if (ink?.kind !== 'text') throw new Error('no text');
    expect(ink.x + ink.width).toBeCloseTo(look.page.A4.width - look.page.A4.margin, 1);
  });

  it('put list markers to the right of the text', () => {
    const made = mirrored([{ kind: 'list', ordered: false, items: [[paragraph('Item')]] }]);
    const [marker, item] = made.pages[0]?.ink ?? [];
    if (marker?.kind !== 'text' || item?.kind !== 'text') throw new Error('no text');
    expect(marker.x).toBeGreaterThan(item.x + item.width);
    expect(marker.y).toBe(item.y);
  });

  it('put the first language of a pair on the right', () => {
    const made = mirrored([
      { kind: 'pair', first: paragraph('First'), second: paragraph('Second') },
    ]);
    const [first, second] = made.pages[0]?.ink ?? [];
    if (first?.kind !== 'text' || second?.kind !== 'text') throw new Error('no text');
    expect(first.x).toBeGreaterThan(second.x);
  });

  it('put the edge of a notice on the right', () => {
    const made = mirrored([{ kind: 'notice', look: 'summary', blocks: [paragraph('Note')] }]);
    expect(made.pages[0]?.grounds[0]).toMatchObject({ sides: 'end' });
  });

  it('paint brackets and stops in reading order, each mirrored and in its place', () => {
    const runs = [run('('), run('17:00', { isolate: 'ltr' }), run(').')];
    const made = mirrored([{ kind: 'paragraph', look: 'body', runs }]);
    const parts = (made.pages[0]?.ink ?? []).filter((ink) => ink.kind === 'text');
    const read = parts.map((ink) => ink.glyphs.map((glyph) => glyph.text).join(''));
    expect(read).toEqual(['(', '17:00', ')', '.']);
    const lefts = parts.map((ink) => ink.x);
    expect(lefts).toEqual([...lefts].sort((a, b) => b - a));
    const face = fonts.faceOfFile('NotoSans-Regular.ttf').font;
    expect(parts[0]?.glyphs[0]?.id).toBe(face.nominalGlyph(')'.charCodeAt(0)));
  });

  it('keep an isolated number in its own order between right-to-left neighbours', () => {
    const runs = [run('abc', { isolate: 'ltr' }), run(' '), run('555-0199', { isolate: 'ltr' })];
    const made = mirrored([{ kind: 'paragraph', look: 'body', runs }]);
    const parts = (made.pages[0]?.ink ?? []).filter((ink) => ink.kind === 'text');
    const inOrder = [...parts].sort((a, b) => a.x - b.x);
    const seen = inOrder.map((ink) => ink.glyphs.map((glyph) => glyph.text).join('')).join('');
    expect(seen).toBe('555-0199 abc');
  });
});
