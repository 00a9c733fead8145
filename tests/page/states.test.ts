// Every state of the page, held to WCAG 2.2 A and AA by axe and to the width of a phone.
import { copyFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  type Copy,
  letter,
  type Opened,
  offences,
  overflow,
  paste,
  useExample,
  writeCopy,
} from './open-page.js';
import { doubtfulFerritin, ironDeficiency, unitSlip, veryLow } from './texts.js';

let copy: Copy;
let shared: Opened;
beforeAll(async () => {
  copy = await writeCopy();
  shared = await copy.open();
}, 60_000);
afterAll(() => copy?.close());

/** The clinic of an earlier state stays; everything about the patient is cleared. */
const withClinic = async (page: Page) => {
  if ((await page.getByText('Every page is stamped as an example.').count()) === 0)
    await useExample(page);
};
const made = async (page: Page) => {
  await paste(page, ironDeficiency);
  await withClinic(page);
  await letter(page).getByRole('heading', { level: 1 }).waitFor();
};
const fillForm = async (page: Page) => {
  await page.getByLabel('Type them in').check();
  const ferritin = page.getByRole('group', { name: 'Ferritin' });
  await ferritin.getByLabel('Value').fill('11');
  await ferritin.getByLabel('Unit').selectOption('ug/L');
  // Neither sex nor day is guessed for whoever types results in.
  await page.getByText('Still needed: sex, day of the sample, clinic details.').waitFor();
  await page.getByLabel('Female').check();
  await page.getByRole('button', { name: 'Today' }).click();
  await useExample(page);
  await letter(page).getByText('11 ug/L').first().waitFor();
};
const openAll = (page: Page) =>
  page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })");

const states: readonly (readonly [name: string, reach: (page: Page) => Promise<unknown>])[] = [
  ['empty', async () => undefined],
  ['results typed in, nothing guessed of the person', fillForm],
  [
    'alarm before the person is known',
    async (page) => {
      await paste(page, 'Haemoglobin 62 g/L (115 - 155)');
      await page.getByRole('heading', { name: 'Stop: phone first' }).waitFor();
      await page.getByText('Still needed: sex, day of the sample.').first().waitFor();
    },
  ],
  [
    'letter made, everything unfolded',
    async (page) => {
      await made(page);
      await openAll(page);
    },
  ],
  [
    'impossible value',
    async (page) => {
      await paste(page, unitSlip);
      await page.getByText('Cannot be used').first().waitFor();
    },
  ],
  [
    'doubtful value',
    async (page) => {
      await paste(page, doubtfulFerritin);
      await page.getByRole('button', { name: 'It stands as written' }).first().waitFor();
    },
  ],
  [
    'held',
    async (page) => {
      await paste(page, veryLow);
      await withClinic(page);
      await page.getByRole('heading', { name: 'Stop: phone first' }).waitFor();
    },
  ],
  [
    'Arabic page, Arabic beside English',
    async (page) => {
      await made(page);
      await page.getByLabel('Language of the letter').selectOption('ar');
      await page.getByLabel('Beside it').selectOption('en');
      await page.getByLabel('Language of this page').selectOption('ar');
      await page.locator('html[dir="rtl"]').waitFor();
      await openAll(page);
    },
  ],
];

describe('the page', () => {
  it.each(states)(
    'offends against no rule of WCAG 2.2 A and AA and fits a phone: %s',
    async (_name, reach) => {
      const { page, complaints } = shared;
      await page.setViewportSize({ width: 1280, height: 900 });
      await page.getByRole('button', { name: 'Clear everything' }).click();
      await reach(page);
      expect(await offences(page)).toEqual([]);
      // WCAG 2.2, 1.4.10: nothing needs sideways scrolling at 320 CSS pixels; common phones have 360.
      for (const width of [360, 320]) {
        await page.setViewportSize({ width, height: 740 });
        expect(await overflow(page)).toBeLessThanOrEqual(0);
      }
      expect(complaints).toEqual([]);
    },
    60_000,
  );

  it('shows a letter that offends against none of them either', async () => {
    const { page } = await copy.open();
    await made(page);
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save HTML' }).click();
    const file = `${await (await saving).path()}.html`;
    copyFileSync(file.replace(/\.html$/, ''), file);
    const alone = await page.context().newPage();
    await alone.goto(pathToFileURL(file).href);
    expect(await offences(alone)).toEqual([]);
    await page.context().close();
  }, 60_000);

  it('runs from right to left in Arabic, with values left to right', async () => {
    const { page } = await copy.open({ width: 1280, height: 900 }, 'ar');
    await page.locator('html[lang="ar"][dir="rtl"]').waitFor();
    await page.locator('textarea').first().fill(ironDeficiency);
    const value = page.locator('bdi[dir="ltr"]', { hasText: '9 ug/L' });
    await value.waitFor();
    const [steps, shown] = await Promise.all([
      page.locator('.steps').boundingBox(),
      page.locator('.letter-part').boundingBox(),
    ]);
    expect(steps?.x ?? 0).toBeGreaterThan(shown?.x ?? 0);
    await page.context().close();
  }, 60_000);
});
