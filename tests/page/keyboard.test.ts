// The whole way with a keyboard alone, and how quickly it answers.

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Copy, letter, writeCopy } from './open-page.js';
import { ironDeficiency } from './texts.js';

let copy: Copy;
beforeAll(async () => {
  copy = await writeCopy();
}, 60_000);
afterAll(() => copy?.close());

const focused = (page: Page) =>
  page.evaluate<string>(
    "(document.activeElement?.labels?.[0]?.textContent ?? document.activeElement?.textContent ?? '').trim()",
  );

/** Presses Tab until the words are those of the field or button in focus. */
async function tabTo(page: Page, words: string): Promise<void> {
  for (let i = 0; i < 120; i++) {
    if ((await focused(page)).startsWith(words)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never reached ${words}`);
}

describe('with a keyboard alone', () => {
  it('goes from opening to a saved PDF', async () => {
    const { page } = await copy.open();
    await tabTo(page, 'Paste the results here');
    await page.keyboard.insertText(ironDeficiency);
    await tabTo(page, 'Use the invented example clinic');
    await page.keyboard.press('Enter');
    await letter(page).getByRole('heading', { level: 1 }).waitFor();
    await tabTo(page, 'Save PDF');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.keyboard.press('Enter'),
    ]);
    expect(download.suggestedFilename()).toBe('letter.en.pdf');
    await page.context().close();
  }, 60_000);
});
