// Templates a clinic may edit: what they may not do is found before a letter is made, with file and line.
import { describe, expect, it } from 'vitest';
import { openTemplate, renderMarkup } from '../../src/render/markup.js';
import { readMarkup } from '../../src/render/read-markup.js';
import { content, shippedTemplate } from './fixture.js';

function problemsOf(text: string) {
  const opened = openTemplate({ name: 'own', file: 'own.hbs', text }, [
    { name: 'part', file: 'part.hbs', text: '<p>{{title.text}}</p>' },
  ]);
  return opened.ok ? [] : opened.problems;
}

describe('a template', () => {
  const cases: readonly (readonly [name: string, text: string, line: number, says: RegExp])[] = [
    ['raw output', '<p>a</p>\n{{{title.text}}}', 2, /print without escaping/],
    ['raw output by ampersand', '{{&title.text}}', 1, /print without escaping/],
    ['an unknown helper', '\n{{#shout}}a{{/shout}}', 2, /helper "shout"/],
    ['the log helper', '{{log title}}', 1, /helper "log"/],
    ['an unknown partial', '<p>a</p>\n{{> other}}', 2, /include "other"/],
    ['a partial chosen by data', '{{> (lookup title "text")}}', 1, /computed partial/],
    ['a decorator', '{{* inline "x"}}', 1, /statement/],
    ['an unknown tag', '<p>{{title.text}}</p>\n\n<marquee>a</marquee>', 3, /tag <marquee>/],
    ['an unknown class', '{{#if title}}\n<p class="big">a</p>\n{{/if}}', 2, /class "big"/],
    ['a block left open', '{{#if title}}\n<p>a</p>', 2, /read the template/],
  ];

  it.each(cases)('is refused for %s', (_, text, line, says) => {
    const [problem] = problemsOf(text);
    expect(problem?.cannot).toMatch(says);
    expect(problem?.place).toMatchObject({ file: 'own.hbs', row: line });
  });

  it('may include a part and use the helpers', () => {
    expect(
      problemsOf('{{> part}}{{#if (both title (no food))}}{{linked title.text}}{{/if}}'),
    ).toEqual([]);
  });

  it('names the variable that does not exist, with its line', () => {
    const opened = openTemplate({
      name: 'own',
      file: 'own.hbs',
      text: '<p>a</p>\n<p>{{sender.nam}}</p>',
    });
    const made = opened.ok ? renderMarkup(opened.value, content) : opened;
    expect(made.ok ? null : made.problems[0]).toMatchObject({
      cannot: 'cannot find the variable "nam"',
      place: { file: 'own.hbs', row: 2 },
    });
  });

  it('cannot reach the inside of the program', () => {
    const opened = openTemplate({
      name: 'own',
      file: 'own.hbs',
      text: '<p>{{title.constructor.name}}</p>',
    });
    const made = opened.ok ? renderMarkup(opened.value, content) : opened;
    expect(made.ok).toBe(false);
  });

  it('makes phone numbers tappable and leaves hours and dates alone', () => {
    const opened = openTemplate({ name: 'own', file: 'own.hbs', text: '<p>{{linked line}}</p>' });
    const line = 'Call \u2066+64 4 555 0142\u2069, \u20669-17\u2069, by \u20685 May 2026\u2069';
    const made = opened.ok ? renderMarkup(opened.value, { lang: 'en', dir: 'ltr', line }) : opened;
    expect(made.ok && made.value.match(/<a href="[^"]*"/g)).toEqual(['<a href="tel:+6445550142"']);
  });
});

describe('the shipped templates', () => {
  it('put help third when something is urgent', () => {
    const urgent = { ...content, help: { ...content.help, first: true } };
    const order = (told: typeof content) => {
      const made = renderMarkup(shippedTemplate('letter'), told);
      return made.ok ? [...made.value.matchAll(/<h2>(.*?)<\/h2>/g)].map((match) => match[1]) : [];
    };
    expect(order(urgent).slice(0, 3)).toEqual([
      'In short',
      'When to get help',
      'What you need to do',
    ]);
    expect(order(content).slice(0, 3)).toEqual([
      'In short',
      'What you need to do',
      'When to get help',
    ]);
  });

  it('leave out what is absent and keep the rest readable', () => {
    const bare = { ...content, picture: null, food: null, tablets: null, bands: [], cautions: [] };
    const made = renderMarkup(shippedTemplate('letter'), bare);
    expect(made.ok && readMarkup(made.value, 'letter').ok).toBe(true);
  });

  it("arrange the clinician's sheet: headings, lists and tables with their heads", () => {
    const made = renderMarkup(shippedTemplate('reasoning'), {
      lang: 'en',
      title: 'Reasoning',
      about: '',
      intro: 'Intro',
      date: '25 November 2026',
      blocks: [
        {
          slug: 'results',
          look: 'part',
          heading: 'Results',
          paragraphs: ['One'],
          list: ['Two'],
          table: { head: ['Test', 'Value'], rows: [['Ferritin', '7 ug/L']] },
        },
        { slug: 'notes', look: 'part', heading: 'Notes', paragraphs: [], list: [], table: null },
      ],
    });
    const read = made.ok ? readMarkup(made.value, 'reasoning') : made;
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    const table = read.value.blocks
      .flatMap((block) => (block.kind === 'section' ? block.blocks : []))
      .find((block) => block.kind === 'table');
    expect(table?.rows[0]?.[0]).toMatchObject({ header: true, scope: 'row' });
    expect(table?.head[0]?.map(({ scope }) => scope)).toEqual(['col', 'col']);
  });
});
