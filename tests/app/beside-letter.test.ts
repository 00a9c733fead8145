// What lies beside a letter: the week's sheet on one page and a calendar that names nobody.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import ICAL from 'ical.js';
import { afterAll, describe, expect, it } from 'vitest';
import { makeExtras } from '../../src/app/commands/letter-extras.js';
import { openKit } from '../../src/app/kit.js';
import { makeLetter } from '../../src/app/make-letter.js';
import { understand } from '../../src/app/understand.js';
import { readInput } from '../../src/intake/index.js';
import { clinic } from '../letter/fixtures.js';
import { longer, pseudoLanguage } from '../letter/pseudo.js';
import { readPdf } from '../render/pdf/read-back.js';
import { openDesk } from './program.js';
import { plainWishes, today } from './wishes.js';

const kit = await openKit();
const wishes = plainWishes;

async function understood(path: string) {
  const { reports } = await readInput({ name: 'report.json', bytes: readFileSync(path) });
  const [written] = reports;
  const read = written?.ok === true ? understand(written.value, today, []) : null;
  if (read === null || !read.ok) throw new Error(`${path} cannot be read`);
  return read.value;
}

const person = await understood('tests/advise/diets/vegetarian-south-asian.json');
const both = { fridgeSheet: true, calendar: true };
const made = await makeExtras(person, 'report', both, { clinic, wishes, kit });
const bytesOf = (ending: string) => {
  const file = made.files.find(({ name }) => name.endsWith(ending));
  if (file === undefined) throw new Error(`no ${ending}`);
  return Buffer.from(file.content);
};

describe("the week's sheet", () => {
  it('is HTML and PDF named beside the letter', () => {
    expect(made.files.map(({ name }) => name)).toEqual([
      'report.en.fridge.html',
      'report.en.fridge.pdf',
      'report.en.ics',
    ]);
    expect(made.said).toEqual([]);
  });

  it.each(['A4', 'Letter'] as const)('fills one page of %s', async (paper) => {
    const form = { paper, size: 'standard' as const };
    const extras = await makeExtras(person, 'report', both, {
      clinic,
      wishes: { ...wishes, form },
      kit,
    });
    const pdf = extras.files.find(({ name }) => name.endsWith('.pdf'));
    expect(readPdf(Buffer.from(pdf?.content ?? '')).pages).toHaveLength(1);
  });

  // Texts grow by about a third when translated out of English: common practice, no source.
  it.each(['A4', 'Letter'] as const)(
    'still fills one page of %s in longer words',
    async (paper) => {
      const language = pseudoLanguage('en-XA', 'ltr', longer);
      const foreign = { ...kit, language: async () => language };
      const form = { paper, size: 'standard' as const };
      const desk = { clinic, wishes: { ...wishes, form }, kit: foreign };
      const extras = await makeExtras(person, 'report', both, desk);
      expect(extras.said).toEqual([]);
      const pdf = extras.files.find(({ name }) => name.endsWith('.pdf'));
      expect(readPdf(Buffer.from(pdf?.content ?? '')).pages).toHaveLength(1);
    },
  );

  it('names nobody', () => {
    const { name, id } = person.report.patient;
    const sheet = bytesOf('fridge.html').toString();
    for (const secret of [name ?? '', id ?? '']) expect(sheet).not.toContain(secret);
  });

  // Iron-raising food must not be suggested with overload (EASL 2022) nor beside an urgent result.
  it.each(['too-much-iron', 'raised-stores-marker', 'all-in-range', 'inflammation', 'thick-blood'])(
    'is not made for %s, and the operator is told',
    async (name) => {
      const other = await understood(`examples/${name}.json`);
      const extras = await makeExtras(other, name, both, { clinic, wishes, kit });
      expect(extras.files.map((file) => file.name)).toEqual([`${name}.en.ics`]);
      expect(extras.said).toEqual([expect.stringMatching(/no week’s sheet was made/)]);
      expect(extras.refused).toBe(false);
    },
  );
});

describe('the calendar', () => {
  const text = bytesOf('.ics').toString();
  const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');

  it('holds the test to come and the day after which to call', () => {
    const starts = events.map((event) => String(new ICAL.Event(event).startDate));
    expect(starts.every((day) => day > today)).toBe(true);
    const words = events.map((event) => new ICAL.Event(event).summary).join(' ');
    expect(words).toContain('one more blood test');
    expect(words).toContain('If you have not heard from us');
  });

  it('holds no name, number, result or word about iron', () => {
    const { name, id } = person.report.patient;
    for (const secret of [...(name?.split(' ') ?? []), id ?? ''])
      expect(text).not.toContain(secret);
    for (const { copied } of person.interpretation.results)
      expect(text).not.toContain(`${copied.value} ${copied.unit}`);
    expect(text).not.toMatch(/ferritin|haemoglobin|anaemia|iron (is|store)/i);
  });

  it('is the same file each time, and another for another panel', async () => {
    const again = await makeExtras(person, 'report', both, { clinic, wishes, kit });
    expect(again.files.at(-1)?.content).toBe(made.files.at(-1)?.content);
    const uids = (content: string) => content.match(/^UID:.*$/gm) ?? [];
    const other = await understood('tests/advise/diets/no-beef-south-asian.json');
    const theirs = await makeExtras(other, 'report', both, { clinic, wishes, kit });
    const shared = uids(String(theirs.files.at(-1)?.content)).filter((uid) => text.includes(uid));
    expect(shared).toEqual([]);
  });
});

describe("a clinician's own words", () => {
  it('stand in a box as typed, in the letter and not in the calendar', async () => {
    const words = 'Bring <all> your tablets & "this" sheet.';
    const steps = [{ step: 'referral' as const, by: '2026-12-09', words }];
    const chosen = { ...wishes, formats: ['html'] as const, choices: { ...wishes.choices, steps } };
    const letter = await makeLetter(person, clinic, chosen, kit);
    const html = letter.kind === 'made' ? String(letter.files[0]?.content) : '';
    expect(html).toMatch(/<div class="notice plain"><p[^>]*>Bring &lt;all&gt; your tablets &amp;/);
    const extras = await makeExtras(person, 'report', both, { clinic, wishes: chosen, kit });
    expect(String(extras.files.at(-1)?.content)).not.toContain('Bring');
  });
});

describe('ironleaf letter', () => {
  const desk = openDesk();
  afterAll(desk.clear);
  const day = ['--demo', '--date', today, '--out', 'out'] as const;

  it('writes the sheet and the calendar beside the letter and prints their paths', () => {
    const report = resolve('tests/advise/diets/vegan.json');
    const asked = ['--fridge-sheet', '--calendar', '--format', 'html'] as const;
    const step = ['--next-step', 'referral=2026-12-09', '--words', 'Bring your list.'] as const;
    const ran = desk.run('letter', report, ...day, ...asked, ...step);
    expect(ran.stderr).toBe('');
    expect(ran.stdout.trim().split('\n')).toEqual(
      ['html', 'fridge.html', 'fridge.pdf', 'ics'].map((ending) => `out/vegan.en.${ending}`),
    );
    expect(desk.read('out/vegan.en.html')).toContain('Bring your list.');
  });

  it('makes the letter and no sheet where iron may harm, with a sentence', () => {
    const report = resolve('examples/too-much-iron.json');
    const ran = desk.run('letter', report, ...day, '--fridge-sheet', '--format', 'html');
    expect(ran.stdout).toBe('out/too-much-iron.en.html\n');
    expect(ran.stderr).toMatch(/no week’s sheet was made/);
    expect(ran.status).toBe(0);
  });

  it('makes neither for a report that is held', () => {
    const report = resolve('examples/very-low-haemoglobin.json');
    const ran = desk.run('letter', report, ...day, '--fridge-sheet', '--calendar');
    expect(ran.stdout).toContain('call-sheet');
    expect(ran.stdout).not.toMatch(/fridge|\.ics/);
    expect(ran.status).toBe(1);
  });
});
