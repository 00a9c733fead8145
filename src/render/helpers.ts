// Values of a template arrive; what Handlebars puts in their place leaves. These are all the helpers there are.
import Handlebars from 'handlebars';
import type { Picture, Said } from '../letter/content.js';
import type { Direction } from './block.js';
import { escapeHtml } from './escape.js';
import { drawPicture } from './pictures/draw-picture.js';
import { writeSvg } from './pictures/write-svg.js';

type Root = {
  readonly data: { readonly root: { readonly lang: string; readonly dir: Direction } };
};

/** Stands where a phone number may: an isolated run of digits and their separators, three digits or more. */
const phone = /\u2066(\+?\d[\d\s()\u00A0-]*\d)\u2069/gu;
/** Opening hours such as 9-17 look alike; a number to call has at least three digits and no lone span. */
const span = /^\d{1,2}\s*-\s*\d{1,2}$/;

/**
 * Our helpers. `picture` and `linked` are the only ones that return markup, and all text in it is escaped here.
 * - `{{picture figure}}` draws a picture in the letter's language and direction.
 * - `{{linked text}}` makes the phone numbers in a sentence tappable.
 * - `(threes list …)` groups whole sentences into paragraphs of three at most (NHS digital service manual, content).
 * - `(halves list)` parts a list in two for two columns, the first half the longer; one member makes one part.
 * - `(more list n)` is true when a list has more members than n.
 * - `(eq a b)`, `(any a b …)`, `(both a b)` and `(no a)` are for conditions; an empty list counts as no.
 */
export const helpers = {
  picture(picture: Picture, options: Root) {
    const { lang, dir } = options.data.root;
    return new Handlebars.SafeString(writeSvg(drawPicture(picture, { lang, dir })));
  },
  linked(text: string) {
    const marked = escapeHtml(text).replace(phone, (whole, digits: string) => {
      const dialled = digits.replace(/[^\d+]/g, '');
      if (span.test(digits) || dialled.length < 3) return whole;
      return `<a href="tel:${dialled}">${whole}</a>`;
    });
    return new Handlebars.SafeString(marked);
  },
  threes,
  halves: (list: unknown) => (Array.isArray(list) ? halves(list) : []),
  more: (list: unknown, most: unknown) =>
    Array.isArray(list) && typeof most === 'number' && list.length > most,
  eq: (a: unknown, b: unknown) => a === b,
  any: (...values: readonly unknown[]) => values.slice(0, -1).some(holds),
  both: (a: unknown, b: unknown) => holds(a) && holds(b),
  no: (a: unknown) => !holds(a),
};

/** Ends of sentences; Chinese ones need no space after them. */
const ends = /[.?!\u0964\u061F\u06D4]+(?=["'\u201D\u00BB)\u2069]*(?:\s|$))|[\u3002\uFF01\uFF1F]+/gu;
const mostSentences = 3;

type Nested = readonly (Said | Nested)[];

function threes(...values: readonly unknown[]): readonly (readonly Said[])[] {
  const list = (values.slice(0, -1) as Nested).flat(3) as readonly Said[];
  const groups: Said[][] = [];
  let room = 0;
  for (const said of list) {
    const sentences = Math.max(1, said.text.match(ends)?.length ?? 0);
    const last = groups.at(-1);
    if (last === undefined || sentences > room) groups.push([said]);
    else last.push(said);
    room = (last === undefined || sentences > room ? mostSentences : room) - sentences;
  }
  return groups;
}

function halves(list: readonly unknown[]): readonly (readonly unknown[])[] {
  const middle = Math.ceil(list.length / 2);
  return [list.slice(0, middle), list.slice(middle)].filter((half) => half.length > 0);
}

function holds(value: unknown): boolean {
  return Array.isArray(value) ? value.length > 0 : Boolean(value);
}

/** Every name a template may call, ours and the few of Handlebars that only choose or repeat. */
export const helperNames: readonly string[] = [
  'each',
  'if',
  'unless',
  'with',
  'lookup',
  ...Object.keys(helpers),
];
