// The print house's file, read back: the address in the window and nothing else there, sheets, tags.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPasswords } from '../../src/mailing/passwords.js';
import { readAddresses } from '../../src/mailing/print/addresses.js';
import { openPrintFile } from '../../src/mailing/print/print-file.js';
import { testPage } from '../../src/mailing/print/test-page.js';
import { findWindow, points, windowPresets } from '../../src/mailing/print/windows.js';
import type { Block, LetterDocument } from '../../src/render/block.js';
import type { Fonts } from '../../src/render/pdf/index.js';
import { pdfjsWords } from '../render/pdf/pdfjs-text.js';
import { testFonts } from '../render/pdf/sample.js';

let folder = '';
let fonts: Fonts;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'ironleaf-print-'));
  fonts = await testFonts();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (text: string) => ({ text, strong: false, lang: null, isolate: null, href: null });
const paragraph = (text: string): Block => ({ kind: 'paragraph', look: 'body', runs: [run(text)] });
const letter = (lines: number): LetterDocument => ({
  lang: 'en',
  dir: 'ltr',
  title: 'Your iron results',
  header: { runs: [run('Zyx Quillfeather')], pageOf: null },
  footer: null,
  blocks: Array.from({ length: lines }, (_, at) => paragraph(`Ferritin ${at}.`)),
});

const address = ['Zyx Quillfeather', '4 Lantern Row', 'Saltmarsh Bay'];

async function print(
  name: string,
  parts: { duplex?: boolean; window?: string | null; address?: readonly string[]; lang?: string },
  lines: readonly number[],
) {
  const path = join(folder, name);
  const window = parts.window == null ? null : findWindow(parts.window);
  const file = openPrintFile({
    path,
    form: { paper: 'A4', size: 'standard' },
    fonts,
    window,
    folds: window !== null,
    box: false,
    duplex: parts.duplex ?? true,
    facts: { title: 'Letters', created: '2026-11-25T00:00:00Z', producerVersion: '0' },
  });
  const sheets: number[] = [];
  for (const each of lines) {
    const added = await file.add(
      { ...letter(each), lang: parts.lang ?? 'en' },
      window === null ? null : (parts.address ?? address),
    );
    if (added.ok) sheets.push(added.value);
  }
  await file.finish();
  return { sheets, pages: await pdfjsWords(readFileSync(path)) };
}

describe('a print file', () => {
  it('begins every letter on a sheet of its own: an odd letter has a blank back', async () => {
    const { sheets, pages } = await print('duplex.pdf', {}, [3, 60, 3]);
    expect(sheets).toEqual([1, 1, 1]);
    expect(pages.map((page) => page.length > 0)).toEqual([true, false, true, true, true, false]);
  });

  it('has no blank pages when printed on one side', async () => {
    const { sheets, pages } = await print('simplex.pdf', { duplex: false }, [3, 60]);
    expect(sheets).toEqual([1, 2]);
    expect(pages).toHaveLength(3);
  });
});

describe.each(windowPresets.map(({ id }) => id))('window %s', (id) => {
  const window = windowPresets.find((row) => row.id === id);

  it('shows the whole address, clear of its edges, and nothing of the letter', async () => {
    if (window === undefined) throw new Error('no such window');
    const { pages } = await print(`${id}.pdf`, { window: id }, [60]);
    const [left, top] = [points(window.left), points(window.top)];
    const [right, bottom] = [left + points(window.width), top + points(window.height)];
    const inside = (pages[0] ?? []).filter(({ y }) => y > top && y - 10 < bottom);
    expect(inside.map(({ text }) => text)).toEqual(address);
    for (const { x, y } of inside) {
      expect(x).toBeGreaterThanOrEqual(left + points(window.clear) - 0.1);
      expect(x).toBeLessThan(right);
      expect(y - 10).toBeGreaterThanOrEqual(top + points(window.clear) - 0.1);
      expect(y).toBeLessThanOrEqual(bottom - points(window.clear) + 0.1);
    }
    const body = (pages[0] ?? []).filter(({ text }) => text.startsWith('Ferritin'));
    expect(Math.min(...body.map(({ y }) => y - 14))).toBeGreaterThanOrEqual(
      points(window.bodyFrom) - 1,
    );
    expect(pages[1]?.some(({ text }) => text.startsWith('Ferritin'))).toBe(true);
  });

  it('sets lines of two directions as one block', async () => {
    const mixed = ['ليلى حداد', '4 Lantern Row', 'Saltmarsh Bay'];
    const { pages } = await print(
      `${id}-mixed.pdf`,
      { window: id, lang: 'ar', address: mixed },
      [1],
    );
    const street = pages[0]?.find(({ text }) => text === mixed[1]);
    const name = pages[0]?.filter(({ text }) => /\p{Script=Arabic}/u.test(text)) ?? [];
    const left = Math.min(...name.map(({ x }) => x));
    expect(Math.abs(left - (street?.x ?? 99))).toBeLessThan(2);
  });

  it('is read first, before the letter', async () => {
    const [first] = (await print(`${id}-order.pdf`, { window: id }, [2])).pages;
    const texts = first?.map(({ text }) => text) ?? [];
    expect(texts.indexOf(address[2] ?? '')).toBeLessThan(texts.indexOf('Ferritin 0.'));
  });

  it('has a test page with its box', async () => {
    if (window === undefined) throw new Error('no such window');
    const { document, address: invented } = testPage(window);
    const path = join(folder, `${id}-test.pdf`);
    const job = {
      path,
      form: { paper: 'A4', size: 'standard' },
      fonts,
      window,
      folds: true,
    } as const;
    const facts = { title: 'Test', created: '2026-11-25T00:00:00Z', producerVersion: '0' };
    const file = openPrintFile({ ...job, box: true, duplex: false, facts });
    expect(await file.add(document, invented)).toMatchObject({ ok: true, value: 1 });
    await file.finish();
    expect(await pdfjsWords(readFileSync(path))).toHaveLength(1);
  });
});

describe('an address', () => {
  it('that does not fit the window is refused, not cut', async () => {
    const file = openPrintFile({
      path: join(folder, 'wide.pdf'),
      form: { paper: 'A4', size: 'standard' },
      fonts,
      window: findWindow('din-5008-b'),
      folds: false,
      box: false,
      duplex: true,
      facts: { title: 'Letters', created: '2026-11-25T00:00:00Z', producerVersion: '0' },
    });
    const wide = await file.add(letter(1), ['x'.repeat(200)]);
    const tall = await file.add(
      letter(1),
      Array.from({ length: 12 }, () => 'line'),
    );
    expect([wide.ok, tall.ok]).toEqual([false, false]);
    await file.giveUp();
  });

  it('is read from a table with commas or semicolons, by id', () => {
    for (const sign of [',', ';']) {
      const text = `\uFEFFid${sign}name${sign}street\r\nSB-1${sign}"Ida ""I"" Tern"${sign} 1 Quay \r\nSB-2${sign}${sign}\r\n`;
      const read = readAddresses('post.csv', text);
      expect(read.ok && [...read.value]).toEqual([['SB-1', ['Ida "I" Tern', '1 Quay']]]);
    }
  });

  it('may not be given twice for one id, and the problem names nobody', () => {
    const read = readAddresses('post.csv', 'id,a\nSB-1,Ida Tern\nSB-1,Orla Finch\n');
    expect(read.ok).toBe(false);
    expect(JSON.stringify(read)).not.toMatch(/Tern|Finch/);
    expect(read.ok ? [] : read.problems.map(({ place }) => place.row)).toEqual([3]);
  });
});

describe('a password', () => {
  it('that cannot be used is named by its row, even where a missing comma made it part of the id', () => {
    const read = readPasswords('locks.csv', 'id,password\n\nSB-1,short\nSB-2-tern-quay-41,x\n');
    expect(read.ok ? [] : read.problems.map(({ place }) => place.row)).toEqual([3, 4]);
    expect(JSON.stringify(read)).not.toMatch(/tern-quay|short/);
  });
});
