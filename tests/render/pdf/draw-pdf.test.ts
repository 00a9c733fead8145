// Letters go in; the file is read back: text, glyphs, tags, links, pages (own reader and pdfjs-dist as outside reader).
import { create } from 'fontkit';
import { Blob, Face, Font, Buffer as ShapeBuffer, shape } from 'harfbuzzjs';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LetterDocument, PageForm } from '../../../src/render/block.js';
import {
  addLetter,
  closeSheets,
  drawPdf,
  type Fonts,
  layOut,
  openSheets,
} from '../../../src/render/pdf/index.js';
import { pdfjsText } from './pdfjs-text.js';
import type { Dict } from './objects.js';
import { artifactText, nodesOf, type ReadPdf, readPdf, textOf } from './read-back.js';
import {
  a4,
  cell,
  facts,
  fullLetter,
  heading,
  letter,
  paragraph,
  run,
  testFonts,
} from './sample.js';
import { uaFaults } from './ua.js';

let fonts: Fonts;

beforeAll(async () => {
  fonts = await testFonts();
});

async function drawn(document: LetterDocument, form: PageForm = a4): Promise<Uint8Array> {
  const made = await drawPdf(document, form, fonts, facts);
  if (!made.ok) throw new Error(made.problems.map((problem) => problem.code).join());
  return made.value;
}

/** The font file within the PDF: its glyphs have numbers of their own. */
function fileOf(font: Dict, { objects }: ReadPdf): Uint8Array {
  const descendant = objects.dict(objects.list(font.DescendantFonts)[0]);
  return objects.stream(objects.dict(descendant.FontDescriptor).FontFile2);
}

/** Read by fontkit, a general font library. */
function outlineOf(file: Uint8Array, glyph: number): string {
  const font = create(Buffer.from(file));
  if (!('getGlyph' in font)) throw new Error('one font was expected');
  return font.getGlyph(glyph).path.toSVG();
}

/** Spaces aside: extractors guess them from gaps. */
function squeezed(text: string): string {
  return text.normalize('NFKC').replace(/[\s\u200B]/g, '');
}

/** Invented sentences with ligature, kerning and accent traps. */
const sentences = [
  'Your body is short of iron.',
  'AVATAR: To find five fluffy flakes of official coffee, try Waverley’s office.',
  'Ferritin 4 µg/L (usual range 15–150), taken on 2 January 2026.',
  'Call 555-0199, or +44 113 496 0000, before 5 pm: “ask for Dr Ōkāhu”.',
  'Nguyễn Thị Hường, Żółć, naïve façade, Māori kūmara.',
];

describe('glyphs', () => {
  it.each(sentences)('are those HarfBuzz shapes from the whole sentence: %s', async (sentence) => {
    const pdf = readPdf(await drawn(letter([paragraph(sentence)])));
    const drawnOutlines = pdf.stretches
      .filter((one) => one.mark !== 'Artifact')
      .flatMap((one) => one.drawn.map(({ font, glyph }) => outlineOf(fileOf(font, pdf), glyph)));
    const face = fonts.faceOfFile('NotoSans-Regular.ttf');
    const buffer = new ShapeBuffer();
    buffer.addText(sentence);
    buffer.guessSegmentProperties();
    shape(new Font(new Face(new Blob(face.bytes))), buffer);
    expect(drawnOutlines).toEqual(
      buffer.getGlyphInfos().map(({ codepoint }) => outlineOf(face.bytes, codepoint)),
    );
  });

  it('that no face holds are a problem that names the code point and no text', async () => {
    const made = await drawPdf(letter([paragraph('Robin \u{1F600} Example')]), a4, fonts, facts);
    if (made.ok) throw new Error('drew a box instead of a face');
    expect(made.problems.map(({ code, found }) => [code, found])).toEqual([
      ['glyph-missing', 'U+1F600'],
    ]);
    expect(JSON.stringify(made.problems)).not.toContain('Robin');
  });
});

describe('text', () => {
  it('reads back with pdfjs in the order of the letter', async () => {
    const blocks = sentences.map((sentence) => paragraph(sentence));
    const text = await pdfjsText(await drawn(letter(blocks, { header: null, footer: null })));
    expect(squeezed(text)).toBe(squeezed(sentences.join('')));
  });

  it('of every tag is whole, word by word with its spaces', async () => {
    const pdf = readPdf(await drawn(fullLetter));
    const said = nodesOf(pdf.tree).map((node) => textOf(node, pdf));
    expect(said).toContain('Call us on 555-0199 to book a visit.');
    expect(said).toContain(
      'Sardines and other oily fish, fresh or from a tin, with the soft bones left in if you like them so.',
    );
    expect(said).toContain(
      'Hãy uống trà và cà phê trước hoặc sau bữa ăn một giờ, vì chúng cản trở chất sắt.',
    );
  });

  it('keeps a number with its unit on one line however narrow the column', async () => {
    const words = [run('Your ferritin came back at '), run('98.25 µg/L', { isolate: 'ltr' })];
    for (const lead of ['a', 'an even', 'a rather longer', 'once more a rather longer']) {
      const runs = [run(`${lead} `), ...words, run(' this time, we saw.')];
      const block = { kind: 'paragraph', look: 'body', runs } as const;
      const placed = layOut(
        letter([{ kind: 'pair', first: block, second: block }]),
        { paper: 'A4', size: 'standard' },
        fonts,
      );
      if (!placed.ok) throw new Error('not laid out');
      const [page] = placed.value.pages;
      const texts = linesOf(page?.ink ?? []);
      expect(texts.some((text) => text.includes('98.25 µg/L'))).toBe(true);
    }
  });
});

function linesOf(ink: readonly unknown[]): readonly string[] {
  const lines = new Map<number, string>();
  for (const one of ink as readonly { y: number; glyphs?: readonly { text: string }[] }[]) {
    const words = (one.glyphs ?? []).map((glyph) => glyph.text).join('');
    lines.set(one.y, (lines.get(one.y) ?? '') + words);
  }
  return [...lines.values()];
}

describe('tags', () => {
  it('follow the letter, block by block', async () => {
    const pdf = readPdf(await drawn(fullLetter));
    const [root] = pdf.tree;
    const roles = (root?.children ?? []).map((child) => ('role' in child ? child.role : 'mark'));
    expect(roles).toEqual(
      'P P H1 Div H2 Table Figure P H2 P L Div H2 L Div Sect P Div Div'.split(' '),
    );
  });

  it('say which language another part is in', async () => {
    const pdf = readPdf(await drawn(fullLetter));
    const langs = nodesOf(pdf.tree).map((node) => node.dict.Lang);
    expect(langs.filter((lang) => lang !== undefined)).toEqual(['en', 'pl', 'vi']);
  });

  it('are read by pdfjs with the same roles and the words for the picture', async () => {
    const file = await getDocument({ data: await drawn(fullLetter), verbosity: 0 }).promise;
    const tree = JSON.stringify(await (await file.getPage(1)).getStructTree());
    expect(tree).toContain('"role":"Table"');
    expect(tree).toContain('well below the usual range of 15 to 150');
  });

  it.each(['compact', 'standard', 'large', 'extra-large'] as const)(
    'satisfy the checkable clauses of PDF/UA-1 in %s print',
    async (size) => {
      expect(uaFaults(await drawn(fullLetter, { paper: 'Letter', size }))).toEqual([]);
    },
  );

  it('give a link its words, and an annotation on the page it stands on', async () => {
    const file = await getDocument({ data: await drawn(fullLetter), verbosity: 0 }).promise;
    const pages = await Promise.all([1, 2].map((nth) => file.getPage(nth)));
    const [link] = (await Promise.all(pages.map((page) => page.getAnnotations()))).flat();
    expect(link).toMatchObject({ subtype: 'Link', unsafeUrl: 'tel:5550199' });
    expect(link.contentsObj.str).toBe('555-0199');
  });
});

describe('the file', () => {
  it('has the same bytes for the same letter', async () => {
    const fresh = await testFonts();
    const again = await drawPdf(fullLetter, a4, fresh, facts);
    expect(again.ok && Buffer.from(again.value).equals(Buffer.from(await drawn(fullLetter)))).toBe(
      true,
    );
  });

  it('counts its pages on every page, outside the reading order', async () => {
    const pdf = readPdf(await drawn(fullLetter));
    const counted = pdf.pages.map((_, nth) => /Page \d+ of \d+/.exec(artifactText(nth, pdf))?.[0]);
    expect(counted).toEqual(['Page 1 of 2', 'Page 2 of 2']);
  });

  it('escapes a title for its metadata and names no patient there', async () => {
    const bytes = await drawn(letter([paragraph('Robin Example')], { title: 'Iron & <you>' }));
    const pdf = readPdf(bytes);
    const xmp = Buffer.from(pdf.objects.stream(pdf.catalog.Metadata)).toString('utf8');
    expect(xmp).toContain('Iron \uFF06 \u2039you\u203A');
    expect(xmp + JSON.stringify(pdf.objects.dict(pdf.objects.trailer.Info))).not.toContain('Robin');
  });

  it('takes many letters, each with its own tags and page numbers', async () => {
    const sheets = openSheets({ lang: 'en', title: 'Letters', ...facts }, fonts);
    for (const name of ['Robin', 'Kim', 'Sam']) {
      const added = await addLetter(
        sheets,
        letter([heading(1, `Dear ${name}`), paragraph('Hello.')]),
        a4,
      );
      expect(added).toMatchObject({ ok: true, value: 1 });
    }
    const bytes = await closeSheets(sheets);
    const pdf = readPdf(bytes);
    expect(pdf.tree.map((node) => node.role)).toEqual(['Document', 'Document', 'Document']);
    expect(pdf.tree.map((node) => textOf(node, pdf))).toEqual(
      ['Robin', 'Kim', 'Sam'].map((name) => `Dear ${name}Hello.`),
    );
    expect(uaFaults(bytes)).toEqual([]);
  });

  it('says so when a table row is taller than a page', async () => {
    const words = paragraph('word '.repeat(4000).trim());
    const table = {
      kind: 'table',
      look: 'plain',
      caption: null,
      head: [],
      rows: [[cell('', { blocks: [words] })]],
    } as const;
    const made = await drawPdf(letter([table]), a4, fonts, facts);
    expect(made).toMatchObject({ ok: false, problems: [{ code: 'too-tall' }] });
  });
});
