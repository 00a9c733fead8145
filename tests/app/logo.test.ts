// A clinic's logo: what is taken in, what is refused and in which words, and how the letter carries it.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { encode } from 'fast-png';
import { zlibSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readLogoFile } from '../../src/app/logo/read-logo-file.js';
import { sayProblem } from '../../src/problem.js';
import type { LetterDocument } from '../../src/render/block.js';
import { writeHtml } from '../../src/render/html.js';
import { readLogo } from '../../src/render/logo.js';
import { pairDocuments } from '../../src/render/pair-documents.js';
import { drawPdf, type Fonts } from '../../src/render/pdf/index.js';
import type { Canvas } from '../../src/render/pdf/canvas.js';
import { logoOperators } from '../../src/render/pdf/draw-logo.js';
import { readMarkup } from '../../src/render/read-markup.js';
import { content, documentOf } from '../render/fixture.js';
import { nodesOf, readPdf } from '../render/pdf/read-back.js';
import { a4, facts, testFonts } from '../render/pdf/sample.js';
import { uaFaults } from '../render/pdf/ua.js';

const folder = mkdtempSync(join(tmpdir(), 'ironleaf-logo-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let fonts: Fonts;
beforeAll(async () => {
  fonts = await testFonts();
});

async function read(bytes: string | Uint8Array, name = 'logo.svg'): Promise<string> {
  writeFileSync(join(folder, name), bytes);
  const logo = await readLogoFile(folder, name);
  return logo.ok ? logo.value : logo.problems.map(sayProblem).join('\n');
}

const svg = (inner: string, more = '') =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"${more}>${inner}</svg>`;
const square = '<rect width="20" height="20" fill="#123456"/>';

async function vector(text: string) {
  const logo = readLogo(await read(text));
  if (logo?.kind !== 'vector') throw new Error(await read(text));
  return logo;
}

function letterWith(logo: string | null): LetterDocument {
  return documentOf({ ...content, sender: { ...content.sender, logo } });
}

async function pdfOf(document: LetterDocument): Promise<Uint8Array> {
  const made = await drawPdf(document, a4, fonts, facts);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

/** Places by hand from SVG 2: units of the viewBox, times 100 over its height. */
describe('an SVG of plain shapes', () => {
  it.each([
    ['a rect', '<rect x="2" y="4" width="10" height="6"/>', 'M10 20 L60 20 L60 50 L10 50 Z'],
    ['relative steps', '<path d="m2 4h10v6h-10z"/>', 'M10 20 L60 20 L60 50 L10 50 Z'],
    ['a group moved', '<g transform="translate(2 4)"><path d="M0 0H10"/></g>', 'M10 20 L60 20'],
    [
      'a turn within a move',
      '<g transform="translate(4 0)"><path transform="rotate(90)" d="M0 0H10"/></g>',
      'M20 0 L20 50',
    ],
    ['a quadratic curve', '<path d="M0 0Q3 0 3 3"/>', 'M0 0 C10 0 15 5 15 15'],
    ['a polygon', '<polygon points="0,0 4,0 4,4"/>', 'M0 0 L20 0 L20 20 Z'],
  ])('is read: %s', async (_name, inner, d) => {
    expect((await vector(svg(inner))).shapes.map((shape) => shape.d)).toEqual([d]);
  });

  it('makes a circle of four arcs that never leaves its own radius', async () => {
    const { shapes } = await vector(svg('<circle cx="10" cy="10" r="10"/>'));
    const numbers = (shapes[0]?.d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
    expect(Math.min(...numbers)).toBe(0);
    expect(Math.max(...numbers)).toBe(100);
  });

  it('inherits paint, scales lines, and takes style as attributes', async () => {
    const group = '<g fill="none" stroke="#0a0"><path d="M0 0H9" style="stroke-width:2px"/></g>';
    expect((await vector(svg(group))).shapes[0]).toMatchObject({
      fill: null,
      stroke: '#00aa00',
      strokeWidth: 10,
    });
  });

  it('passes over a title, notes of the drawing program and a plain document type', async () => {
    const text = `<?xml version="1.0"?><!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "x">${svg(`<title>Ours</title><metadata><a:b xmlns:a="c">text</a:b></metadata>${square}`)}`;
    expect((await vector(text)).shapes).toHaveLength(1);
  });
});

describe('an SVG with anything else', () => {
  it.each([
    ['a script', svg(`${square}<script>alert(1)</script>`), 'draw <script>'],
    ['an event', svg(square, ' onload="alert(1)"'), 'draw with "onload"'],
    ['a link', svg(`<a href="https://example.org">${square}</a>`), 'draw <a>'],
    ['a picture from elsewhere', svg('<image href="https://example.org/a.png"/>'), 'draw <image>'],
    ['a copy of another file', svg('<use href="other.svg#a"/>'), 'draw <use>'],
    [
      'a fetched paint',
      svg('<rect width="9" height="9" fill="url(https://example.org/a#b)"/>'),
      'use this colour',
    ],
    [
      'a fetched style',
      svg(`<style>@import url(https://example.org)</style>${square}`),
      'draw <style>',
    ],
    ['a foreign page', svg('<foreignObject><p>a</p></foreignObject>'), 'draw <foreignObject>'],
    [
      'movement',
      svg('<rect width="9" height="9"><animate attributeName="x"/></rect>'),
      'draw <animate>',
    ],
    ['letters', svg('<text>Clinic</text>'), 'draw <text>'],
    ['entities', `<!DOCTYPE svg [<!ENTITY a "b">]>${svg(square)}`, 'follow an instruction'],
    ['a style sheet', `<?xml-stylesheet href="a.css"?>${svg(square)}`, 'follow an instruction'],
    ['a hidden block', svg(`<![CDATA[x]]>${square}`), 'read a block of other data'],
    ['half-clear paint', svg('<rect width="9" height="9" opacity=".5"/>'), 'draw with "opacity"'],
    ['a broken path', svg('<path d="M0 0 L1e999 nine"/>'), 'read a path'],
    ['a far place', svg('<path d="M0 0H1e9"/>'), 'draw so far outside'],
    [
      'a mighty transform',
      svg('<path transform="scale(1e300)" d="M0 0H9"/>'),
      'draw so far outside',
    ],
    ['too many shapes', svg(square.repeat(301)), 'draw so many shapes'],
    ['too many lines', svg(`<path d="M0 0${'h1'.repeat(4001)}"/>`), 'draw so many lines'],
    ['nothing to see', svg('<rect width="9" height="9" fill="none"/>'), 'find a shape'],
    ['no size', `<svg>${square}</svg>`, 'find its size'],
    ['a banner', svg(square).replace('0 0 40 20', '0 0 400 20'), 'fit this logo'],
    ['a page of HTML', '<html><body>logo</body></html>', 'tell what this logo is'],
    ['too many bytes', svg(square + ' '.repeat(33_000)), 'at most 32 kB'],
  ])('is refused in words: %s', async (_name, text, words) => {
    const said = await read(text);
    expect(said).toContain('logo.svg');
    expect(said).toContain(words);
  });

  it('is refused with the line it stands on', async () => {
    expect(await read(svg(`${square}\n<script/>\n`))).toContain('logo.svg, row 2');
  });
});

describe('a name of a logo', () => {
  it.each([
    '../logo.svg',
    '/etc/hostname',
    'C:/logo.svg',
    '\\\\server\\logo.svg',
    'https://example.org/logo.svg',
    'a/../../b.svg',
    'not-there.svg',
    '.',
  ])('opens nothing elsewhere: %s', async (name) => {
    expect((await readLogoFile(folder, name)).ok).toBe(false);
  });

  it.each(['not-there.svg', '.'])('that is no file is not called too large: %s', async (name) => {
    const logo = await readLogoFile(folder, name);
    const said = logo.ok ? '' : logo.problems.map(sayProblem).join('\n');
    expect(said).toContain('cannot open this logo; expected a file of this name, readable');
  });
});

const pixels = (width: number, height: number, channels: 1 | 2 | 3 | 4, fill: readonly number[]) =>
  encode({
    width,
    height,
    channels,
    depth: 8,
    data: Uint8Array.from(
      { length: width * height * channels },
      (_, at) => fill[at % channels] ?? 0,
    ),
  });

describe('a PNG', () => {
  it.each([
    ['grey', 1, [60]],
    ['grey, half clear', 2, [60, 128]],
    ['colour', 3, [10, 20, 30]],
    ['colour, half clear', 4, [10, 20, 30, 128]],
  ] as const)('is read: %s', async (_name, channels, fill) => {
    const url = await read(pixels(8, 4, channels, fill), 'logo.png');
    expect(readLogo(url)).toMatchObject({ kind: 'pixels', width: 8, height: 4 });
  });

  it('loses every note that the file carries', async () => {
    const png = pixels(8, 4, 3, [1, 2, 3]);
    const note = new TextEncoder().encode('tEXtAuthor\0Somebody');
    const length = new Uint8Array([0, 0, 0, note.length - 4]);
    const noted = Uint8Array.from([
      ...png.slice(0, 33),
      ...length,
      ...note,
      0,
      0,
      0,
      0,
      ...png.slice(33),
    ]);
    const url = await read(noted, 'logo.png');
    expect(url).toMatch(/^data:image\/png/);
    expect(atob(url.split(',')[1] ?? '')).not.toContain('Somebody');
  });

  const claimed = (png: Uint8Array, width: number) => {
    const other = png.slice();
    new DataView(other.buffer).setUint32(16, width);
    return other;
  };
  /** A megabyte of nothing in the place of 8 by 4 pixels. */
  const swollen = () => {
    const png = pixels(8, 4, 3, [1, 2, 3]);
    const data = zlibSync(new Uint8Array(1_000_000));
    const length = new Uint8Array(4);
    new DataView(length.buffer).setUint32(0, data.length);
    const name = new TextEncoder().encode('IDAT');
    const end = new Uint8Array([0, 0, 0, 0, 73, 69, 78, 68, 174, 66, 96, 130]);
    return Uint8Array.from([...png.slice(0, 33), ...length, ...name, ...data, 0, 0, 0, 0, ...end]);
  };

  it.each([
    ['its beginning alone', pixels(8, 4, 3, [1]).slice(0, 8), 'a whole PNG file'],
    ['cut short', pixels(8, 4, 3, [1]).slice(0, -20), 'a whole PNG file'],
    ['a size without end', claimed(pixels(8, 4, 3, [1]), 0x7fffffff), '1 to 1200 pixels'],
    ['a size of nothing', claimed(pixels(8, 4, 3, [1]), 0), '1 to 1200 pixels'],
    ['another size than its pixels', claimed(pixels(8, 4, 3, [1]), 9), 'not damaged'],
    ['pixels that swell', swollen(), 'as many pixels as its size says'],
    [
      'too large',
      new Uint8Array([...pixels(8, 4, 3, [1]), ...new Uint8Array(65_536)]),
      'at most 64 kB',
    ],
  ])('is refused in words: %s', async (_name, bytes, words) => {
    expect(await read(bytes, 'logo.png')).toContain(words);
  });
});

const wave = svg(
  `<path d="M0 20Q20 0 40 20Z" fill="#17424a"/><path d="M-900 0H900" stroke="#000"/>`,
);
const photo = () => pixels(30, 20, 3, [20, 80, 90]);

describe('a letter with a logo', () => {
  it('draws nothing outside its box, whatever its shapes say', async () => {
    const src = await read(wave);
    const box = { x: 30, y: 40, width: 20, height: 10, scale: 0.1 };
    const drawn = logoOperators({} as Canvas, { kind: 'logo', tag: 1, src, ...box });
    // ISO 32000-1, 8.5.4: W before the first painting operator bounds all that follow until Q.
    expect(drawn).toMatch(/^q 1 0 0 1 30 40 cm 0 0 20 10 re W n\n[^Q]*Q$/);
  });

  it.each([
    ['SVG', wave, 'logo.svg'],
    ['PNG', photo(), 'logo.png'],
  ] as const)(
    'is PDF/UA with the clinic named for it, twice the same, and hardly heavier: %s',
    async (_kind, bytes, name) => {
      const letter = letterWith(await read(bytes, name));
      const pdf = await pdfOf(letter);
      expect(uaFaults(pdf)).toEqual([]);
      expect(Buffer.from(await pdfOf(letter)).equals(Buffer.from(pdf))).toBe(true);
      const figures = nodesOf(readPdf(pdf).tree).filter(({ role }) => role === 'Figure');
      expect(figures[0]?.dict.Alt).toBe(content.sender.name);
      expect(pdf.length).toBeLessThan((await pdfOf(letterWith(null))).length + 2_500);
    },
  );

  it('shows it in HTML with its name, lets no other picture in, and has neither without one', async () => {
    const url = await read(wave);
    const html = writeHtml(letterWith(url), a4);
    expect(html).toContain(`<img class="logo" src="${url}" alt="${content.sender.name}"`);
    expect(html).toContain("default-src 'none'; img-src data:; style-src");
    const bare = writeHtml(letterWith(null), a4);
    expect(bare).not.toMatch(/<img|img-src/);
  });

  it('has one sign where two languages stand side by side', async () => {
    const letter = letterWith(await read(wave));
    const other = { ...letter, lang: 'ar', dir: 'rtl' } as const;
    const pair = pairDocuments(letter, other);
    if (!pair.ok) throw new Error(JSON.stringify(pair.problems));
    expect(writeHtml(pair.value, a4).match(/<img /g)).toHaveLength(1);
  });

  it.each([
    `data:image/svg+xml;base64,${btoa(svg('<script>alert(1)</script>'))}`,
    `data:image/svg+xml;base64,${btoa(svg(square))}`,
    `data:image/png;base64,${btoa('no picture')}`,
    'https://example.org/logo.png',
  ])('refuses a picture that a template brings by itself: %s', (src) => {
    const markup = `<article lang="en" dir="ltr" title="T"><section><img src="${src}" alt="a"><p>b</p></section></article>`;
    expect(readMarkup(markup, 'own.hbs').ok).toBe(false);
  });
});
