// A letter in its told state, written by hand: an invented person of the invented Saltmarsh Bay Health Centre.
import { readdirSync, readFileSync } from 'node:fs';
import type { AnalogyPicture, Content, NumberLine, Said } from '../../src/letter/content.js';
import type { LetterDocument } from '../../src/render/block.js';
import { openTemplate, renderMarkup, type Template } from '../../src/render/markup.js';
import { readMarkup } from '../../src/render/read-markup.js';

export function said(text: string): Said {
  return { key: 'test', text };
}

const ltr = (text: string) => `\u2066${text}\u2069`;

export function numberLine(value: number, low: number | null, high: number | null): NumberLine {
  return {
    kind: 'number-line',
    value,
    low,
    high,
    labels: {
      value: String(value),
      low: low === null ? null : String(low),
      high: high === null ? null : String(high),
      yours: said('Your result'),
      usual: said('usual range'),
    },
    title: said('Where your result lies'),
    description: said(`Your result is ${value}. The usual range is ${low} to ${high}.`),
  };
}

export const analogyPicture: AnalogyPicture = {
  kind: 'analogy',
  set: 'shirt-shop',
  levels: {
    store: 'well-below',
    carriers: 'a-little-above',
    load: 'well-below',
    goods: 'a-little-below',
  },
  locked: false,
  labels: {
    store: said('Drawer of spare buttons: nearly empty'),
    carriers: said('More trays go out, most spaces empty'),
    goods: said('Fewer shirts, and small ones'),
    reuse: said('Buttons from old shirts are used again'),
  },
  title: said('A shop that makes shirts'),
  description: said(
    'A drawer with one button in it. Four trays, most spaces empty. Three small shirts. An arrow shows buttons coming back from old shirts.',
  ),
};

function row(
  name: string,
  whatItIs: string,
  value: number,
  unit: string,
  limits: readonly [number, number],
  verdict: string,
  meaning: string,
): Content['results']['rows'][number] {
  const [low, high] = limits;
  const valueLine = said(
    `Your result: ${ltr(`${value} ${unit}`)}. The usual range at this lab: ${ltr(`${low} - ${high}`)}.`,
  );
  const line = numberLine(value, low, high);
  return {
    analyte: 'ferritin',
    position: 'well-below',
    name: said(name),
    whatItIs: said(whatItIs),
    value: String(value),
    unit,
    interval: `${low} - ${high}`,
    valueLine,
    verdict: said(verdict),
    provisos: [],
    meaning: [said(meaning)],
    change: null,
    line: { ...line, description: said(`${line.description.text} ${valueLine.text}`) },
    trend: null,
  };
}

export const content: Content = {
  lang: 'en',
  dir: 'ltr',
  title: said('Your iron blood test results'),
  documentTitle: 'Your iron blood test results',
  sender: {
    name: 'Saltmarsh Bay Health Centre',
    lines: ['2 Pier Road, Saltmarsh Bay', `Phone ${ltr('555 0142')}`],
    logo: null,
  },
  about: [
    said('Name: \u2068Ana Duarte\u2069'),
    said('Born: \u20684 May 1988\u2069'),
    said('Blood test: \u20682 March 2026\u2069. Letter: \u20685 March 2026\u2069'),
  ],
  greeting: said('Dear \u2068Ana Duarte\u2069'),
  bands: [
    { ...said('This is an example. It is not about a real person.'), lang: null },
    { ...said('No clinician has checked this letter yet.'), lang: null },
  ],
  released: [],
  summary: {
    heading: said('In short'),
    sentences: [
      said('Your iron store is low.'),
      said('This is not an emergency.'),
      said(`Please book a talk with us by \u206819 March 2026\u2069. Call ${ltr('555 0142')}.`),
    ],
  },
  yourSteps: {
    heading: said('What you need to do'),
    howToTick: said('When you have done a step, tick its box.'),
    steps: [
      {
        text: said(`Book a talk with us by \u206819 March 2026\u2069. Call ${ltr('555 0142')}.`),
        words: null,
        sign: 'clinician',
      },
      {
        text: said('Tell us about your periods, if you have them.'),
        words: 'Bring the list of your tablets.',
        sign: 'calendar',
      },
    ],
  },
  ourSteps: {
    heading: said('What we will do'),
    steps: [
      { text: said('We will look at your results with you.'), words: null, sign: 'clinician' },
    ],
  },
  results: {
    heading: said('Your results'),
    howToRead: [
      said('How to read the lines: the striped part is the usual range.'),
      said('The dark mark is you.'),
    ],
    rows: [
      row(
        'Blood count (haemoglobin)',
        'It carries oxygen.',
        118,
        'g/L',
        [120, 160],
        'Yours is a little below the usual range.',
        'Your body has a bit less to make blood with.',
      ),
      row(
        'Iron store (ferritin)',
        'It shows how much iron you keep in store.',
        7,
        'ug/L',
        [30, 400],
        'Yours is well below the usual range.',
        'Your store is nearly empty.',
      ),
      row(
        'Iron on its way (transferrin saturation)',
        'It shows how much iron is on the move.',
        9,
        '%',
        [16, 45],
        'Yours is well below the usual range.',
        'Little iron is on the move.',
      ),
    ],
    notMeasured: [said('The test for swelling (CRP) was not done.')],
  },
  meaning: {
    heading: said('What this may mean'),
    paragraphs: [
      [
        said('Iron helps your blood carry oxygen.'),
        said('When the store gets low, you may feel weak.'),
      ],
      [said('We do not know the cause yet.'), said('Periods and food can both play a part.')],
    ],
  },
  picture: {
    heading: said('A picture of it'),
    paragraphs: [
      [said('Picture a shop that makes shirts.'), said('Iron is like the buttons.')],
      [said('This is only a picture. Your body is not a shop.')],
    ],
    figure: analogyPicture,
  },
  food: {
    heading: said('Food with iron'),
    paragraphs: [[said('Food is one part of this.')]],
    foods: [
      {
        sign: 'food',
        heading: said('Good choices'),
        items: [said('Lentils'), said('Sardines'), said('Spinach with lemon')],
      },
    ],
    lists: [{ heading: said('Tips'), items: [said('Drink tea one hour after your meal.')] }],
  },
  tablets: null,
  help: {
    heading: said('When to get help'),
    first: false,
    groups: [
      {
        urgency: 'emergency',
        heading: said(`Call ${ltr('000')} now if you`),
        lines: [said('have chest pain'), said('pass out'), said('cannot get your breath at rest')],
      },
      {
        urgency: 'today',
        heading: said(`Call us today on ${ltr('555 0142')} if`),
        lines: [said('your poo is black and sticky like tar')],
      },
    ],
    notes: [said('If you feel worse, do not wait for your next test.')],
  },
  choices: {
    heading: said('Choices and questions'),
    paragraphs: [[said('You and your doctor can choose the next step together.')]],
  },
  contact: {
    heading: said('How to reach us'),
    lines: [said(`Call ${ltr('555 0142')}, \u2068Monday to Friday, 9-17\u2069.`)],
    formats: [said('Ask us for large print.')],
  },
  closing: { heading: said('Safety and your questions') },
  cautions: [
    said('This letter does not say what is causing your result.'),
    said('Do not stop or change any medicine unless we tell you to.'),
  ],
  signature: [said('\u2068Dr Ilse Okafor\u2069, family doctor')],
  running: {
    header: said('\u2068Ana Duarte\u2069, born \u20684 May 1988\u2069'),
    footer: said(`Saltmarsh Bay Health Centre, ${ltr('555 0142')}`),
    pageOf: said('Page {page} of {pages}'),
  },
};

const opened = new Map<string, Template>();

/** The shipped template of this name, with every other shipped one as a partial. */
export function shippedTemplate(name: string): Template {
  const known = opened.get(name);
  if (known !== undefined) return known;
  const texts = readdirSync('templates')
    .filter((file) => file.endsWith('.hbs'))
    .map((file) => ({
      name: file.replace('.hbs', ''),
      file: `templates/${file}`,
      text: readFileSync(`templates/${file}`, 'utf8'),
    }));
  const main = texts.find((text) => text.name === name);
  if (main === undefined) throw new Error(`no template ${name}`);
  const compiled = openTemplate(
    main,
    texts.filter((text) => text !== main),
  );
  if (!compiled.ok) throw new Error(JSON.stringify(compiled.problems));
  opened.set(name, compiled.value);
  return compiled.value;
}

/** The letter of a content, through the shipped template. */
export function documentOf(told: Content): LetterDocument {
  const markup = renderMarkup(shippedTemplate('letter'), told);
  if (!markup.ok) throw new Error(JSON.stringify(markup.problems));
  const document = readMarkup(markup.value, 'letter');
  if (!document.ok) throw new Error(JSON.stringify(document.problems));
  return document.value;
}
