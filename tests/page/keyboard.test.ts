// The whole way with a keyboard alone, and how quickly it answers.

import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Copy, letter, paste, writeCopy } from './open-page.js';
import { ironDeficiency, veryLow } from './texts.js';

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

  it('lets a phone number be typed to its end, and never loses the focus of what goes', async () => {
    const { page } = await copy.open();
    await paste(page, veryLow.replace('9 L	ug/L', '5580	ng/dL'));
    for (const [label, words] of clinicDetails) {
      await page.getByLabel(label, { exact: true }).last().click();
      await page.keyboard.type(words);
    }
    expect(await page.getByLabel('Emergency number').inputValue()).toBe('555 0199');
    // WCAG 2.2, 3.2.2: typing moves nothing away from whoever types.
    expect(await focused(page)).toBe('Emergency number');
    const stands = page.getByRole('button', { name: 'It stands as written' });
    await stands.focus();
    await page.keyboard.press('Enter');
    await stands.waitFor({ state: 'detached' });
    expect(await focused(page)).toContain('Ferritin');
    await page.getByText('Please call 555 0199').waitFor();
    await page.getByLabel('What was done').fill('Phoned at 10:20, sent to hospital');
    await page.getByLabel('Your name').fill('Dr Wren Abara');
    await page.getByRole('button', { name: 'Release the letter' }).focus();
    await page.keyboard.press('Enter');
    await letter(page).getByText('Dr Wren Abara has done this').waitFor();
    expect(await focused(page)).toBe('The letter');
    await page.context().close();
  }, 60_000);
});

/** Numbers that are kept for fiction (North American Numbering Plan, 555-0100 to 555-0199). */
const clinicDetails = [
  ['Name', 'Saltmarsh Bay Health Centre'],
  ['Address, one line each', '1 Harbour Walk'],
  ['Phone', '555 0142'],
  ['Hours', 'Monday to Friday'],
  ['Emergency number', '555 0199'],
] as const;
