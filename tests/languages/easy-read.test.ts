// The easy-read letter says everything the usual one does, one idea beside one pictogram, and the built program makes it.
import { resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { composeEasyRead, composeLetter } from '../../src/letter/index.js';
import { drawPicture } from '../../src/render/pictures/draw-picture.js';
import { writeSvg } from '../../src/render/pictures/write-svg.js';
import { readMarkup } from '../../src/render/read-markup.js';
import { openDesk } from '../app/program.js';
import { letterOf } from '../letter/fixtures.js';
import { everySaid } from '../letter/read-content.js';
import { languageOf, translatedTags } from './folders.js';

const pattern = 'iron-deficiency-anaemia' as const;

describe('an easy-read letter', () => {
  const input = letterOf({ pattern });
  const easy = composeEasyRead(input);
  if (!easy.ok) throw new Error(JSON.stringify(easy.problems));
  const ideas = easy.value.groups.flatMap((group) => group.ideas);

  it('says every message of the usual letter but its pictures, its boxes to tick and its list headings', () => {
    const usual = composeLetter({ ...input, options: { ...input.options, easyRead: true } });
    const said = new Set(everySaid(easy.value).map(({ key }) => key));
    const unsaid = usual.ok
      ? everySaid(usual.value)
          .map(({ key }) => key)
          .filter((key) => !said.has(key))
          .filter(
            (key) =>
              !/^(line|trend|results)\.|^title|^food\.list\.|^closing\.heading|^your-steps\.tick/.test(
                key,
              ),
          )
      : ['no letter'];
    expect([...new Set(unsaid)]).toEqual([]);
  });

  it('has a pictogram with words for whoever cannot see it beside every idea, and no analogy', () => {
    expect(ideas.length).toBeGreaterThan(15);
    for (const { figure } of ideas) expect(figure.title.text).not.toBe('');
    expect(everySaid(easy.value).filter(({ key }) => key.startsWith('picture.'))).toEqual([]);
  });

  it('has at most three short lines in an idea outside lists of signs and results', () => {
    const prose = ideas.filter(({ lines }) =>
      lines.every(({ key }) => !/^(sign|help|result|value|foods|food\.list)/.test(key)),
    );
    for (const { lines } of prose) expect(lines.length).toBeLessThanOrEqual(3);
  });

  it('keeps cautions out of the part about how to reach the clinic', () => {
    const contact = easy.value.groups.find(({ heading }) => heading.key === 'contact.heading');
    const keys = contact?.ideas.flatMap(({ lines }) => lines.map(({ key }) => key)) ?? [];
    expect(keys.length).toBeGreaterThan(1);
    expect(keys.filter((key) => key.startsWith('caution.'))).toEqual([]);
  });

  it('draws pictograms in the closed subset that its own reader accepts', () => {
    for (const { figure } of ideas) {
      const scene = drawPicture(figure, { lang: 'en', dir: 'ltr' });
      const markup = writeSvg(scene);
      expect(markup).toContain(figure.title.text);
      expect(
        readMarkup(
          `<article lang="en" dir="ltr" title="x"><figure>${markup}</figure></article>`,
          'x.hbs',
        ).ok,
      ).toBe(true);
    }
  });

  it.each(translatedTags)('is made in %s with the same ideas', (tag) => {
    const made = composeEasyRead(letterOf({ pattern, language: languageOf(tag) }));
    expect(made.ok && made.value.groups.map((group) => group.ideas.length)).toEqual(
      easy.value.groups.map((group) => group.ideas.length),
    );
  });
});

describe('ironleaf letter', () => {
  const desk = openDesk();
  afterAll(desk.clear);
  const report = resolve('examples/heavy-periods.json');
  const day = ['--demo', '--date', '2026-11-25', '--out', 'out'] as const;

  it('makes the easy-read letter beside a script, ranges with a dash read as ranges', () => {
    const ran = desk.run('letter', report, ...day, '--easy-read', '--format', 'html,script');
    expect(ran.stderr).toBe('');
    expect(desk.made()).toEqual(['heavy-periods.en.html', 'heavy-periods.en.script.txt']);
    expect(desk.read('out/heavy-periods.en.script.txt')).toContain('Usual range: 115 to 155.');
    expect(desk.read('out/heavy-periods.en.html')).toContain('A warning sign');
  });

  it('refuses a draft where only signed translations are wanted, and writes nothing', () => {
    const ran = desk.run('letter', report, ...day, '--language', 'pl', '--signed-only');
    expect(ran.status).toBe(1);
    expect(ran.stderr).toMatch(/locales\/pl\/letter\.json.*signed translations only/);
    expect(desk.made().some((name) => name.includes('.pl.'))).toBe(false);
  });

  it('lists the languages with their state for other programs', () => {
    const rows = JSON.parse(desk.run('languages', '--json').stdout) as {
      tag: string;
      state: string;
    }[];
    expect(rows.find(({ tag }) => tag === 'en')?.state).toBe('source');
    expect(
      rows.filter(({ tag }) => tag !== 'en').every(({ state }) => state === 'draft-machine'),
    ).toBe(true);
  });

  it('exports, proofs and makes a sheet to translate back', () => {
    desk.run('languages', 'export', 'pl', '--to', 'xliff', '--out', 'out');
    desk.run('languages', 'proof', 'pl', '--out', 'out');
    desk.run('languages', 'back-translation', 'pl', '--out', 'out');
    expect(desk.read('out/pl.xlf')).toContain('trgLang="pl"');
    expect(desk.read('out/pl.proof.html')).toContain('Your iron blood test results');
    // Blind: whoever translates back sees no English and no key.
    expect(desk.read('out/pl.back-translation.html')).not.toMatch(/Chest pain|chest-pain/);
    expect(desk.read('out/pl.back-translation-key.html')).toContain('Chest pain');
  });
});
