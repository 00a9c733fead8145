// The place of a message arrives; what a translator should know about it, and how long it may be, leave.
import type { Namespace } from '../../letter/index.js';

type Row = readonly [place: RegExp, note: string];

/** First fitting row. Keys of other files carry their file's name before a colon. */
const notes: readonly Row[] = [
  [/^foods:/, 'Name of a food in a list; the name used in kitchens and markets.'],
  [/^fridge:/, 'On a page of meals for the kitchen door, read without the letter.'],
  [/^easy-read:/, 'In the easy-read letter: one idea, very short, the most common words.'],
  [/^spoken:/, 'Read aloud on the phone. A number stands for {{number}} as it is said.'],
  [
    /^(help|sign)\./,
    'SAFETY: when to get help. Must be unmistakable; a sign is an item of a list.',
  ],
  [
    /^(caution|food\.caution|tablets|gap)\./,
    'SAFETY: a caution. As strong as in English, no more and no less.',
  ],
  [/^band\./, 'Stamp at the top of the letter.'],
  [/^summary\./, 'In the answer in short, the first thing that is read.'],
  [/^step\..*\.patient/, 'What the reader does next.'],
  [/^step\..*\.clinic/, 'What the clinic does next.'],
  [
    /^picture\..*\.(store|carriers|goods|reuse)$/,
    'Label inside a drawing: the same nouns as in the sentences.',
  ],
  [
    /^picture\./,
    'A picture in words: keep the picture. The described.* say what the drawing shows.',
  ],
  [/^line\.(yours|usual)/, 'Label on a drawn line of numbers.'],
  [/^line\.|^trend\./, 'Read by a screen reader in place of the drawing.'],
  [/^result\..*\.name$/, 'Everyday name first, the laboratory’s word in brackets.'],
  [/^running\./, 'Head or foot of every page.'],
];

const general = [
  [/_child(_|$)/, 'Speaks to a parent or carer about their child.'],
  [
    /_(zero|one|two|few|many|other)$/,
    'A plural form: of the numbers this form is for in your language.',
  ],
] as const satisfies readonly Row[];

/** @example noteFor('letter', 'sign.chest-pain') // 'SAFETY: when to get help. …' */
export function noteFor(namespace: Namespace, key: string): string | null {
  const place = namespace === 'letter' ? key : `${namespace}:${key}`;
  const own = notes.find(([pattern]) => pattern.test(place));
  const found = [
    ...(own === undefined ? [] : [own[1]]),
    ...general.filter(([pattern]) => pattern.test(key)).map(([, note]) => note),
  ];
  return found.length === 0 ? null : found.join(' ');
}

/** Longest text in characters where a label stands in a drawing or a narrow column; null elsewhere. */
const limits: readonly (readonly [RegExp, number])[] = [
  [/^picture\..*\.(store|carriers|goods|reuse)$/, 40],
  [/^line\.(yours|usual)/, 32],
  [/^running\.page-of$/, 40],
];

/** @example limitFor('letter', 'line.usual') // 32 */
export function limitFor(namespace: Namespace, key: string): number | null {
  if (namespace !== 'letter') return null;
  return limits.find(([pattern]) => pattern.test(key))?.[1] ?? null;
}
