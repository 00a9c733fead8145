// A letter's input arrives; the same letter in single ideas, each beside a picture of what it is about, leaves.
import { type Checked, faulty, type Problem } from '../problem.js';
import { composeLetter } from './compose-letter.js';
import type { Content, Pictogram, PictogramName, ResultTold, Said, StepTold } from './content.js';
import type { LetterInput, Told } from './letter-input.js';
import { tellBands } from './sections/opening.js';
import { tellWith } from './tell-with.js';

/** One idea: sentences that belong together, on a line each, and a clinician's own words. */
export type Idea = {
  readonly figure: Pictogram;
  readonly lines: readonly Said[];
  readonly words: string | null;
  /** In a box: get help now. */
  readonly urgent: boolean;
};
export type IdeaGroup = { readonly heading: Said; readonly ideas: readonly Idea[] };

export type EasyLetter = Pick<
  Content,
  | 'lang'
  | 'dir'
  | 'documentTitle'
  | 'sender'
  | 'about'
  | 'greeting'
  | 'bands'
  | 'released'
  | 'running'
  | 'signature'
> & { readonly title: Said; readonly groups: readonly IdeaGroup[] };

/**
 * Every message of the usual letter but its picture in words and its drawn lines: shorter words, nothing left out.
 * Problems: those of the letter; a language without the easy words.
 * @example composeEasyRead(input) // { ok: true, value: { groups: […] }, notes: [] }
 */
export function composeEasyRead(input: LetterInput): Checked<EasyLetter> {
  const { language } = input;
  if (!language.words.exists('about', { ns: 'easy-read' })) return faulty([noWords(language.tag)]);
  const letter = composeLetter({ ...input, options: { ...input.options, easyRead: true } });
  return letter.ok ? tellWith(input, (told) => tellEasily(told, letter.value)) : letter;
}

function tellEasily(told: Told, letter: Content): EasyLetter {
  const { lang, dir, documentTitle, sender, about, greeting, released, running, signature } =
    letter;
  const groups = groupsOf(told, letter);
  const title = told.voice.easy('title');
  // The warning is that of the usual letter, or that of the easy words where only they are unsigned.
  const bands = letter.bands.some(({ key }) => key === 'band.translation')
    ? letter.bands
    : tellBands(told);
  return {
    ...{ lang, dir, documentTitle, sender, about, greeting, released, running, signature },
    title,
    bands,
    groups,
  };
}

function groupsOf(told: Told, letter: Content): readonly IdeaGroup[] {
  const { voice } = told;
  const idea = (
    name: PictogramName,
    lines: readonly Said[],
    words: string | null = null,
  ): Idea => ({
    figure: pictogram(told, name),
    lines,
    words,
    urgent: false,
  });
  const each = (name: PictogramName, lines: readonly Said[]) =>
    lines.map((line) => idea(name, [line]));
  const steps = (part: readonly StepTold[]) =>
    part.map(({ text, words, sign }) => idea(sign, [text], words));
  const help: IdeaGroup = {
    heading: letter.help.heading,
    ideas: [
      ...letter.help.groups.map(({ urgency, heading, lines }) => ({
        ...idea(urgency === 'emergency' ? 'warning' : 'phone', [heading, ...lines]),
        urgent: urgency === 'emergency',
      })),
      ...each('phone', letter.help.notes),
    ],
  };
  return [
    {
      heading: letter.summary.heading,
      ideas: [
        idea('blood-test', [voice.easy('about')]),
        idea('blood-test', [voice.easy('iron')]),
        ...each('clinician', letter.summary.sentences),
      ],
    },
    ...(letter.help.first ? [help] : []),
    { heading: letter.yourSteps.heading, ideas: steps(letter.yourSteps.steps) },
    { heading: letter.ourSteps.heading, ideas: steps(letter.ourSteps.steps) },
    ...(letter.help.first ? [] : [help]),
    {
      heading: voice.easy('found.heading'),
      ideas: [
        idea('blood-test', [voice.easy('usual-range')]),
        ...letter.results.rows.map((row) => idea('blood-test', resultLines(row))),
        ...each('blood-test', letter.results.notMeasured),
      ],
    },
    {
      heading: letter.meaning.heading,
      ideas: letter.meaning.paragraphs.map((lines) => idea('clinician', lines)),
    },
    ...(letter.food === null ? [] : [foodGroup(letter.food, idea, each)]),
    ...(letter.tablets === null
      ? []
      : [
          {
            heading: letter.tablets.heading,
            ideas: each('tablets', [...letter.tablets.paragraphs.flat(), ...letter.tablets.items]),
          },
        ]),
    { heading: voice.easy('good-to-know.heading'), ideas: each('warning', letter.cautions) },
    {
      heading: letter.choices.heading,
      ideas: letter.choices.paragraphs.map((lines) => idea('clinician', lines)),
    },
    {
      heading: letter.contact.heading,
      ideas: each('phone', [...letter.contact.lines, ...letter.contact.formats]),
    },
  ].filter(({ ideas }) => ideas.length > 0);
}

function foodGroup(
  food: NonNullable<Content['food']>,
  idea: (name: PictogramName, lines: readonly Said[]) => Idea,
  each: (name: PictogramName, lines: readonly Said[]) => readonly Idea[],
): IdeaGroup {
  return {
    heading: food.heading,
    ideas: [
      ...each('food', food.paragraphs.flat()),
      ...food.foods.map(({ heading, items, sign }) => idea(sign, [heading, ...items])),
      ...food.lists.flatMap(({ items }) =>
        items.flatMap((item) => each(aboutDrinks.test(item.key) ? 'drink' : 'food', [item])),
      ),
    ],
  };
}

const aboutDrinks = /tea|coffee|drinks|milk-another|alcohol/;

function resultLines({ name, valueLine, verdict, whatItIs, meaning, change }: ResultTold) {
  return [name, valueLine, verdict, whatItIs, ...meaning, ...(change === null ? [] : [change])];
}

function pictogram({ voice }: Told, name: PictogramName): Pictogram {
  const title = voice.easy(`pictogram.${name}`);
  return { kind: 'pictogram', name, title, description: title };
}

function noWords(tag: string): Problem {
  return {
    code: 'no-easy-words',
    place: { file: `locales/${tag}/easy-read.json`, row: null, field: null },
    cannot: 'cannot write the easy-read letter in this language',
    found: null,
    expected: 'the file with the easy words',
    remedy: 'Leave --easy-read out, or choose another language.',
  };
}
