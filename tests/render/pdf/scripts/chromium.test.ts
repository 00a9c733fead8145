// Sentences of the catalogues go to our shaper and, in the same faces, to headless Chromium (an outside engine of text); widths and places are compared.
import { readFileSync } from 'node:fs';
import chromiumFile from '@sparticuz/chromium';
import { chromium } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Direction, Run } from '../../../../src/render/block.js';
import { type Fonts, faceFiles } from '../../../../src/render/pdf/index.js';
import { breakLines, type Line } from '../../../../src/render/pdf/lines.js';
import { composeParagraph } from '../../../../src/render/pdf/paragraph.js';
import { languageFilesOf } from '../../../languages/folders.js';
import { run, testFonts } from '../sample.js';
import { samples, traps } from './sentences.js';

/** A page of sentences in one language. */
type Text = {
  readonly lang: string;
  readonly dir: Direction;
  readonly file: string;
  readonly lines: readonly (readonly Run[])[];
};

/** From the left edge of the line, thousandths of an em. `parts` are isolates, `brackets` signs, both in reading order. */
type Places = {
  readonly width: number;
  readonly parts: readonly number[];
  readonly brackets: readonly number[];
};

const page = 80;

/** Messages as they stand, each variable filled with what laboratories and clinics write. */
function messagesOf(tag: string): readonly (readonly Run[])[] {
  const { letter } = languageFilesOf(tag) as { letter: Record<string, string> };
  const texts = [...new Set(Object.values(letter))].filter((text) => text.length > 24);
  const bare = texts.filter((text) => !/[{<]/.test(text)).slice(0, page);
  const filled = texts.filter((text) => text.includes('{') && !text.includes('<')).slice(0, page);
  return [
    ...bare.map((text) => [run(text)]),
    ...filled.map((text) =>
      text
        .split(/(\{\{?[^}]*\}?\})/)
        .filter((part) => part !== '')
        .map((part, nth) => (part.startsWith('{') ? trap(nth) : run(part))),
    ),
  ];
}

function trap(nth: number): Run {
  return run(traps[nth % traps.length] ?? '', { isolate: 'ltr' });
}

/** Numbers of every kind between words, brackets around them, as in the middle of a letter. */
function trapped([first, second]: readonly string[]): readonly (readonly Run[])[] {
  return traps.map((_, nth) => [
    run(`${first} (`),
    trap(nth),
    run(`) ${second} [`),
    trap(nth + 1),
    run(']'),
  ]);
}

const catalogued: Readonly<Record<string, string>> = {
  ar: 'ar',
  fa: 'fa',
  ur: 'ur',
  'ur-Arab': 'ur',
  hi: 'hi',
  bn: 'bn',
  pa: 'pa',
};
const others = ['he', 'ta', 'th', 'km', 'am'];

const texts = samples.flatMap(({ lang, dir, file, sentences }): readonly Text[] => {
  const tag = catalogued[lang];
  if (tag === undefined && !others.includes(lang)) return [];
  const own = tag === undefined ? sentences.map((one) => [run(one)]) : messagesOf(tag);
  return [{ lang, dir, file, lines: [...own, ...trapped(sentences)] }];
});

const size = 100;

/** Latin letters and digits stand in the Latin face everywhere; left to right, signs do too. */
const ranges: Readonly<Record<Direction, string>> = {
  ltr: 'U+21-7E, U+B0-B5, U+D7, U+2010-2013, U+2212, U+2264-2265',
  rtl: 'U+30-39, U+41-5A, U+61-7A, U+B5',
};

function faceRule(family: string, file: string, range = 'U+0-10FFFF'): string {
  const row = faceFiles.find((one) => one.file === `${file}-Regular.ttf`);
  if (row === undefined) throw new Error(`No face ${file}`);
  const bytes = readFileSync(`node_modules/${row.package}/${row.path}`).toString('base64');
  return `@font-face { font-family: ${family}; src: url(data:font/ttf;base64,${bytes}); unicode-range: ${range} }`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}

/** A space belongs to the face of what stands before it: after a number, to the Latin one. */
function spaced(text: string): string {
  return escaped(text).replace(/^ /, '<span style="font-family: Latin"> </span>');
}

function htmlOf(): string {
  const files = [...new Set(texts.map(({ file }) => file))];
  const rules = [
    faceRule('Latin', 'NotoSans'),
    ...files.map((file) => faceRule(file, file)),
    // A later rule wins where ranges overlap.
    ...files.map((file) => {
      const dir = texts.find((one) => one.file === file)?.dir ?? 'ltr';
      return faceRule(file, 'NotoSans', ranges[dir]);
    }),
  ];
  const lines = texts.flatMap(({ lang, dir, file, lines: own }) =>
    own.map((runs) => {
      const inner = runs.map(({ text, isolate }) =>
        isolate === null ? spaced(text) : `<bdi dir="ltr">${escaped(text)}</bdi>`,
      );
      return `<p lang="${lang}" dir="${dir}" style="font-family: ${file}, Latin">${inner.join('')}</p>`;
    }),
  );
  return `<!doctype html><meta charset="utf-8"><style>${rules.join('\n')}
    p { font-size: ${size}px; width: max-content; white-space: pre; margin: 0;
        font-kerning: normal; text-rendering: geometricPrecision }
    bdi { font-family: Latin }</style>${lines.join('\n')}`;
}

const measuring = `document.fonts.ready.then(() => [...document.querySelectorAll('p')].map((line) => {
  const box = line.getBoundingClientRect();
  const em = (x) => ((x - box.left) / ${size}) * 1000;
  const brackets = [];
  const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode())
    for (const { index } of node.data.matchAll(/[()[\\]]/g)) {
      const range = document.createRange();
      range.setStart(node, index);
      range.setEnd(node, index + 1);
      brackets.push(em(range.getBoundingClientRect().left));
    }
  const parts = [...line.querySelectorAll('bdi')].map((one) => em(one.getBoundingClientRect().left));
  return { width: em(box.right), parts, brackets };
}))`;

async function measuredOutside(): Promise<readonly Places[]> {
  const browser = await chromium.launch({
    executablePath: await chromiumFile.executablePath(),
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
  });
  const context = await browser.newContext({ offline: true });
  const opened = await context.newPage();
  await opened.setContent(htmlOf());
  const places = await opened.evaluate<readonly Places[]>(measuring);
  await browser.close();
  return places;
}

function ownPlaces(runs: readonly Run[], { lang, dir }: Text, fonts: Fonts): Places {
  const paragraph = composeParagraph(runs, { lang, dir, strong: false }, fonts);
  const [line] = breakLines(paragraph, Number.POSITIVE_INFINITY, dir, fonts);
  if (line === undefined) throw new Error('no line');
  const isolated = [...runs.entries()].filter(([, { isolate }]) => isolate !== null);
  const parts = isolated.map(([nth]) =>
    Math.min(...line.pieces.filter((piece) => piece.run === nth).map(({ x }) => x)),
  );
  return { width: line.width, parts, brackets: bracketsOf(line) };
}

/** Pieces stand in reading order, and so do glyphs within a piece that holds a bracket. */
function bracketsOf({ pieces }: Line): readonly number[] {
  return pieces.flatMap(({ x, glyphs }) => {
    let pen = x;
    return glyphs.flatMap(({ text, advance }) => {
      const left = pen;
      pen += advance;
      return /^[()[\]]$/.test(text) ? [left] : [];
    });
  });
}

let fonts: Fonts;
let outside: readonly Places[];

beforeAll(async () => {
  [fonts, outside] = await Promise.all([testFonts(), measuredOutside()]);
  await fonts.load(texts.map(({ lang }) => lang));
}, 60_000);

describe.each(texts)('$lang in $file beside Chromium', (text) => {
  const pairs = () => {
    const before = texts.slice(0, texts.indexOf(text));
    const from = before.reduce((sum, { lines }) => sum + lines.length, 0);
    return text.lines.map((runs, nth) => {
      const theirs = outside[from + nth];
      if (theirs === undefined) throw new Error('Chromium measured fewer lines than it was given');
      return {
        said: runs.map((one) => one.text).join(''),
        own: ownPlaces(runs, text, fonts),
        theirs,
      };
    });
  };

  it('gives every sentence the same width within one in a hundred', () => {
    for (const { said, own, theirs } of pairs()) {
      expect(Math.abs(own.width / theirs.width - 1), said).toBeLessThan(0.01);
    }
  });

  it('puts numbers, units and brackets where Chromium puts them', () => {
    let compared = 0;
    for (const { said, own, theirs } of pairs()) {
      for (const kind of ['parts', 'brackets'] as const) {
        expect(own[kind].length, said).toBe(theirs[kind].length);
        for (const [nth, x] of own[kind].entries()) {
          const off = Math.abs(x - (theirs[kind][nth] ?? Number.NaN));
          expect(off, said).toBeLessThan(theirs.width * 0.01);
          compared += 1;
        }
      }
    }
    // Each of the traps stands twice, in two pairs of brackets.
    expect(compared).toBeGreaterThanOrEqual(traps.length * 6);
  });
});
