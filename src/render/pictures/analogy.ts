// The levels of one patient and the words of an analogy arrive; its figure as a scene leaves.
import type { AnalogyPicture } from '../../letter/content.js';
import type { Analogy, Position } from '../../terms.js';
import type { Scene, Shape } from '../block.js';
import { bakery } from './bakery.js';
import { buildersYard } from './builders-yard.js';
import { type Speech, mirror, wrapLabel, words } from './canvas.js';
import { familyMoney } from './family-money.js';
import { shirtShop } from './shirt-shop.js';
import type { Point, Trade } from './trade.js';

const trades: Readonly<Record<Analogy, Trade>> = {
  'shirt-shop': shirtShop,
  'builders-yard': buildersYard,
  bakery,
  'family-money': familyMoney,
};

/** How much is drawn for each position: counts that are told apart at a glance, not amounts in the body. */
type Counts = Readonly<Record<Position, number>>;
const spares: Counts = {
  'well-below': 1,
  'a-little-below': 4,
  'in-range': 11,
  'a-little-above': 16,
  'well-above': 21,
};
const spilled: Counts = {
  'well-below': 0,
  'a-little-below': 0,
  'in-range': 0,
  'a-little-above': 0,
  'well-above': 5,
};
const carriersOut: Counts = {
  'well-below': 1,
  'a-little-below': 2,
  'in-range': 3,
  'a-little-above': 4,
  'well-above': 5,
};
const share: Counts = {
  'well-below': 0.1,
  'a-little-below': 0.22,
  'in-range': 0.4,
  'a-little-above': 0.65,
  'well-above': 1,
};
const made: Counts = {
  'well-below': 2,
  'a-little-below': 3,
  'in-range': 4,
  'a-little-above': 5,
  'well-above': 6,
};
const madeSize: Counts = {
  'well-below': 0.62,
  'a-little-below': 0.8,
  'in-range': 1,
  'a-little-above': 1,
  'well-above': 1,
};

const width = 360;
const columns = { store: 60, carriers: 180, goods: 300 };
const labelWidth = 112;
const size = 14;
const lineHeight = 16;

/**
 * Three stations from the side where reading starts: the store, the carriers, the finished things; a dashed
 * arrow brings used ones back. What was not measured is dashed and empty. A locked store wears a padlock.
 * @example drawAnalogy({ kind: 'analogy', set: 'shirt-shop', levels, locked: false, … }, speech)
 */
export function drawAnalogy(picture: AnalogyPicture, speech: Speech): Scene {
  const trade = trades[picture.set];
  const reuse = wrapLabel(picture.labels.reuse.text, 230, size);
  const top = 12 + (reuse.length - 1) * lineHeight + 34;
  const floor = top + 84;
  const labels = [
    { x: columns.store, text: picture.labels.store.text },
    { x: columns.carriers, text: picture.labels.carriers.text },
    { x: columns.goods, text: picture.labels.goods.text },
  ].map(({ x, text }) => ({ x, rows: wrapLabel(text, labelWidth, size) }));
  const deepest = Math.max(...labels.map(({ rows }) => rows.length));
  const scene: Scene = {
    width,
    height: floor + 8 + deepest * lineHeight,
    title: picture.title.text,
    description: picture.description.text,
    shapes: [
      ...reuse.map((row, index) =>
        words(row, { x: 240, y: 12 + index * lineHeight, side: 'middle' }, speech, { size }),
      ),
      ...arrowBack(top - 8),
      ...drawStore(picture, trade, { x: columns.store - 48, y: top + 10 }),
      ...drawCarriers(picture, trade, { x: columns.carriers - 52, y: top }),
      ...drawGoods(picture, trade, floor),
      ...labels.flatMap(({ x, rows }) =>
        rows.map((row, index) =>
          words(row, { x, y: floor + 14 + index * lineHeight, side: 'middle' }, speech, { size }),
        ),
      ),
    ],
  };
  return speech.dir === 'rtl' ? mirror(scene) : scene;
}

function drawStore(picture: AnalogyPicture, trade: Trade, corner: Point): readonly Shape[] {
  const level = picture.levels.store;
  const centres =
    level === null ? [] : [...heap(spares[level], corner), ...overTheEdge(spilled[level], corner)];
  return [
    ...trade.store(corner, level === null ? 'missing' : 'outline'),
    ...centres.map(trade.unit),
    ...trade.overUnits(centres),
    ...(picture.locked ? padlock({ x: corner.x + 48, y: corner.y + 20 }) : []),
  ];
}

/** Rows of seven from the bottom of the store; a fourth row already stands above its edge. */
function heap(count: number, corner: Point): readonly Point[] {
  return Array.from({ length: count }, (_, index) => {
    const row = Math.floor(index / 7);
    return { x: corner.x + 9 + (index % 7) * 13, y: corner.y + 45 - row * 15 };
  });
}

function overTheEdge(count: number, corner: Point): readonly Point[] {
  return Array.from({ length: count }, (_, index) => ({
    x: corner.x + 30 + index * 13,
    y: corner.y - 1 - (index === 2 ? 6 : 0),
  }));
}

function padlock({ x, y }: Point): readonly Shape[] {
  return [
    {
      kind: 'path',
      look: 'open',
      d: `M${x - 8} ${y} L${x - 8} ${y - 7} C${x - 8} ${y - 19} ${x + 8} ${y - 19} ${x + 8} ${y - 7} L${x + 8} ${y}`,
    },
    { kind: 'rect', look: 'lock', x: x - 13, y, width: 26, height: 20, radius: 3 },
    { kind: 'line', look: 'hole', x1: x, y1: y + 7, x2: x, y2: y + 13 },
  ];
}

function drawCarriers(picture: AnalogyPicture, trade: Trade, corner: Point): readonly Shape[] {
  const { carriers, load } = picture.levels;
  const count = carriersOut[carriers ?? 'in-range'];
  const look = carriers === null && load === null ? 'missing' : 'outline';
  const filled = load === null ? 0 : Math.max(1, Math.round(count * 3 * share[load]));
  const corners = Array.from({ length: count }, (_, index) => ({
    x: corner.x + (index % 2) * 56,
    y: corner.y + (Math.floor(index / 2) + 3 - Math.ceil(count / 2)) * 29,
  }));
  const places = [0, 1, 2].flatMap((place) =>
    corners.map(({ x, y }) => ({ x: x + 11 + place * 14, y: y + 8 })),
  );
  const centres = places.slice(0, filled);
  return [
    ...corners.flatMap((at) => trade.carrier(at, look)),
    ...centres.map(trade.unit),
    ...trade.overUnits(centres),
  ];
}

function drawGoods(picture: AnalogyPicture, trade: Trade, floor: number): readonly Shape[] {
  const level = picture.levels.goods;
  const count = made[level ?? 'in-range'];
  const across = count > 4 ? 3 : 2;
  const step = across === 3 ? 37 : 44;
  return Array.from({ length: count }, (_, index) => ({
    x: columns.goods + ((index % across) - (across - 1) / 2) * step,
    y: floor - 4 - (Math.floor(index / across) === 0 ? 0 : 42),
  })).flatMap((foot) =>
    trade.good(foot, madeSize[level ?? 'in-range'], level === null ? 'missing' : 'outline'),
  );
}

/** From the finished things back to the carriers, over the top. */
function arrowBack(foot: number): readonly Shape[] {
  return [
    {
      kind: 'path',
      look: 'arrow',
      d: `M296 ${foot} C280 ${foot - 20} 206 ${foot - 20} 190 ${foot - 4}`,
    },
    { kind: 'path', look: 'arrow-head', d: `M184 ${foot + 2} L187 ${foot - 9} L195 ${foot - 2} Z` },
  ];
}
