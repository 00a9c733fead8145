// A copy of the page is written into a folder of its own and opened in a real Chromium with the network cut.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import chromiumFile from '@sparticuz/chromium';
import { type Browser, chromium, type Page } from 'playwright-core';
import { assemblePage } from '../../src/app/page/assemble.js';

export type Opened = {
  readonly page: Page;
  /** Every address that was asked for after the page itself. */
  readonly asked: readonly string[];
  /** What the browser complained of: faults and offences against the policy. */
  readonly complaints: readonly string[];
};

export type Copy = {
  /** @param first Runs in the page before its own script, to stand for a device. */
  readonly open: (
    size?: { width: number; height: number },
    locale?: string,
    first?: string,
  ) => Promise<Opened>;
  readonly close: () => Promise<void>;
};

const languages = ['en', 'es', 'ar', 'hi'];
const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
];

/** Writes the copy and starts the browser once; each opening has a profile of its own. */
export async function writeCopy(): Promise<Copy> {
  const folder = mkdtempSync(join(tmpdir(), 'ironleaf-page-'));
  const file = join(folder, 'ironleaf.html');
  writeFileSync(file, (await assemblePage(languages, null)).html);
  const browser: Browser = await chromium.launch({
    executablePath: await chromiumFile.executablePath(),
    args: flags,
  });
  return {
    open: async (size = { width: 1280, height: 900 }, locale = 'en-GB', first = '') => {
      const context = await browser.newContext({ viewport: size, offline: true, locale });
      const page = await context.newPage();
      page.setDefaultTimeout(20_000);
      if (first !== '') await page.addInitScript(first);
      const asked: string[] = [];
      const complaints: string[] = [];
      const self = pathToFileURL(file).href;
      page.on('request', (request) => {
        // A file being saved is a blob of the page's own; it never leaves the browser.
        if (request.url() !== self && !request.url().startsWith('blob:')) asked.push(request.url());
      });
      page.on('pageerror', (fault) => complaints.push(fault.message));
      page.on('console', (line) => {
        // Playwright tries to run its own scripts in the letter's frame, where none may run.
        if (!line.text().startsWith('Blocked script execution')) complaints.push(line.text());
      });
      await page.goto(self);
      await page.getByRole('heading', { level: 1 }).waitFor();
      return { page, asked, complaints };
    },
    close: async () => {
      await browser.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Rules of WCAG 2.0 to 2.2, A and AA, that axe can check; each offence with the place it was found at. */
export async function offences(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page })
    // No script may run in the letter's frame, not even axe's: the letter is held to the same rules on its own.
    .exclude('iframe.letter')
    // A picture is judged as one thing with its name; its hundreds of strokes take most of the time.
    .exclude('svg[role="img"] > :not(title):not(desc)')
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    // One document is judged: the way that gathers from several opens a page of its own each time.
    .setLegacyMode(true)
    .analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target }) => `${id}: ${target.join(' ')}`),
  );
}

/** Pixels by which the page is wider than its window. */
export function overflow(page: Page): Promise<number> {
  return page.evaluate<number>(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  );
}

export const useExample = (page: Page) =>
  page.getByRole('button', { name: 'Use the invented example clinic' }).click();
export const paste = (page: Page, text: string) =>
  page.getByLabel('Paste the results here').fill(text);
export const letter = (page: Page) => page.frameLocator('iframe.letter');

/** Saves the PDF and gives its bytes. */
export async function savedPdf(page: Page, name = 'Save PDF'): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name }).click(),
  ]);
  const parts: Buffer[] = [];
  for await (const part of await download.createReadStream()) parts.push(part as Buffer);
  return Buffer.concat(parts);
}
