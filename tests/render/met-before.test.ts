// Letters of one evening go in one after another; each comes out as if it were the only one (own rule, no source).
import { describe, expect, it } from 'vitest';
import { drawPdf } from '../../src/render/pdf/index.js';
import { readMarkup } from '../../src/render/read-markup.js';
import { a4, facts, testFonts } from './pdf/sample.js';

const picture =
  '<svg viewBox="0 0 180 52" role="img"><title>A line</title><desc>A mark.</desc><line class="axis" x1="0" y1="9" x2="99" y2="9"/><text class="text" x="9" y="40" font-size="12">9</text></svg>';
const shared = `<section class="beside"><section><p class="address">Phone: <a href="tel:5550142">555-0142</a></p></section><section><p>Open</p></section></section>
<aside class="urgent"><h2>Help</h2><ul><li>Chest pain</li><li><p>Twice</p><p>said</p></li></ul><p>Twice</p></aside>
<p>Twice</p>
<hr>
<table><thead><tr><th>Test</th><th>Result</th></tr></thead><tbody><tr><th>Iron</th><td></td></tr></tbody></table>`;

const letterTo = (name: string, more = '') =>
  `<article lang="en" dir="ltr" title="T"><header><p>${name}</p></header>${more}
<section class="keep">
<h2>Results of ${name}</h2>
<section class="keep beside wide"><section><h3>Iron</h3><p class="small">Twice</p></section><figure>${picture}</figure></section>
<p>Twice</p>
</section>
${shared}
<p>Twice</p>
${shared}
</article>`;

/** A comment keeps a letter from being read part by part. */
const wholeLetterTo = (name: string) => letterTo(name, '<!-- whole -->');

function read(markup: string) {
  const letter = readMarkup(markup, 'letter.hbs');
  if (!letter.ok) throw new Error(JSON.stringify(letter.problems));
  return letter.value;
}

describe('a letter after others', () => {
  const names = ['Ada &amp; $&amp;', 'Bea', 'Ada &amp; $&amp;', 'Cleo'];

  it('is read as it is read alone', () => {
    for (const name of names) expect(read(letterTo(name))).toEqual(read(wholeLetterTo(name)));
  });

  it('is drawn in the same bytes as alone, in other sizes too', async () => {
    const evening = await testFonts();
    for (const form of [a4, { ...a4, size: 'large' } as const, a4]) {
      for (const name of names) {
        const after = await drawPdf(read(letterTo(name)), form, evening, facts);
        const alone = await drawPdf(read(wholeLetterTo(name)), form, await testFonts(), facts);
        expect(after.ok).toBe(true);
        expect(after).toEqual(alone);
      }
    }
  });

  it('is refused with the line of its own markup', () => {
    read(letterTo('Ada'));
    const wrong = readMarkup(letterTo('Ada').replace('Open', '<h2>Open</h2>'), 'letter.hbs');
    expect(wrong.ok ? null : wrong.problems[0]?.place.row).toBe(7);
  });
});
