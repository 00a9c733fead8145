// English made longer, and English turned right to left, go through the real template; every page is held to its edges.
import { beforeAll, describe, expect, it } from 'vitest';
import { composeLetter, type Language } from '../../../src/letter/index.js';
import type { LetterDocument } from '../../../src/render/block.js';
import { look } from '../../../src/render/look.js';
import { pairDocuments } from '../../../src/render/pair-documents.js';
import { drawPdf, type Fonts, layOut } from '../../../src/render/pdf/index.js';
import type { Pattern } from '../../../src/terms.js';
import { english, letterOf } from '../../letter/fixtures.js';
import { longer, pseudoLanguage, turned } from '../../letter/pseudo.js';
import { documentOf } from '../fixture.js';
import { collisions, inkBoxes } from './ink-boxes.js';
import { facts, testFonts } from './sample.js';
import { uaFaults } from './ua.js';

let fonts: Fonts;

beforeAll(async () => {
  fonts = await testFonts();
});

function pseudoLetter(pattern: Pattern, language: Language): LetterDocument {
  const content = composeLetter(letterOf({ pattern, language }));
  if (!content.ok) throw new Error(JSON.stringify(content.problems));
  return documentOf(content.value);
}

const languages = [
  { name: 'English', language: english, pages: 3 },
  {
    name: 'English made a third longer',
    language: pseudoLanguage('en-XA', 'ltr', longer),
    pages: 5,
  },
  {
    name: 'English turned right to left',
    language: pseudoLanguage('en-Hebr', 'rtl', turned),
    pages: 3,
  },
];
const patterns = ['all-in-range', 'iron-deficiency-anaemia', 'raised-tsat-and-ferritin'] as const;
const cases = languages.flatMap((one) => patterns.map((pattern) => ({ ...one, pattern })));

describe.each(cases)('$name, $pattern', ({ language, pattern, pages: most }) => {
  it.each(['standard', 'large'] as const)(
    'fits its pages in %s print, nothing clipped, nothing over another',
    async (size) => {
      const document = pseudoLetter(pattern, language);
      await fonts.load([document.lang]);
      const laid = layOut(document, { paper: 'A4', size }, fonts);
      if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
      const { width, height, pages } = laid.value;
      if (size === 'standard') expect(pages.length).toBeLessThanOrEqual(most);
      const { margin } = look.page.A4;
      for (const page of pages) {
        const boxes = inkBoxes(page, fonts);
        for (const { left, right, top, bottom } of boxes) {
          expect(left).toBeGreaterThan(margin - 1);
          expect(right).toBeLessThan(width - margin + 1);
          expect(top).toBeGreaterThan(margin / 3);
          expect(bottom).toBeLessThan(height - margin / 3);
        }
        expect(collisions(boxes)).toEqual([]);
      }
    },
  );

  it('is tagged as PDF/UA-1 asks', async () => {
    const made = await drawPdf(
      pseudoLetter(pattern, language),
      { paper: 'A4', size: 'standard' },
      fonts,
      facts,
    );
    expect(made.ok && uaFaults(made.value)).toEqual([]);
  });
});

describe.each(patterns)('English beside itself turned right to left, %s', (pattern) => {
  it.each(['standard', 'large'] as const)('stands clear in %s print', async (size) => {
    const turnedEnglish = languages.at(-1)?.language ?? english;
    const paired = pairDocuments(
      pseudoLetter(pattern, english),
      pseudoLetter(pattern, turnedEnglish),
    );
    if (!paired.ok) throw new Error(JSON.stringify(paired.problems));
    const laid = layOut(paired.value, { paper: 'A4', size }, fonts);
    if (!laid.ok) throw new Error(JSON.stringify(laid.problems));
    for (const page of laid.value.pages) expect(collisions(inkBoxes(page, fonts))).toEqual([]);
    const made = await drawPdf(paired.value, { paper: 'A4', size }, fonts, facts);
    expect(made.ok && uaFaults(made.value)).toEqual([]);
  });
});
