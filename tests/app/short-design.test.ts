// Every example that becomes a letter, in the short design: one page of A4, and nothing left out that a verdict may not be read without.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { advise } from '../../src/advise/index.js';
import { openKit } from '../../src/app/kit.js';
import { makeLetter } from '../../src/app/make-letter.js';
import { understand } from '../../src/app/understand.js';
import { readInput } from '../../src/intake/index.js';
import { composeLetter } from '../../src/letter/index.js';
import { clinic, english } from '../letter/fixtures.js';
import { readPdf } from '../render/pdf/read-back.js';
import { plainWishes, today } from './wishes.js';

const kit = await openKit({ design: 'short' });
const { choices } = plainWishes;
const wishes = {
  ...plainWishes,
  formats: ['pdf', 'text'] as const,
  form: { paper: 'A4', size: 'compact' } as const,
};

type Short = { readonly name: string; readonly pages: number; readonly text: string };

async function shortOf(name: string): Promise<(Short & { readonly owed: string[] }) | null> {
  const bytes = readFileSync(`examples/${name}`);
  const [written] = (await readInput({ name, bytes })).reports;
  const read = written?.ok === true ? understand(written.value, today, []) : null;
  if (read === null || !read.ok) return null;
  const { report, interpretation } = read.value;
  const made = await makeLetter(read.value, clinic, wishes, kit);
  const whole = composeLetter({
    report,
    interpretation,
    advice: advise(report, interpretation, choices, today),
    clinic,
    language: english,
    options: { analogy: 'shirt-shop', checkedBy: null, date: today, easyRead: false },
  });
  if (made.kind !== 'made' || !whole.ok) return null;
  const file = (ending: string) => made.files.find((each) => each.ending === ending)?.content ?? '';
  const { results, meaning } = whole.value;
  const owed = [
    ...results.rows.flatMap(({ provisos }) => provisos),
    ...results.notMeasured,
    ...meaning.paragraphs.flat(),
  ];
  return {
    name,
    pages: readPdf(Buffer.from(file('pdf'))).pages.length,
    text: String(file('txt')).replace(/\s+/g, ' '),
    owed: owed.map(({ text }) => text.replace(/\s+/g, ' ')),
  };
}

const names = readdirSync('examples').filter((name) => /(?<!clinic)\.json$/.test(name));
const made = (await Promise.all(names.map(shortOf))).flatMap((one) => (one === null ? [] : [one]));

describe('the short letter', () => {
  it('is made of most examples; the others are held or asked about', () => {
    expect(made.length).toBeGreaterThan(15);
  });

  it.each(made)('$name: is one page', ({ pages }) => {
    expect(pages).toBe(1);
  });

  it.each(made)('$name: says provisos, missing tests and meaning', ({ text, owed }) => {
    for (const sentence of owed) expect(text).toContain(sentence);
  });

  it('says of an example that the laboratory and the guideline differ', () => {
    const letter = made.find(({ name }) => name === 'low-stores-lab-says-usual.json');
    expect(letter?.text).toContain('Health guides see it as low.');
  });
});
