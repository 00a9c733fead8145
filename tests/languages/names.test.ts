// A person keeps their name in its own script, whatever the letter's language; characters outside every face are refused.
import { describe, expect, it } from 'vitest';
import { drawPdf, openFonts } from '../../src/render/pdf/index.js';
import { pdfjsText } from '../render/pdf/pdfjs-text.js';
import { facts, letter, paragraph } from '../render/pdf/sample.js';

const form = { paper: 'A4', size: 'standard' } as const;
const draw = async (text: string, lang: string) =>
  drawPdf(
    letter([paragraph(text)], { lang, header: null, footer: null }),
    form,
    await openFonts('dist/fonts'),
    facts,
  );

describe('a name', () => {
  // Invented names; U+5586, U+9F98 and U+71DA are ideographs that GB/T 2312 does not hold.
  it.each([
    ['喆龘燚', 'zh-Hans'],
    ['李喆', 'pl'],
    ['李喆', 'ko'],
    ['김하늘', 'en'],
    ['नूर', 'vi'],
    ['Łucja Źrebiec', 'zh-Hant'],
  ])('%s is drawn in a letter in %s', async (name, lang) => {
    const made = await draw(`${name}: 12.5`, lang);
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    expect(await pdfjsText(made.value)).toContain(name);
  });

  it('in a script that no face holds is refused with its first character', async () => {
    const made = await draw('ᠮᠣᠩᠭᠣᠯ', 'en');
    expect(made.ok).toBe(false);
    if (!made.ok)
      expect(made.problems[0]).toMatchObject({ code: 'glyph-missing', found: 'U+182E' });
  });

  it('makes the same bytes whether or not a face was borrowed for a letter before', async () => {
    const fonts = await openFonts('dist/fonts');
    const one = letter([paragraph('Noor: 12.5')], { lang: 'en', header: null, footer: null });
    const before = await drawPdf(one, form, fonts, facts);
    const other = letter([paragraph('李喆')], { lang: 'en', header: null, footer: null });
    expect((await drawPdf(other, form, fonts, facts)).ok).toBe(true);
    const after = await drawPdf(one, form, fonts, facts);
    expect(before.ok && after.ok && Buffer.from(before.value).equals(after.value)).toBe(true);
  });
});
