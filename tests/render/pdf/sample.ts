// Nothing arrives; an invented letter that uses every kind of block leaves.

import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Block, Cell, LetterDocument, PageForm, Run } from '../../../src/render/block.js';
import { type Fonts, faceFiles, openFonts } from '../../../src/render/pdf/index.js';

const modules = fileURLToPath(new URL('../../../node_modules/', import.meta.url));

/** Faces straight from their packages. */
export function testFonts(): Promise<Fonts> {
  return openFonts((file) => {
    const row = faceFiles.find((one) => one.file === file);
    if (row === undefined) throw new Error(`No face ${file}`);
    return readFile(`${modules}${row.package}/${row.path}`);
  });
}

export const a4: PageForm = { paper: 'A4', size: 'standard' };
export const facts = { created: '2026-01-05T09:00:00.000Z', producerVersion: '0.1.0' };

export function run(text: string, facts: Partial<Run> = {}): Run {
  return { text, strong: false, lang: null, isolate: null, href: null, ...facts };
}

export function paragraph(text: string, look: 'body' | 'lead' | 'small' | 'value' = 'body'): Block {
  return { kind: 'paragraph', look, runs: [run(text)] };
}

export function heading(level: 1 | 2 | 3, text: string): Block {
  return { kind: 'heading', level, runs: [run(text)] };
}

export function cell(text: string, facts: Partial<Cell> = {}): Cell {
  return { header: false, scope: null, span: 1, blocks: [paragraph(text)], ...facts };
}

export function letter(
  blocks: readonly Block[],
  facts: Partial<LetterDocument> = {},
): LetterDocument {
  return {
    lang: 'en',
    dir: 'ltr',
    title: 'Your iron blood test results',
    header: { runs: [run('Saltmarsh Bay Health Centre')], pageOf: null },
    footer: { runs: [run('Not yet checked by a clinician')], pageOf: 'Page {page} of {pages}' },
    blocks,
    ...facts,
  };
}

const numberLine: Block = {
  kind: 'figure',
  caption: [run('Where your ferritin lies.')],
  scene: {
    width: 360,
    height: 70,
    title: 'Ferritin on its number line',
    description:
      'Your ferritin, 4 micrograms a litre, lies well below the usual range of 15 to 150.',
    shapes: [
      { kind: 'line', look: 'axis', x1: 10, y1: 40, x2: 350, y2: 40 },
      { kind: 'rect', look: 'band', x: 80, y: 32, width: 200, height: 16, radius: 3 },
      { kind: 'circle', look: 'marker', x: 30, y: 40, r: 7 },
      { kind: 'path', look: 'outline', d: 'M300 30 L310 50 C312 40 320 30 330 50 Z' },
      text(30, 20, 'You: 4', 'middle'),
      text(180, 65, 'usual range 15–150', 'middle'),
      text(350, 65, 'µg/L', 'end'),
    ],
  },
};

function text(x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end') {
  return {
    kind: 'text' as const,
    look: 'text',
    x,
    y,
    size: 11,
    anchor,
    strong: false,
    lang: null,
    dir: null,
    text: words,
  };
}

const head = ['Test', 'Your result', 'Usual range', 'What it means'].map((words) =>
  cell(words, {
    header: true,
    scope: 'col',
    blocks: [{ kind: 'paragraph', look: 'label', runs: [run(words)] }],
  }),
);

function row(name: string, value: string, range: string, meaning: string): readonly Cell[] {
  return [
    cell(name, { header: true, scope: 'row' }),
    cell(value, {
      blocks: [{ kind: 'paragraph', look: 'value', runs: [run(value, { isolate: 'ltr' })] }],
    }),
    cell(range, {
      blocks: [{ kind: 'paragraph', look: 'body', runs: [run(range, { isolate: 'ltr' })] }],
    }),
    cell(meaning),
  ];
}

/** Two pages or so, with everything a letter can hold. */
export const fullLetter = letter([
  { kind: 'paragraph', look: 'address', runs: [run('Robin Example')] },
  { kind: 'paragraph', look: 'address', runs: [run('12 Shore Lane, Saltmarsh Bay')] },
  heading(1, 'Your iron results, and what they mean'),
  {
    kind: 'notice',
    look: 'summary',
    blocks: [
      paragraph('Your body is short of iron. This is common, and it can be helped.', 'lead'),
      paragraph('Please book a visit in the next two weeks.'),
    ],
  },
  heading(2, 'Your results'),
  {
    kind: 'table',
    look: 'results',
    caption: [run('Blood taken on 2 January 2026')],
    head: [head],
    rows: [
      row(
        'Ferritin',
        '4 µg/L',
        '15–150',
        'Well below the usual range. Your iron store is nearly empty.',
      ),
      row(
        'Haemoglobin',
        '98 g/L',
        '120–160',
        'Below the usual range. You may feel tired or breathless.',
      ),
      row(
        'Transferrin',
        '4.1 g/L',
        '2.0–3.5',
        'Above the usual range. Your body is looking for iron.',
      ),
    ],
  },
  numberLine,
  heading(2, 'What you can eat'),
  paragraph('These foods hold iron that your body takes up well:'),
  {
    kind: 'list',
    ordered: false,
    items: [
      [paragraph('Beef, lamb, or the dark meat of chicken and turkey.')],
      [
        paragraph(
          'Sardines and other oily fish, fresh or from a tin, with the soft bones left in if you like them so.',
        ),
      ],
      [paragraph('Lentils, beans and greens, eaten with fruit or peppers.')],
    ],
  },
  {
    kind: 'notice',
    look: 'caution',
    blocks: [paragraph('Do not start iron tablets unless your clinic told you to.')],
  },
  heading(2, 'What happens next'),
  {
    kind: 'list',
    ordered: true,
    items: [
      [
        {
          kind: 'paragraph',
          look: 'body',
          runs: [
            run('Call us on '),
            run('555-0199', { href: 'tel:5550199', isolate: 'ltr' }),
            run(' to book a visit.'),
          ],
        },
      ],
      [paragraph('Bring this letter and any tablets you take.')],
      [
        paragraph('We may look for the cause, such as heavy periods.'),
        paragraph('Tell us if your stools are black.'),
      ],
    ],
  },
  {
    kind: 'notice',
    look: 'urgent',
    blocks: [
      heading(2, 'Get help at once'),
      paragraph('Call the number you set if you have chest pain, faint, or bleed a lot.'),
    ],
  },
  { kind: 'rule' },
  {
    kind: 'section',
    lang: 'pl',
    dir: 'ltr',
    keep: true,
    blocks: [
      heading(2, 'Po polsku'),
      paragraph('Twój organizm ma za mało żelaza. To częste i można temu zaradzić.'),
    ],
  },
  {
    kind: 'pair',
    first: paragraph(
      'Drink tea and coffee an hour before or after meals, for they hold iron back.',
    ),
    second: {
      kind: 'section',
      lang: 'vi',
      dir: 'ltr',
      keep: false,
      blocks: [
        paragraph(
          'Hãy uống trà và cà phê trước hoặc sau bữa ăn một giờ, vì chúng cản trở chất sắt.',
        ),
      ],
    },
  },
  { kind: 'notice', look: 'band', blocks: [paragraph('Not yet checked by a clinician.', 'small')] },
]);
