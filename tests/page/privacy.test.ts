// What stays on the device and what does not: nothing of a patient, ever; the clinic only where somebody said so.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Copy, letter, paste, useExample, writeCopy } from './open-page.js';
import { ironDeficiency, unitSlip, veryLow } from './texts.js';

let copy: Copy;
beforeAll(async () => {
  copy = await writeCopy();
}, 60_000);
afterAll(() => copy?.close());

const stored =
  'JSON.stringify([Object.entries(localStorage), Object.entries(sessionStorage), document.cookie])';

describe('the page', () => {
  it('stores nothing, and after the tick the clinic alone', async () => {
    const { page } = await copy.open();
    await paste(page, ironDeficiency);
    await useExample(page);
    await letter(page).getByRole('heading', { level: 1 }).waitFor();
    expect(await page.evaluate<string>(stored)).toBe('[[],[],""]');
    await page.locator('summary', { hasText: /^The clinic$/ }).click();
    await page.getByLabel('Remember the clinic on this device').check();
    const kept = await page.evaluate<string>(stored);
    expect(kept).toContain('Saltmarsh Bay Health Centre');
    for (const private_ of ['Mirren', 'Sallow', '1987', '108', 'Ferritin'])
      expect(kept).not.toContain(private_);
    await page.getByLabel('Remember the clinic on this device').uncheck();
    expect(await page.evaluate<string>(stored)).toBe('[[],[],""]');
    await page.context().close();
  }, 60_000);

  it('warns before an unsaved letter is left, and not after Clear', async () => {
    const { page } = await copy.open();
    await paste(page, ironDeficiency);
    const dialogs: string[] = [];
    page.on('dialog', (dialog) => {
      dialogs.push(dialog.type());
      void dialog.dismiss();
    });
    await page.close({ runBeforeUnload: true });
    await expect.poll(() => dialogs).toEqual(['beforeunload']);
    await page.getByRole('button', { name: 'Clear everything' }).click();
    expect(await page.getByLabel('Paste the results here').inputValue()).toBe('');
    expect(await page.content()).not.toContain('Mirren');
    const gone = page.waitForEvent('close');
    await page.close({ runBeforeUnload: true });
    await gone;
    expect(dialogs).toEqual(['beforeunload']);
  }, 60_000);

  it('shows no letter of a held report until a named person says what was done', async () => {
    const { page } = await copy.open();
    await paste(page, veryLow);
    await useExample(page);
    await page.getByRole('heading', { name: 'Stop: phone first' }).waitFor();
    expect(await page.locator('iframe.letter').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Save PDF' }).count()).toBe(0);
    expect(await page.locator('.call').textContent()).toContain('62 g/L');
    const release = page.getByRole('button', { name: 'Release the letter' });
    await page.getByLabel('Your name').fill('Dr Wren Abara');
    // It says that it is not ready; a press does nothing.
    await release.click({ force: true });
    expect(await page.locator('iframe.letter').count()).toBe(0);
    await page.getByLabel('What was done').fill('Phoned at 10:20, sent to hospital');
    await release.click();
    await letter(page).getByText('Dr Wren Abara has done this').waitFor();
    // Another value is another report: its hold stands again.
    await paste(page, veryLow.replace('62 L', '61 L'));
    await page.getByRole('heading', { name: 'Stop: phone first' }).waitFor();
    expect(await page.locator('iframe.letter').count()).toBe(0);
    await page.context().close();
  }, 60_000);

  it('asks about an impossible value and makes the letter once a person corrected the unit', async () => {
    const { page } = await copy.open();
    await paste(page, unitSlip);
    await useExample(page);
    const line = page.locator('li.problem', { hasText: 'Haemoglobin' });
    await line.waitFor();
    expect(await line.textContent()).toContain('g/dL');
    expect(await page.locator('iframe.letter').count()).toBe(0);
    await line.getByLabel('Unit').selectOption('g/dL');
    await line.getByRole('button', { name: 'Use this' }).click();
    await letter(page).getByText('13.2 g/dL').first().waitFor();
    await page.context().close();
  }, 60_000);
});
