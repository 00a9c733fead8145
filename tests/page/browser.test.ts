// What the page asks of the browser: voices, the printer, the clipboard, files; and that every reader of files works in it.
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Copy, letter, type Opened, paste, useExample, writeCopy } from './open-page.js';
import { ironDeficiency, veryLow } from './texts.js';

let copy: Copy;
let shared: Opened;
beforeAll(async () => {
  copy = await writeCopy();
  shared = await copy.open({ width: 1280, height: 900 }, 'en-GB', stubs);
  await useExample(shared.page);
}, 60_000);
afterAll(() => copy?.close());

/** At the browser's border alone: a device with one English voice of its own and one on a server. */
const stubs = `
  globalThis.told = [];
  globalThis.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
  Object.defineProperty(globalThis, 'speechSynthesis', { value: {
    getVoices: () => [{ lang: 'en-GB', localService: true }, { lang: 'ar-EG', localService: false }],
    addEventListener() {}, removeEventListener() {},
    cancel() { told.push('cancel'); },
    speak(spoken) { told.push(spoken.lang + ': ' + spoken.text); },
  } });
`;
const told = (page: Page) => page.evaluate<readonly string[]>('told');
const made = async (page: Page) => {
  await page.getByRole('button', { name: 'Clear everything' }).click();
  await paste(page, ironDeficiency);
  await letter(page).getByRole('heading', { level: 1 }).waitFor();
};
const choose = (page: Page, file: string) =>
  page
    .locator('input[type=file]')
    .setInputFiles({ name: file.replace(/.*\//, ''), mimeType: '', buffer: readFileSync(file) });

describe('the page in its browser', () => {
  it('reads the letter aloud part by part with a voice of this device, and stops', async () => {
    const { page } = shared;
    await made(page);
    await page.getByRole('button', { name: 'Read aloud' }).click();
    await page.getByRole('button', { name: 'Stop reading' }).waitFor();
    const spoken = (await told(page)).filter((line) => line.startsWith('en-GB: '));
    expect(spoken.length).toBeGreaterThan(10);
    expect(spoken.join(' ')).toContain('When to get help');
    await page.getByRole('button', { name: 'Stop reading' }).click();
    expect((await told(page)).at(-1)).toBe('cancel');
  }, 30_000);

  it('says plainly that there is no voice, and never uses one of a server', async () => {
    const { page } = shared;
    await page.getByLabel('Language of the letter').selectOption('ar');
    await page.getByText('This browser has no voice for العربية.').waitFor();
    expect(await page.getByRole('button', { name: 'Read aloud' }).count()).toBe(0);
    await page.getByLabel('Language of the letter').selectOption('en');
  }, 30_000);

  it('prints the letter alone, and copies the note or marks it to be copied', async () => {
    const { page } = shared;
    await made(page);
    await page.evaluate(
      "document.querySelector('iframe.letter').contentWindow.print = () => told.push('print')",
    );
    await page.getByRole('button', { name: 'Print' }).click();
    expect((await told(page)).at(-1)).toBe('print');
    await page.locator('summary', { hasText: 'Note for the record' }).click();
    await page.getByText('Haemoglobin 108 g/L, well below').waitFor();
    const note = await page.locator('pre.note').textContent();
    const clipboard = (write: string) =>
      page.evaluate(
        `Object.defineProperty(navigator, 'clipboard', { configurable: true, value: { writeText: ${write} } })`,
      );
    await clipboard('async (text) => { told.push(text); }');
    await page.getByRole('button', { name: 'Copy the note' }).click();
    await page.getByText('Copied.').waitFor();
    expect((await told(page)).at(-1)).toBe(note);
    await clipboard('() => Promise.reject(new Error())');
    await page.getByRole('button', { name: 'Copy the note' }).click();
    await page.getByText('The note is marked: copy it with Ctrl+C.').waitFor();
    expect(await page.evaluate<string>('String(getSelection())')).toContain('Haemoglobin 108 g/L');
  }, 30_000);

  it('saves the week’s food sheet and the dates, and says why there is no food sheet', async () => {
    const { page } = shared;
    await made(page);
    const saved = async (name: string) => {
      const [file] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name }).click(),
      ]);
      return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
    };
    const sheet = await saved('Save the week’s food sheet');
    expect([sheet.name, sheet.bytes.subarray(0, 5).toString()]).toEqual([
      'letter.en.fridge.pdf',
      '%PDF-',
    ]);
    const dates = await saved('Save the dates for a calendar');
    expect(dates.name).toBe('letter.en.ics');
    // RFC 5545, 3.4 and 3.8.4.7: a calendar's events each have a name of their own, which says nothing of a person.
    expect(dates.bytes.toString()).toMatch(/^BEGIN:VCALENDAR\r\n[\s\S]*UID:[0-9a-f]{32}@/);
    expect(dates.bytes.toString()).not.toContain('Sallow');
    await page.getByLabel('Leave food out').check();
    await page.getByRole('button', { name: 'Save the week’s food sheet' }).click();
    await page.getByText('There is no food sheet').waitFor();
  }, 30_000);

  it.each([
    ['report.json', 'Ferritin'],
    ['bundle.fhir.json', 'Ferritin'],
    ['message.hl7', 'Ferritin'],
    ['rows.csv', 'Ferritin'],
    ['rows.xlsx', 'Ferritin'],
    ['pasted.txt', 'Ferritin'],
  ])(
    'opens %s',
    async (file, test) => {
      const { page, complaints } = shared;
      await page.getByRole('button', { name: 'Clear everything' }).click();
      await choose(page, `examples/formats/${file}`);
      await page.getByText(`File: ${file}`).waitFor();
      await page.locator('li.line.ok', { hasText: test }).first().waitFor();
      expect(complaints).toEqual([]);
    },
    30_000,
  );

  it('tells of tablets while they are ticked as prescribed, whatever other steps were chosen', async () => {
    const { page } = shared;
    await made(page);
    const said = letter(page).getByText('Take your iron tablets as we agreed').first();
    const prescribed = page.getByLabel('Iron tablets were prescribed');
    await prescribed.check();
    await said.waitFor();
    await page.getByLabel('Referral', { exact: true }).check();
    await prescribed.uncheck();
    await said.waitFor({ state: 'detached' });
    await prescribed.check();
    await said.waitFor();
  }, 30_000);

  it('lets one of several people of a file be chosen, and forgets what was typed of the one before', async () => {
    const { page } = shared;
    await page.getByRole('button', { name: 'Clear everything' }).click();
    await choose(page, 'examples/evening-run.csv');
    const whose = page.getByLabel('Whose report?');
    await whose.waitFor();
    expect(await whose.locator('option').count()).toBeGreaterThan(1);
    await page.getByLabel('Name on the letter').fill('Somebody Else');
    await whose.selectOption('1');
    await page.getByText('These results are of another person.').waitFor();
    expect(await page.getByLabel('Name on the letter').inputValue()).toBe('');
  }, 30_000);

  it('asks and calls in the language of the page, with the English sheet beneath', async () => {
    const { page } = shared;
    const words = JSON.parse(readFileSync('locales/hi/page.json', 'utf8')) as Record<
      string,
      string
    >;
    await page.getByRole('button', { name: 'Clear everything' }).click();
    await page.getByLabel('Language of this page').selectOption('hi');
    await page.locator('textarea').first().fill(veryLow.replace('9 L	ug/L', '5580	ng/dL'));
    const line = page.locator('li.line.doubtful');
    await line.getByText(words['understood.stands'] ?? '').waitFor();
    expect(await line.locator('.why').textContent()).toMatch(/5580 ng\/dL.*5580 ng\/mL/);
    await page.locator('textarea').first().fill(veryLow);
    await page.getByRole('heading', { name: words['call.title'] ?? '' }).waitFor();
    expect(await page.locator('.call').first().textContent()).toContain('62 g/L');
    expect(await page.locator('.call[lang=en]').textContent()).toContain('62 g/L');
    const lines = await page.locator('.call').first().locator('li').allTextContents();
    expect(new Set(lines).size).toBe(lines.length);
    await page.getByLabel(words['app.language'] ?? '').selectOption('en');
  }, 30_000);
});

describe('the page on a phone', () => {
  it('may be pinched, has targets for a thumb, and nothing wider than 360 pixels', async () => {
    const { page } = shared;
    await page.setViewportSize({ width: 360, height: 640 });
    await made(page);
    await page.evaluate("document.querySelectorAll('details').forEach((e) => { e.open = true; })");
    // WCAG 2.2, 1.4.4: zooming is never switched off.
    const viewport = await page.locator('meta[name=viewport]').getAttribute('content');
    expect(viewport).not.toMatch(/user-scalable|maximum-scale/);
    // WCAG 2.2, 2.5.5 (AAA): 44 by 44 CSS pixels, or as part of a label of that height.
    const small = await page.evaluate<readonly string[]>(`
      [...document.querySelectorAll('button, select, input, textarea, summary, a.jump')]
        .map((part) => part.closest('label.tick, label.file') ?? part)
        .filter((part) => part.getBoundingClientRect().height < 44)
        .map((part) => part.textContent)`);
    expect(small).toEqual([]);
    const wide = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';
    expect(await page.evaluate<number>(wide)).toBeLessThanOrEqual(0);
  }, 30_000);
});
