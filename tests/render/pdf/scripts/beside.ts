// A language's invented words arrive; a letter of one shape leaves, to be set alone or beside another language.
import type { Block, Cell, Direction, LetterDocument } from '../../../../src/render/block.js';
import { heading, paragraph, run } from '../sample.js';

/** Test text by a writer who is no native speaker: never a translation to ship. */
export type Words = {
  readonly lang: string;
  readonly dir: Direction;
  readonly title: string;
  readonly summary: readonly string[];
  readonly results: string;
  readonly columns: readonly [string, string, string, string];
  readonly rows: readonly (readonly [
    name: string,
    value: string,
    range: string,
    meaning: string,
  ])[];
  readonly picture: readonly [you: string, usual: string];
  readonly foods: string;
  readonly items: readonly string[];
  readonly next: string;
  /** Before and after the phone number. */
  readonly call: readonly [string, string];
  readonly bring: string;
  readonly help: string;
  readonly danger: string;
  readonly pageOf: string;
};

export const english: Words = {
  lang: 'en',
  dir: 'ltr',
  title: 'Your iron results',
  summary: ['Your body is short of iron.', 'This is common (about 1 in 5), and it can be helped.'],
  results: 'Your results',
  columns: ['Test', 'You', 'Usual', 'Meaning'],
  rows: [
    ['Ferritin', '12.5 µg/L', '30–400', 'Below the usual range.'],
    ['Haemoglobin', '118 g/L', '120–160', 'A little below the usual range.'],
  ],
  picture: ['You: \u206612.5\u2069', 'usual range \u206630–400\u2069'],
  foods: 'What you can eat',
  items: ['Lentils and beans.', 'Green leaves with lemon.', 'Fish, fresh or from a tin.'],
  next: 'What happens next',
  call: ['Call us on ', ' before 2026-01-05.'],
  bring: 'Bring this letter with you.',
  help: 'Get help at once',
  danger: 'Go to hospital if you faint or have chest pain.',
  pageOf: 'Page {page} of {pages}',
};

export const arabic: Words = {
  lang: 'ar',
  dir: 'rtl',
  title: 'نتائج الحديد لديك',
  summary: ['جسمك يعاني من نقص الحديد.', 'هذا شائع (حوالي 1 من كل 5)، ويمكن علاجه.'],
  results: 'نتائجك',
  columns: ['الفحص', 'نتيجتك', 'المعتاد', 'المعنى'],
  rows: [
    ['فيريتين', '12.5 µg/L', '30–400', 'أقل من المعدل المعتاد.'],
    ['هيموغلوبين', '118 g/L', '120–160', 'أقل قليلا من المعدل المعتاد.'],
  ],
  picture: ['أنت: \u206612.5\u2069', 'المعدل المعتاد \u206630–400\u2069'],
  foods: 'ماذا يمكنك أن تأكل',
  items: ['العدس والفول.', 'الأوراق الخضراء مع الليمون.', 'السمك الطازج أو المعلب.'],
  next: 'ماذا سيحدث بعد ذلك',
  call: ['اتصل بنا على ', ' قبل 2026-01-05.'],
  bring: 'أحضر هذه الرسالة معك.',
  help: 'اطلب المساعدة فورا',
  danger: 'اذهب إلى المستشفى إذا أغمي عليك أو شعرت بألم في الصدر.',
  pageOf: 'صفحة {page} من {pages}',
};

export const urdu: Words = {
  lang: 'ur',
  dir: 'rtl',
  title: 'آپ کے آئرن کے نتائج',
  summary: [
    'آپ کے جسم میں آئرن کم ہے۔',
    'یہ عام بات ہے (تقریباً 5 میں سے 1)، اور اس کا علاج ممکن ہے۔',
  ],
  results: 'آپ کے نتائج',
  columns: ['ٹیسٹ', 'نتیجہ', 'عام حد', 'مطلب'],
  rows: [
    ['فیریٹن', '12.5 µg/L', '30–400', 'عام حد سے کم۔'],
    ['ہیموگلوبن', '118 g/L', '120–160', 'عام حد سے تھوڑا کم۔'],
  ],
  picture: ['آپ: \u206612.5\u2069', 'عام حد \u206630–400\u2069'],
  foods: 'آپ کیا کھا سکتے ہیں',
  items: ['دال اور لوبیا۔', 'لیموں کے ساتھ سبز پتے۔', 'مچھلی، تازہ یا ڈبے کی۔'],
  next: 'آگے کیا ہوگا',
  call: ['ہمیں فون کریں ', ' پر، 2026-01-05 سے پہلے۔'],
  bring: 'یہ خط ساتھ لائیں۔',
  help: 'فوراً مدد لیں',
  danger: 'بے ہوشی یا سینے میں درد ہو تو ہسپتال جائیں۔',
  pageOf: 'صفحہ {page} از {pages}',
};

export const hindi: Words = {
  lang: 'hi',
  dir: 'ltr',
  title: 'आपके आयरन के नतीजे',
  summary: ['आपके शरीर में आयरन की कमी है।', 'यह आम बात है (लगभग 5 में से 1), और इसका इलाज हो सकता है।'],
  results: 'आपके नतीजे',
  columns: ['जाँच', 'आप', 'सामान्य', 'मतलब'],
  rows: [
    ['फ़ेरिटिन', '12.5 µg/L', '30–400', 'सामान्य सीमा से कम।'],
    ['हीमोग्लोबिन', '118 g/L', '120–160', 'सामान्य सीमा से थोड़ा कम।'],
  ],
  picture: ['आप: \u206612.5\u2069', 'सामान्य सीमा \u206630–400\u2069'],
  foods: 'आप क्या खा सकते हैं',
  items: ['दाल और राजमा।', 'नींबू के साथ हरी पत्तियाँ।', 'मछली, ताज़ी या डिब्बे की।'],
  next: 'आगे क्या होगा',
  call: ['हमें ', ' पर 2026-01-05 से पहले फ़ोन करें।'],
  bring: 'यह पत्र साथ लाएँ।',
  help: 'तुरंत मदद लें',
  danger: 'बेहोशी या सीने में दर्द हो तो अस्पताल जाएँ।',
  pageOf: 'पृष्ठ {page} / {pages}',
};

/** Numbers, ranges and dates stand in isolates, as the letter writes them. */
function isolated(text: string): readonly ReturnType<typeof run>[] {
  return text
    .split(/(\d[\d.,–-]*\d|\d)/)
    .filter((part) => part !== '')
    .map((part) => run(part, /^\d/.test(part) ? { isolate: 'ltr' } : {}));
}

function said(text: string): Block {
  return { kind: 'paragraph', look: 'body', runs: isolated(text) };
}

function cellOf(block: Block, scope: Cell['scope'] = null): Cell {
  return { header: scope !== null, scope, span: 1, blocks: [block] };
}

function label(text: string): Block {
  return { kind: 'paragraph', look: 'label', runs: [run(text)] };
}

function value(text: string): Block {
  return { kind: 'paragraph', look: 'value', runs: [run(text, { isolate: 'ltr' })] };
}

/** Axis from low to high, left to right in every language; its words in the letter's own. */
function numberLine({ title, picture: [you, usual] }: Words): Block {
  const words = {
    kind: 'text',
    look: 'text',
    size: 11,
    strong: false,
    lang: null,
    dir: null,
  } as const;
  return {
    kind: 'figure',
    caption: null,
    scene: {
      width: 240,
      height: 70,
      title,
      description: `${you}; ${usual}`,
      shapes: [
        { kind: 'line', look: 'axis', x1: 10, y1: 40, x2: 230, y2: 40 },
        { kind: 'rect', look: 'band', x: 80, y: 32, width: 120, height: 16, radius: 3 },
        { kind: 'circle', look: 'marker', x: 40, y: 40, r: 7 },
        { ...words, x: 40, y: 20, anchor: 'middle', text: you },
        { ...words, x: 140, y: 65, anchor: 'middle', text: usual },
      ],
    },
  };
}

export function letterIn(words: Words): LetterDocument {
  const { lang, dir, title, columns, rows } = words;
  const head = columns.map((text) => cellOf(label(text), 'col'));
  const blocks: readonly Block[] = [
    heading(1, title),
    {
      kind: 'notice',
      look: 'summary',
      blocks: words.summary.map(said),
    },
    heading(2, words.results),
    {
      kind: 'table',
      look: 'results',
      caption: null,
      head: [head],
      rows: rows.map(([name, result, range, meaning]) => [
        cellOf(paragraph(name), 'row'),
        cellOf(value(result)),
        cellOf(value(range)),
        cellOf(paragraph(meaning)),
      ]),
    },
    numberLine(words),
    heading(2, words.foods),
    { kind: 'list', ordered: false, items: words.items.map((text) => [paragraph(text)]) },
    heading(2, words.next),
    {
      kind: 'list',
      ordered: true,
      items: [
        [
          {
            kind: 'paragraph',
            look: 'body',
            runs: [
              ...isolated(words.call[0]),
              run('555-0142', { isolate: 'ltr', href: 'tel:5550142' }),
              ...isolated(words.call[1]),
            ],
          },
        ],
        [paragraph(words.bring)],
      ],
    },
    { kind: 'notice', look: 'urgent', blocks: [heading(2, words.help), said(words.danger)] },
  ];
  return {
    lang,
    dir,
    title,
    header: { runs: [run('Saltmarsh Bay Health Centre', { lang: 'en' })], pageOf: null },
    footer: { runs: [run(title)], pageOf: words.pageOf },
    blocks,
  };
}
