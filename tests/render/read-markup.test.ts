// Markup of a letter in, blocks out: the subset is closed, and what is outside it is named with its line.
import { describe, expect, it } from 'vitest';
import type { Block, Run } from '../../src/render/block.js';
import { readMarkup } from '../../src/render/read-markup.js';

function letter(body: string): string {
  return `<article lang="en" dir="ltr" title="T">\n${body}\n</article>`;
}

function blocksOf(body: string): readonly Block[] {
  const read = readMarkup(letter(body), 'letter.hbs');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value.blocks;
}

function runsOf(body: string): readonly Run[] {
  const [block] = blocksOf(body);
  if (block?.kind !== 'paragraph') throw new Error('no paragraph');
  return block.runs;
}

describe('what the subset refuses', () => {
  const cases: readonly (readonly [name: string, body: string, line: number, says: RegExp])[] = [
    ['an unknown tag', '<p>a</p>\n<div>b</div>', 3, /tag <div>/],
    ['a script', '<p>a</p>\n\n<script>b</script>', 4, /tag <script>/],
    ['an unknown class', '<p class="loud">a</p>', 2, /class "loud" on <p>/],
    ['one unknown class among known ones', '<p class="lead loud">a</p>', 2, /class "loud"/],
    ['an unknown attribute', '<p>a</p>\n<p onclick="x()">b</p>', 3, /attribute onclick/],
    ['a style', '<p style="color:red">a</p>', 2, /attribute style/],
    ['a foreign address', '<p><a href="javascript:x()">a</a></p>', 2, /this href/],
    ['an address without encryption', '<p><a href="http://a.example">a</a></p>', 2, /this href/],
    ['a direction that is none', '<section dir="up"><p>a</p></section>', 2, /this dir/],
    [
      'a sign that nobody drew',
      '<section data-sign="skull"><p>a</p></section>',
      2,
      /this data-sign/,
    ],
    ['a numbered list to tick', '<ol class="ticks"><li>a</li></ol>', 2, /class "ticks" on <ol>/],
    ['text outside a paragraph', '<p>a</p>\nloose words', 2, /text outside a paragraph/],
    ['a paragraph in a paragraph', '<p>a<p>b</p>', 2, /end of <p>/],
    ['a tag left open', '<p>a', 2, /end of <p>/],
    ['a tag closed twice', '<p>a</p></section>', 2, /close a tag that is not open/],
    ['a heading inside a line of text', '<p>a <h2>b</h2></p>', 2, /<h2>|<p>/],
    ['a list item outside a list', '<li>a</li>', 2, /place <li> here/],
    [
      'rows of different widths',
      '<table><tbody><tr><td>a</td></tr><tr><td>a</td><td>b</td></tr></tbody></table>',
      2,
      /read <table>/,
    ],
    [
      'a figure without a picture',
      '<figure><figcaption>a</figcaption></figure>',
      2,
      /read <figure>/,
    ],
  ];

  it.each(cases)('names %s and its line', (_, body, line, says) => {
    const read = readMarkup(letter(body), 'letter.hbs');
    expect(read.ok).toBe(false);
    if (read.ok) return;
    const [problem] = read.problems;
    expect(problem?.cannot).toMatch(says);
    expect(problem?.place).toEqual({ file: 'letter.hbs', row: line, field: null });
  });

  it('collects every problem, not only the first', () => {
    const read = readMarkup(letter('<p class="x">a</p>\n<div>b</div>\n<p id="y">c</p>'), 'f');
    expect(read.ok ? [] : read.problems.map(({ place }) => place.row)).toEqual([2, 3, 4]);
  });

  it('asks for one article with language, direction and title', () => {
    expect(readMarkup('<p>a</p>', 'f').ok).toBe(false);
    expect(readMarkup('<article lang="en" title="T"><p>a</p></article>', 'f').ok).toBe(false);
  });
});

describe('what the subset reads', () => {
  it('takes a list to tick and a sign beside words', () => {
    const [list] = blocksOf(
      '<ul class="ticks"><li><section data-sign="phone"><p>a</p></section></li></ul>',
    );
    expect(list).toMatchObject({
      kind: 'list',
      ordered: false,
      ticks: true,
      items: [[{ kind: 'section', sign: 'phone', blocks: [{ kind: 'paragraph' }] }]],
    });
  });

  it('folds white space as HTML does', () => {
    expect(
      runsOf('<p>\n  one\n  <strong>two </strong>\n three </p>').map(({ text }) => text),
    ).toEqual(['one ', 'two ', 'three']);
  });

  it('turns isolate characters into isolated runs', () => {
    const runs = runsOf(
      '<p>Call \u2066555 0142\u2069 or \u2068\u0645\u0631\u064A\u0645\u2069.</p>',
    );
    expect(runs.map(({ text, isolate }) => [text, isolate])).toEqual([
      ['Call ', null],
      ['555 0142', 'ltr'],
      [' or ', null],
      ['\u0645\u0631\u064A\u0645', 'rtl'],
      ['.', null],
    ]);
  });

  it('keeps an isolate whole where an entity stands in it', () => {
    const runs = runsOf('<p>\u2068Ana &amp; Co &lt;x&gt;\u2069 &amp; more</p>');
    expect(runs.map(({ text, isolate }) => [text, isolate])).toEqual([
      ['Ana & Co <x>', 'ltr'],
      [' & more', null],
    ]);
  });

  it('keeps two isolates beside each other apart', () => {
    const runs = runsOf('<p>\u206612\u2069\u206634\u2069</p>');
    expect(runs.map(({ text }) => text)).toEqual(['12', '34']);
  });

  it('keeps language, strength and address of nested text', () => {
    const [run] = runsOf(
      '<p><strong><span lang="ur"><a href="tel:5550142">x</a></span></strong></p>',
    );
    expect(run).toEqual({
      text: 'x',
      strong: true,
      lang: 'ur',
      isolate: null,
      href: 'tel:5550142',
    });
  });

  it('leaves out a paragraph whose variables were all empty', () => {
    expect(blocksOf('<p> </p><p>a</p>')).toHaveLength(1);
  });

  it('reads lists, tables, notices and breaks', () => {
    const kinds = blocksOf(
      '<ol><li>a</li><li><p>b</p><ul><li>c</li></ul></li></ol><table class="results"><caption>t</caption><thead><tr><th scope="col">h</th></tr></thead><tbody><tr><td>d</td></tr></tbody></table><aside class="urgent"><p>e</p></aside><hr><hr class="page-break">',
    ).map(({ kind }) => kind);
    expect(kinds).toEqual(['list', 'table', 'notice', 'rule', 'page-break']);
  });

  it('sets what stands in a section beside two by two; one left over stands alone', () => {
    const [section] = blocksOf('<section class="keep beside"><p>a</p><p>b</p><p>c</p></section>');
    if (section?.kind !== 'section') throw new Error('no section');
    expect(section.keep).toBe(true);
    expect(section.blocks.map(({ kind }) => kind)).toEqual(['pair', 'paragraph']);
  });

  it('leaves out a notice in which nothing was left', () => {
    expect(blocksOf('<aside class="plain"><p> </p></aside><p>a</p>')).toHaveLength(1);
  });

  it('reads the running lines outside the reading order', () => {
    const read = readMarkup(
      letter(
        '<footer class="running" data-page-of="Page {page} of {pages}"><p>f</p></footer><p>a</p>',
      ),
      'f',
    );
    expect(read.ok && read.value.footer?.pageOf).toBe('Page {page} of {pages}');
    expect(read.ok && read.value.blocks).toHaveLength(1);
  });
});
