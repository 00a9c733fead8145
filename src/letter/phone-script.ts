// A letter's input arrives; the same letter to be read aloud over the phone leaves: plain text, numbers as they are said.
import { type Checked, faulty, type Problem } from '../problem.js';
import { composeLetter } from './compose-letter.js';
import type { Content, ResultTold, Said } from './content.js';
import type { LetterInput, Told } from './letter-input.js';
import { sayInterval, sayPhones, sayValue } from './aloud.js';
import { ltr } from './say.js';
import { tellWith } from './tell-with.js';

/**
 * Text in short parts, an empty line after each. It holds what the letter holds but the drawings and the picture in
 * words: whoever listens cannot look back.
 * Problems: those of the letter; a language without the words of the script; a unit it cannot say.
 * @example composeScript(input) // { ok: true, value: 'To read aloud on the phone\n\n…', notes: [] }
 */
export function composeScript(input: LetterInput): Checked<string> {
  const { language } = input;
  if (!language.words.exists('heading', { ns: 'spoken' })) return faulty([noScript(language.tag)]);
  const letter = composeLetter({ ...input, options: { ...input.options, analogy: 'off' } });
  if (!letter.ok) return letter;
  return tellWith(input, (told) => {
    const parts = partsOf(told, letter.value).map(sayPhones).map(plain);
    return `${parts.join('\n\n')}\n`;
  });
}

function partsOf(told: Told, letter: Content): readonly string[] {
  const { voice } = told;
  const steps = (part: Content['ourSteps']) =>
    [
      part.heading.text,
      ...part.steps.flatMap(({ text, words }) => [text.text, words ?? '']),
    ].filter((line) => line !== '');
  const help = [
    letter.help.heading.text,
    ...letter.help.groups.flatMap(({ heading, lines }) => [
      heading.text,
      ...lines.map(({ text }) => text),
    ]),
    ...texts(letter.help.notes),
  ].join('\n');
  return [
    voice.aloud('heading').text,
    ...texts(letter.bands),
    voice.aloud('who').text,
    voice.aloud('slowly').text,
    [letter.title.text, ...texts(letter.about)].join('\n'),
    letter.greeting.text,
    ...texts(letter.released),
    [letter.summary.heading.text, ...texts(letter.summary.sentences)].join('\n'),
    ...(letter.help.first ? [help] : []),
    steps(letter.yourSteps).join('\n'),
    steps(letter.ourSteps).join('\n'),
    ...(letter.help.first ? [] : [help]),
    letter.results.heading.text,
    ...letter.results.rows.map((row) => resultAloud(told, row)),
    ...texts(letter.results.notMeasured),
    passage(letter.meaning),
    ...(letter.food === null
      ? []
      : [
          passage(letter.food),
          ...[...letter.food.foods, ...letter.food.lists].map(({ heading, items }) =>
            [heading.text, ...texts(items)].join('\n'),
          ),
        ]),
    ...(letter.tablets === null
      ? []
      : [[passage(letter.tablets), ...texts(letter.tablets.items)].join('\n')]),
    texts(letter.cautions).join('\n'),
    passage(letter.choices),
    texts([...letter.contact.lines, ...letter.contact.formats]).join('\n'),
    texts(letter.signature).join('\n'),
    voice.aloud('teach-back').text,
  ];
}

function resultAloud({ voice }: Told, row: ResultTold): string {
  const values = { result: ltr(sayValue(voice, row.value, row.unit)) };
  const line =
    row.interval === null
      ? voice.say('value.without-interval', values)
      : voice.say('value.with-interval', {
          ...values,
          interval: ltr(sayInterval(voice, row.interval)),
        });
  return [
    row.name.text,
    line.text,
    row.verdict.text,
    row.whatItIs.text,
    ...texts(row.meaning.filter(({ key }) => key !== 'value.less' && key !== 'value.more')),
    ...(row.change === null ? [] : [row.change.text]),
  ].join('\n');
}

const texts = (said: readonly Said[]): string[] => said.map(({ text }) => text);
const passage = ({ heading, paragraphs }: Content['meaning']): string =>
  [heading.text, ...texts(paragraphs.flat())].join('\n');
const plain = (text: string): string => text.replace(/[\u2066-\u2069]/g, '');

function noScript(tag: string): Problem {
  return {
    code: 'no-spoken-words',
    place: { file: `locales/${tag}/spoken.json`, row: null, field: null },
    cannot: 'cannot write a script to be read aloud in this language',
    found: null,
    expected: 'the file with the words for numbers and units',
    remedy: 'Use --format text, or another language for the script.',
  };
}
