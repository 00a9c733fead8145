// Many pages open at once, in one profile and in many: each letter is its own patient's, and whole.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { servePage } from '../../src/app/page/serve.js';
import { pdfjsText } from '../render/pdf/pdfjs-text.js';
import { type Copy, letter, paste, savedPdf, useExample, writeCopy } from './open-page.js';
import { ironDeficiency } from './texts.js';

let copy: Copy;
beforeAll(async () => {
  copy = await writeCopy();
}, 60_000);
afterAll(() => copy?.close());

/** Invented people of Saltmarsh Bay, no two with the same ferritin. */
const people = ['Arno Tidewell', 'Bela Marram', 'Cora Sandling', 'Dov Kelpford'].map(
  (name, nth) => ({ name, ferritin: `${5 + nth} ug/L` }),
);
const resultsOf = ({ name, ferritin }: (typeof people)[number]) =>
  ironDeficiency.replace('Mirren Sallow', name).replace('9 L	ug/L', ferritin.replace(' ', ' L\t'));

describe('pages open at the same time', () => {
  it.each([
    ['tabs of one profile', true],
    ['profiles of their own', false],
  ])(
    'make the letter of their own patient: %s',
    async (_name, shared) => {
      const first = await copy.open();
      const pages = await Promise.all(
        people.map(async () => {
          if (!shared) return (await copy.open()).page;
          const page = await first.page.context().newPage();
          await page.goto(first.page.url());
          return page;
        }),
      );
      const letters = await Promise.all(
        people.map(async (person, nth) => {
          const page = pages[nth];
          if (page === undefined) throw new Error('a page is missing');
          await paste(page, resultsOf(person));
          await useExample(page);
          await letter(page).getByText(person.name).first().waitFor();
          return pdfjsText(await savedPdf(page));
        }),
      );
      for (const [nth, text] of letters.entries()) {
        expect(text).toContain(people[nth]?.ferritin);
        expect(people.map(({ name }) => name).filter((name) => text.includes(name))).toEqual([
          people[nth]?.name,
        ]);
      }
      for (const page of [first.page, ...pages]) await page.context().close();
    },
    120_000,
  );

  it('are each given the page whole by the servers of this computer', async () => {
    const htmlOf = (nth: number) => `<p>page ${nth}</p>${'x'.repeat(2_000_000)}`;
    const servers = await Promise.all(
      [1, 2].map((nth) => servePage({ html: htmlOf(nth), policy: "default-src 'none'" }, 0)),
    );
    const asked = Array.from({ length: 100 }, (_, at) => at % 2);
    const answers = await Promise.all(
      asked.map(async (at) => (await fetch(servers[at]?.url ?? '')).text()),
    );
    expect(answers.filter((text, nth) => text !== htmlOf(1 + (asked[nth] ?? 0)))).toHaveLength(0);
    await Promise.all(servers.map((server) => server.close()));
  });
});
