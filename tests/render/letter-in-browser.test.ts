// A handful of letters in a real Chromium: WCAG 2.2 AA by axe, and what axe cannot see: narrow, spaced, enlarged, dark, forced colours, printed.
import chromiumFile from '@sparticuz/chromium';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exampleClinic } from '../../src/app/assets.js';
import { readInputFile } from '../../src/app/input.js';
import { openKit } from '../../src/app/kit.js';
import { makeFridgeSheet } from '../../src/app/make-fridge-sheet.js';
import { makeLetter, type Wishes } from '../../src/app/make-letter.js';
import { understand } from '../../src/app/understand.js';
import { clinicOf } from '../../src/app/commands/shared.js';
import { readInput } from '../../src/intake/index.js';
import { plainWishes, today } from '../app/wishes.js';
import { offences, overflow } from '../page/open-page.js';

const wishes: Wishes = { ...plainWishes, formats: ['html'] };
const letters: readonly (readonly [string, Partial<Wishes>, 'full' | 'short' | 'fridge'])[] = [
  ['English', {}, 'full'],
  ['Arabic beside English', { language: 'ar', beside: 'en' }, 'full'],
  ['Hindi in large print', { language: 'hi', form: { paper: 'A4', size: 'large' } }, 'full'],
  ['easy read', { easyRead: true }, 'full'],
  ['the short letter', {}, 'short'],
  ['the fridge sheet', {}, 'fridge'],
];

let browser: Browser;
let context: BrowserContext;
const pages = new Map<string, Page>();

async function htmlOf(some: Partial<Wishes>, design: 'full' | 'short' | 'fridge'): Promise<string> {
  const { reports } = await readInput(await readInputFile('examples/heavy-periods.json', 1e6));
  const [written] = reports;
  const understood = written?.ok ? understand(written.value, today, []) : null;
  if (!understood?.ok) throw new Error('the example cannot be used');
  const clinic = await clinicOf(exampleClinic, false);
  const kit = await openKit(design === 'fridge' ? {} : { design });
  const wished = { ...wishes, ...some };
  if (design === 'fridge') {
    const sheet = await makeFridgeSheet(understood.value, clinic, wished, 'en', kit);
    if (!sheet.ok || sheet.value === null) throw new Error('no sheet');
    return String(sheet.value[0]?.content);
  }
  const made = await makeLetter(understood.value, clinic, wished, kit);
  if (made.kind !== 'made') throw new Error(made.kind);
  return String(made.files[0]?.content);
}

beforeAll(async () => {
  browser = await chromium.launch({
    executablePath: await chromiumFile.executablePath(),
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
  });
  context = await browser.newContext({ offline: true });
  for (const [name, some, design] of letters) {
    const page = await context.newPage();
    await page.setContent(await htmlOf(some, design));
    pages.set(name, page);
  }
}, 60_000);
afterAll(() => browser?.close());

async function open(name: string, width = 1280): Promise<Page> {
  const page = pages.get(name);
  if (page === undefined) throw new Error(`no ${name}`);
  await page.setViewportSize({ width, height: 900 });
  await page.emulateMedia({ media: 'screen', colorScheme: 'light', forcedColors: 'none' });
  return page;
}

/** Words of the page that are cut off, or printed over other words of the same picture. */
const lostWords = `(() => {
  const lost = [];
  for (const box of document.querySelectorAll('main, main *')) {
    const style = getComputedStyle(box);
    if (style.overflowY !== 'visible' && style.overflowX === 'hidden' && box.scrollHeight > box.clientHeight + 1) lost.push(box.textContent);
  }
  // The browser of the tests has Latin faces alone: boxes in place of other letters say nothing of their width.
  for (const svg of document.querySelectorAll(':lang(en) svg')) {
    const texts = [...svg.querySelectorAll('text')].map((text) => [text.textContent, text.getBoundingClientRect()]);
    texts.forEach(([words, a], at) => texts.slice(at + 1).forEach(([more, b]) => {
      const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (wide > 1 && high > 0.5 * Math.min(a.height, b.height)) lost.push(words + ' / ' + more);
    }));
    for (const [words, box] of texts) if (box.left < -1 || box.right > innerWidth + 1) lost.push(words);
  }
  return lost;
})()`;

describe.each(letters.map(([name]) => name))('%s', (name) => {
  it('reflows at 320 pixels (WCAG 2.2, 1.4.10) and at 200 % by zoom and by type (1.4.4)', async () => {
    const page = await open(name, 320);
    expect(await overflow(page)).toBe(0);
    // A window of 1280 at 200 % has 640 CSS pixels.
    await page.setViewportSize({ width: 640, height: 450 });
    expect(await overflow(page)).toBe(0);
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.evaluate("document.documentElement.style.fontSize = '200%'");
    expect(await overflow(page)).toBe(0);
    const lost = await page.evaluate(lostWords);
    await page.evaluate("document.documentElement.style.fontSize = ''");
    expect(lost).toEqual([]);
  });

  it.each([320, 1280])(
    'keeps every word under wide text spacing (1.4.12): %i pixels',
    async (width) => {
      const page = await open(name, width);
      await page.evaluate(`{
      const sheet = new CSSStyleSheet();
      sheet.replaceSync('*{line-height:1.5!important;letter-spacing:.12em!important;word-spacing:.16em!important}p{margin-bottom:2em!important}');
      document.adoptedStyleSheets = [sheet];
    }`);
      const [wider, lost] = [await overflow(page), await page.evaluate(lostWords)];
      await page.evaluate('document.adoptedStyleSheets = []');
      expect(wider).toBe(0);
      expect(lost).toEqual([]);
    },
  );

  it('draws in the colours a reader forces, and keeps the edges of its boxes', async () => {
    const page = await open(name);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ forcedColors: 'active', colorScheme });
      const found = await page.evaluate<{ ink: string; strokes: string[]; bare: number }>(`(() => {
        const used = (look, what) => [...document.querySelectorAll('.shape-' + look)].map((one) => getComputedStyle(one)[what]);
        return {
          ink: getComputedStyle(document.body).color,
          strokes: [...used('axis', 'stroke'), ...used('band', 'stroke'), ...used('outline', 'stroke'), ...used('marker', 'fill'), ...used('text', 'fill')],
          bare: [...document.querySelectorAll('.notice')].filter((one) => getComputedStyle(one).borderTopStyle === 'none').length,
        };
      })()`);
      expect(found.strokes.filter((stroke) => stroke !== found.ink)).toEqual([]);
      expect(found.bare).toBe(0);
    }
  });

  it('prints in ink on white from a dark screen, without the running lines of the screen', async () => {
    const page = await open(name, 794);
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const found = await page.evaluate<Record<string, unknown>>(`(() => ({
      paper: getComputedStyle(document.body).backgroundColor,
      running: [...document.querySelectorAll('.running')].filter((one) => one.offsetHeight > 0).length,
    }))()`);
    expect(found).toEqual({ paper: 'rgb(255, 255, 255)', running: 0 });
    expect(await overflow(page)).toBe(0);
  });
});

describe.each(['English', 'Arabic beside English', 'the short letter'])('%s', (name) => {
  // WCAG 2.2, 1.4.11: what is needed to understand content stands out from what is beside it, 3:1.
  it('shows a box before each step on light, dark and forced colours and in print', async () => {
    const page = await open(name);
    const media = [
      { media: 'screen', colorScheme: 'light' },
      { media: 'screen', colorScheme: 'dark' },
      { media: 'screen', colorScheme: 'dark', forcedColors: 'active' },
      { media: 'print', colorScheme: 'dark' },
    ] as const;
    for (const each of media) {
      await page.emulateMedia({ forcedColors: 'none', ...each });
      const found = await page.evaluate<{ boxes: string[]; ink: string; clear: boolean }>(`(() => {
        const items = [...document.querySelectorAll('.ticks > li')];
        const boxes = items.map((item) => getComputedStyle(item, '::before'));
        const words = items.map((item) => {
          const range = document.createRange();
          range.selectNodeContents(item.querySelector('p'));
          return range.getBoundingClientRect();
        });
        return {
          boxes: boxes.map((box) => box.borderTopStyle + ' ' + box.borderTopColor),
          ink: getComputedStyle(document.body).color,
          clear: items.every((item, at) => {
            const [whole, said] = [item.getBoundingClientRect(), words[at]];
            const begin = getComputedStyle(item).direction === 'rtl' ? whole.right - said.right : said.left - whole.left;
            return parseFloat(boxes[at].width) > 10 && begin > parseFloat(boxes[at].width);
          }),
        };
      })()`);
      expect(found.boxes.length).toBeGreaterThan(2);
      expect([...new Set(found.boxes)]).toEqual([`solid ${found.ink}`]);
      expect(found.clear).toBe(true);
    }
  });
});

/** Among them they hold every kind of block; axe takes a second for each. */
describe.each(['English', 'Arabic beside English', 'easy read', 'the fridge sheet'])(
  '%s',
  (name) => {
    it('offends no rule of WCAG 2.2 AA that axe can check', async () => {
      expect(await offences(await open(name))).toEqual([]);
    });
  },
);

describe('a dark screen', () => {
  it('keeps its contrast, the short letter by axe', async () => {
    const page = await open('the short letter');
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await offences(page)).toEqual([]);
  });
});

describe('the logo', () => {
  it('is seen under the letter’s own policy, where reading begins', async () => {
    const seen = (name: string) =>
      open(name).then((page) =>
        page.evaluate<{ width: number; left: number }>(
          "(() => { const logo = document.querySelector('img'); return { width: logo.naturalWidth, left: logo.getBoundingClientRect().left }; })()",
        ),
      );
    const english = await seen('English');
    const arabic = await seen('Arabic beside English');
    expect(english.width).toBeGreaterThan(0);
    expect(arabic.width).toBeGreaterThan(0);
    expect(english.left).toBeLessThan(640);
    expect(arabic.left).toBeGreaterThan(640);
  });
});
