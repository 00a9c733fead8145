// Pattern and positions arrive; one picture in words with its figure leaves, or none.
import type { GradedResult } from '../../interpret/interpretation.js';
import type { Analogy, Analyte, Pattern, Position } from '../../terms.js';
import type { AnalogyPicture, Content, Said } from '../content.js';
import { tooYoungForAnalogy } from '../letter-ages.js';
import { sideOf } from './side.js';
import type { Told } from '../letter-input.js';

type Scene = 'low' | 'bleeding' | 'inflammation' | 'overload';

/** What each pattern looks like in the picture; null where a picture would claim more than is known. */
const scenes: Readonly<Record<Pattern, Scene | null>> = {
  'all-in-range': null,
  'early-low-intake': 'low',
  'iron-deficiency-without-anaemia': 'low',
  'iron-deficient-erythropoiesis': 'low',
  'iron-deficiency-anaemia': 'low',
  'anaemia-of-inflammation': 'inflammation',
  'mixed-inflammation-and-iron-deficiency': 'inflammation',
  'possible-recent-blood-loss': 'bleeding',
  'microcytosis-with-normal-iron': null,
  'raised-ferritin-normal-tsat': null,
  'raised-tsat-and-ferritin': 'overload',
  'anaemia-not-explained-by-iron': null,
  'high-haemoglobin': null,
  'post-iron-dose-artefact': null,
  'discordant-or-implausible': null,
  unclear: null,
};

export function tellPicture(told: Told): Content['picture'] {
  const { interpretation, options, report, urgent, voice } = told;
  const scene = scenes[interpretation.pattern.main];
  const set = options.analogy;
  if (set === 'off' || scene === null || urgent || options.easyRead) return null;
  if (tooYoungForAnalogy(report.patient)) return null;
  // More money does no harm in life, so money cannot show too much iron.
  if (set === 'family-money' && scene === 'overload') return null;
  const levels = levelsOf(told);
  return {
    heading: voice.say('picture.heading'),
    paragraphs: [
      [voice.say(`picture.${set}.intro`)],
      [voice.say(`picture.${set}.how`)],
      [
        voice.say(`picture.${set}.${scene}`),
        ...(scene === 'low' && isBelow(levels.goods)
          ? [voice.say(`picture.${set}.low-goods`)]
          : []),
      ],
      [voice.say(`picture.${set}.end`)],
    ],
    figure: figure(told, set, scene, levels),
  };
}

type Levels = AnalogyPicture['levels'];

function levelsOf({ interpretation }: Told): Levels {
  const position = (...choices: readonly Analyte[]): Position | null => {
    const result = choices
      .map((analyte) => interpretation.results.find((each) => each.analyte === analyte))
      .find((each) => each !== undefined && each.doubt === null);
    return result === undefined ? null : drawnPosition(result);
  };
  return {
    store: position('ferritin'),
    carriers: position('transferrin', 'tibc'),
    load: position('transferrin-saturation'),
    goods: position('haemoglobin'),
  };
}

function figure(told: Told, set: Analogy, scene: Scene, levels: Levels): AnalogyPicture {
  const { say } = told.voice;
  return {
    kind: 'analogy',
    set,
    levels,
    locked: scene === 'inflammation',
    labels: {
      store: say(`picture.${set}.store`),
      carriers: say(`picture.${set}.carriers`),
      goods: say(`picture.${set}.goods`),
      reuse: say(`picture.${set}.reuse`),
    },
    title: say(`picture.${set}.title`),
    description: described(told, set, scene, levels),
  };
}

/** With too little iron, only what is drawn as low is told as low. */
function described(
  { voice: { say } }: Told,
  set: Analogy,
  scene: Scene,
  { store, load, goods }: Levels,
): Said {
  if (scene !== 'low') return say(`picture.${set}.described.${scene}`);
  const told = [
    say('picture.described'),
    ...(isBelow(store) ? [say(`picture.${set}.described.store-low`)] : []),
    ...(isBelow(load) ? [say(`picture.${set}.described.load-low`)] : []),
    ...(isBelow(goods) ? [say(`picture.${set}.described.goods-low`)] : []),
  ];
  const joined = (part: keyof Said) => told.map((each) => each[part]).join(' ');
  return { key: joined('key'), text: joined('text') };
}

const isBelow = (position: Position | null) => sideOf(position) === 'low';

/** The drawing follows what the letter says, so where laboratory and guideline differ it follows the guideline. */
function drawnPosition(result: GradedResult): Position | null {
  if (result.level === 'not-measured' || sideOf(result.position) === result.level)
    return result.position;
  const guide = result.also.find((each) => sideOf(each.position) === result.level);
  return guide?.position ?? result.position;
}
