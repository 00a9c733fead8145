// A letter's blocks and a paper form arrive; pages with everything in its place leave, as plain JSON.
import type { LetterDocument, PageForm, Running } from '../block.js';
import { look, scaleOf } from '../look.js';
import { faulty, fine, nowhere, type Checked, type Problem } from '../../problem.js';
import { fill, TooTall, type Element } from './flow.js';
import type { Fonts } from './fonts.js';
import { addTag, inset, leftOf, plainRun, type Bench, type Place } from './frame.js';
import { breakLines, unbroken } from './lines.js';
import { measureAll } from './measure.js';
import { baselineIn } from './measure-text.js';
import { composeParagraph } from './paragraph.js';
import type { PlacedLetter, PlacedPage, TextInk } from './placed.js';
import { snug } from './snug.js';

/**
 * Lays a letter out. The languages of the letter must be loaded.
 * @param firstFrom points from the top edge of the first page above which no block stands: room for an address.
 * @returns pages with absolute places in points from the top left corner.
 *   Problems: `glyph-missing` (a character that no face holds), `too-tall` (a row or picture taller than a page).
 * @example layOut(letter, { paper: 'A4', size: 'standard' }, fonts)
 */
export function layOut(
  letter: LetterDocument,
  form: PageForm,
  fonts: Fonts,
  firstFrom = 0,
): Checked<PlacedLetter> {
  const paper = look.page[form.paper];
  // Sheets for staff and the letter of one page use the whole width of the paper.
  const measure = ['dense', 'compact'].includes(form.size)
    ? Number.POSITIVE_INFINITY
    : look.space.measure;
  const base = look.sizes[form.size];
  const bench: Bench = { fonts, base, measure, tags: [], missing: new Set() };
  const tag = addTag(bench, null, 'Document', { lang: letter.lang });
  const { lang, dir } = letter;
  const width = paper.width - 2 * paper.margin;
  const place: Place = { left: paper.margin, width, dir, lang, tag, depth: 0 };
  const elements = measureAll(letter.blocks, place, bench);
  const header = runningLines(letter.header, place, bench, '');
  const footer = runningLines(letter.footer, place, bench, '');
  const gap = (base * scaleOf('running', base) * look.leading.body) / 2;
  // Running lines stand in the margin; where they need more, the text gives way.
  const top = Math.max(paper.margin, edgeGap + header.height + gap);
  const foot = Math.max(paper.margin, edgeGap + footer.height + gap);
  const lead = Math.max(0, firstFrom - top);
  const filled = onFewestSheets(elements, paper.height - top - foot, lead);
  if (filled === null) return faulty([tooTall]);
  const pages = filled.map((page, nth): PlacedPage => {
    const from = nth === 0 ? top + lead : top;
    const counted = (running: Running | null) =>
      runningLines(running, place, bench, pageOf(running, nth + 1, filled.length)).ink;
    const headTop = Math.max(edgeGap, top - 1.5 * gap - header.height);
    const footTop = paper.height - foot + gap;
    return {
      grounds: page.grounds.map((one) => ({ ...one, y: one.y + from })),
      ink: page.ink.map((one) => ({ ...one, y: one.y + from })),
      running: [
        ...counted(letter.header).map((one) => ({ ...one, y: one.y + headTop })),
        ...counted(letter.footer).map((one) => ({ ...one, y: one.y + footTop })),
        ...page.repeated.flatMap((one) =>
          one.kind === 'text' ? [{ ...one, y: one.y + from }] : [],
        ),
      ],
    };
  });
  if (bench.missing.size > 0) return faulty([...bench.missing].map(glyphMissing));
  const { title } = letter;
  return fine({
    lang,
    title,
    width: paper.width,
    height: paper.height,
    tags: bench.tags,
    pages,
  });
}

/** Printers leave about this much white at the edges of the sheet. */
const edgeGap = 18;

/** A last page filled less than this looks forgotten. */
const little = 0.34;

/**
 * A letter that spills over onto one more sheet, or onto a page that would hold little, is set with less space between
 * its parts, if that saves the page.
 */
function onFewestSheets(elements: readonly Element[], room: number, lead: number) {
  const airy = paginate(elements, room, lead);
  if (airy === null || airy.length < 3) return airy;
  const spills = airy.length % 2 === 1;
  if (!spills && (airy.at(-1)?.height ?? room) > little * room) return airy;
  for (const share of look.space.snug) {
    const closer = paginate(snug(elements, share), room, lead);
    if (closer !== null && closer.length < airy.length) return closer;
  }
  return airy;
}

function paginate(elements: readonly Element[], room: number, lead: number) {
  const pages = [];
  try {
    let rest = elements;
    do {
      const shortened = pages.length === 0 && lead > 0;
      const page = fill(rest, shortened ? room - lead : room, room, !shortened);
      pages.push(page);
      rest = page.rest;
    } while (rest.length > 0);
  } catch (error) {
    if (error instanceof TooTall) return null;
    throw error;
  }
  return pages;
}

function pageOf(running: Running | null, page: number, pages: number): string {
  const words = running?.pageOf ?? '';
  return words.replaceAll('{page}', String(page)).replaceAll('{pages}', String(pages));
}

/** Running text where reading begins, the page number where it ends. */
function runningLines(running: Running | null, place: Place, bench: Bench, counted: string) {
  if (running === null) return { height: 0, ink: [] };
  const size = bench.base * scaleOf('running', bench.base);
  const setting = { lang: place.lang, dir: place.dir, strong: false };
  const number = composeParagraph([plainRun(counted)], setting, bench.fonts);
  const widest = composeParagraph([plainRun(pageOf(running, 88, 88))], setting, bench.fonts);
  const numberWidth = (unbroken(number) * size) / 1000;
  const reserved = (unbroken(widest) * size) / 1000 + size;
  const text = composeParagraph(running.runs, setting, bench.fonts);
  const height = size * Math.max(text.leading, number.leading);
  for (const point of [...number.missing, ...text.missing]) bench.missing.add(point);
  const beside = running.pageOf === null ? place : inset(place, 0, reserved);
  const lines = breakLines(text, (beside.width * 1000) / size, place.dir, bench.fonts);
  const ink: TextInk[] = [];
  const put = (line: (typeof lines)[number], left: number, top: number) => {
    for (const { file, glyphs, x, width } of line.pieces) {
      ink.push({
        kind: 'text',
        tag: -1,
        x: left + (x * size) / 1000,
        y: top + baselineIn(height, size, text),
        size,
        width: (width * size) / 1000,
        file,
        colour: look.text.running.colour,
        glyphs,
      });
    }
  };
  lines.forEach((line, nth) => {
    put(line, leftOf(beside, 0, (line.width * size) / 1000), nth * height);
  });
  const [numberLine] = breakLines(number, Number.POSITIVE_INFINITY, place.dir, bench.fonts);
  if (numberLine !== undefined) {
    put(numberLine, leftOf(place, place.width - numberWidth, numberWidth), 0);
  }
  return { height: height * Math.max(lines.length, running.pageOf === null ? 0 : 1), ink };
}

function glyphMissing(point: number): Problem {
  return {
    code: 'glyph-missing',
    place: nowhere,
    cannot: 'draw a character',
    found: `U+${point.toString(16).toUpperCase().padStart(4, '0')}`,
    expected: 'a character that one of the faces for the letter\u2019s language holds',
    remedy: 'Add a face that holds it to the table of faces, or write the text without it.',
  };
}

const tooTall: Problem = {
  code: 'too-tall',
  place: nowhere,
  cannot: 'fit a table row or a picture on one page',
  found: null,
  expected: 'rows and pictures shorter than a page',
  remedy: 'Choose a smaller size of print, or shorten the row.',
};
