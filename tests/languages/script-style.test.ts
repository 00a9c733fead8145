// Urdu in its two styles: a letter in each is made in the program's own rooms; faces, language and words are read from it.
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { scriptStyleOf } from '../../src/app/commands/letter-options.js';
import { readClinic } from '../../src/app/config.js';
import { type Kit, openKit } from '../../src/app/kit.js';
import { documentOf } from '../../src/app/make-letter.js';
import { understand, type Understood } from '../../src/app/understand.js';
import { readInput } from '../../src/intake/index.js';
import type { Clinic } from '../../src/letter/index.js';
import { writeHtml } from '../../src/render/html.js';
import { type Fonts, layOut } from '../../src/render/pdf/index.js';
import { languagesOf } from '../../src/render/pdf/languages.js';
import { type ScriptStyle, scriptStyles } from '../../src/render/script-style.js';
import { writeText } from '../../src/render/text.js';
import { testFonts } from '../render/pdf/sample.js';

const bytesOf = (file: string) => new Uint8Array(readFileSync(file));
const form = { paper: 'A4', size: 'standard' } as const;
let kit: Kit;
let fonts: Fonts;
let clinic: Clinic;
let understood: Understood;

beforeAll(async () => {
  kit = await openKit();
  fonts = await testFonts();
  const read = readClinic('clinic.json', bytesOf('examples/clinic.json'), true);
  const file = 'examples/getting-better.json';
  const { reports } = await readInput({ name: file, bytes: bytesOf(file) });
  const [written] = reports;
  const found = written?.ok ? understand(written.value, '2026-11-25', []) : written;
  if (!read.ok || !found?.ok) throw new Error('The example cannot be read');
  clinic = read.value;
  understood = found.value;
});

async function letterIn(scriptStyle: ScriptStyle, language = 'ur') {
  const wishes = {
    language,
    beside: null,
    formats: [],
    form,
    analogy: 'shirt-shop',
    easyRead: false,
    scriptStyle,
    checkedBy: null,
    done: null,
    choices: { steps: null, tabletsPrescribed: null, noFood: false },
    date: '2026-11-25',
  } as const;
  const made = await documentOf(understood, clinic, wishes, kit);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

async function facesOf(style: ScriptStyle): Promise<ReadonlySet<string>> {
  const letter = await letterIn(style);
  await fonts.load(languagesOf(letter));
  const placed = layOut(letter, form, fonts);
  if (!placed.ok) throw new Error(JSON.stringify(placed.problems));
  const files = placed.value.pages
    .flatMap(({ ink, running }) => [...ink, ...running])
    .flatMap((ink) => {
      if (ink.kind === 'text') return [ink.file];
      if (ink.kind !== 'picture') return [];
      return ink.shapes.flatMap((shape) => (shape.kind === 'letters' ? [shape.file] : []));
    });
  return new Set(files.map((file) => file.replace(/-.*/, '')));
}

describe('a letter in Urdu', () => {
  it('is set in Nastaliq, or wholly in Naskh, text and pictures alike', async () => {
    expect([...(await facesOf('nastaliq'))].sort()).toEqual(['NotoNastaliqUrdu', 'NotoSans']);
    expect([...(await facesOf('naskh'))].sort()).toEqual(['NotoSans', 'Vazirmatn']);
  });

  it('says the same in both, and only the tag of its language differs on the screen', async () => {
    const [nastaliq, naskh] = await Promise.all(scriptStyles.map((style) => letterIn(style)));
    if (nastaliq === undefined || naskh === undefined) throw new Error('no letter');
    expect(writeText(naskh)).toBe(writeText(nastaliq));
    expect(writeHtml(nastaliq, form)).toContain('<html lang="ur" dir="rtl">');
    // BCP 47 (RFC 5646), section 2.2.3: the script stands after the language.
    expect(writeHtml(naskh, form)).toContain('<html lang="ur-Arab" dir="rtl">');
  });

  it('needs no more pages in Naskh', async () => {
    const pages = await Promise.all(
      scriptStyles.map(async (style) => {
        const letter = await letterIn(style);
        await fonts.load(languagesOf(letter));
        const placed = layOut(letter, form, fonts);
        return placed.ok ? placed.value.pages.length : 0;
      }),
    );
    expect(pages[1]).toBeLessThanOrEqual(pages[0] ?? 0);
  });
});

describe('the style of a script', () => {
  it('changes no other language', async () => {
    expect(await letterIn('naskh', 'ar')).toEqual(await letterIn('nastaliq', 'ar'));
  });

  it('may be asked for where one of the languages has two', () => {
    expect(scriptStyleOf('naskh', ['en', 'ur'])).toEqual({ scriptStyle: 'naskh' });
    expect(scriptStyleOf(undefined, ['en'])).toEqual({});
    expect(() => scriptStyleOf('naskh', ['ar', null])).toThrow();
  });
});
